#pragma once

#include "geo/position.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::geo {

/// Heights of the ground from one or several rasters, in metres above the geoid.
/// Bilinear between cell centres; the formats of gate/gdal_formats.h in any CRS that PROJ knows;
/// blocks are cached, never a whole raster. The first raster that covers a point and is not void
/// there answers.
class Elevation {
  public:
    /// What a raster is made of (a VRT) lies in or below its folder, or in or below `trip_folder`.
    /// Throws: InputError naming the raster that cannot be used (not a raster, no CRS, no band...).
    explicit Elevation(const std::vector<std::filesystem::path>& rasters,
                       const std::filesystem::path& trip_folder = {});
    ~Elevation();
    Elevation(Elevation&& other) noexcept;
    Elevation& operator=(Elevation&& other) noexcept;

    /// Height at `position`; empty outside every raster or where all four neighbours are void.
    [[nodiscard]] std::optional<double> at(const Position& position);

    /// Typical cell width of the finest raster, metres on the ground; the profile's natural step.
    [[nodiscard]] double cell_m() const;

    /// One line per raster for the plan's list of sources: name, size, cell, datum.
    [[nodiscard]] std::vector<std::string> describe() const;

  private:
    struct Rasters;
    std::unique_ptr<Rasters> rasters_;
};

} // namespace tumpline::geo
