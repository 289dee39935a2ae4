#pragma once

#include "geo/gate/open_dataset.h"
#include "geo/gate/passage.h"
#include "geo/ground/tile_cache.h"
#include "geo/position.h"

#include <array>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>

class GDALRasterBand;
class OGRCoordinateTransformation;
class OGRSpatialReference;

namespace tumpline::geo {

/// Where a raster stands among those of a trip.
struct RasterFolder {
    int number;
    std::filesystem::path trip_folder; ///< may be empty
};

/// One raster of heights that GDAL opened, of any size and CRS.
class Raster {
  public:
    /// Throws: InputError naming what makes the file unusable.
    Raster(const std::filesystem::path& file, const RasterFolder& among);
    ~Raster();
    Raster(Raster&& other) noexcept;
    Raster& operator=(Raster&& other) noexcept;

    /// Height above the geoid; empty beyond the raster and where all cells around are void.
    /// Throws: InputError if the file breaks off here.
    [[nodiscard]] std::optional<double> at(const Position& position, TileCache& cache);

    /// Geometric mean of a cell's width and height in the middle of the raster.
    [[nodiscard]] double cell_m() const { return cell_m_; }

    [[nodiscard]] std::string describe() const;

  private:
    /// Place in cells from the north-west corner, cell centres at halves.
    struct Place {
        double column;
        double row;
    };

    struct Cell {
        int column;
        int row;
    };

    struct Bounds {
        double south_deg;
        double north_deg;
        double west_deg;
        double east_deg; ///< below west_deg if the raster crosses the antimeridian
    };

    struct Free {
        void operator()(OGRCoordinateTransformation* transformation) const;
        void operator()(OGRSpatialReference* crs) const;
    };

    void find_crs();
    void find_vertical(const OGRSpatialReference& given);
    void find_bounds();
    void find_cell_size();
    void find_heights();
    [[nodiscard]] std::optional<Place> place_of(const Position& position) const;
    [[nodiscard]] Position position_of(const Place& place) const;
    [[nodiscard]] float cell(const Cell& cell, TileCache& cache);
    [[nodiscard]] const TileCache::Cells& tile(const Cell& first, TileCache& cache);
    [[nodiscard]] TileCache::Cells read_tile(const Cell& first);

    std::filesystem::path file_;
    int number_;
    Folders folders_; ///< where what the raster is made of may lie
    Dataset dataset_;
    GDALRasterBand* band_ = nullptr; ///< belongs to the dataset
    std::unique_ptr<OGRSpatialReference, Free> crs_;
    std::unique_ptr<OGRCoordinateTransformation, Free> to_crs_; ///< null: it is longitude, latitude
    std::unique_ptr<OGRCoordinateTransformation, Free> from_crs_;
    std::optional<Bounds> bounds_; ///< to pass over the raster quickly
    std::array<double, 6> to_cells_{};
    std::array<double, 6> from_cells_{};
    int columns_ = 0;
    int rows_ = 0;
    double turn_columns_ = 0.0; ///< columns in 360 degrees; 0 if the CRS is not in degrees
    double metres_per_unit_ = 1.0;
    double scale_ = 1.0;
    double offset_ = 0.0;
    bool has_mask_ = false;
    bool above_ellipsoid_ = false;
    double cell_m_ = 0.0;
};

} // namespace tumpline::geo
