#pragma once

#include "geo/position.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::geo {

/// Heights of the ground from one or several rasters, in metres above the geoid.
/// Bilinear between cell centres; any raster and CRS that GDAL opens; blocks are cached, never a
/// whole raster. The first raster that covers a point and is not void there answers.
class Elevation {
  public:
    /// Throws: InputError naming the raster that cannot be used (not a raster, no CRS, no band...).
    explicit Elevation(const std::vector<std::filesystem::path>& rasters);
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

/// Height of the geoid (EGM96) above the WGS84 ellipsoid; empty where PROJ's grid is not at hand.
[[nodiscard]] std::optional<double> geoid_height_m(const Position& position);

} // namespace tumpline::geo
