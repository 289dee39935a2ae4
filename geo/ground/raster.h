#pragma once

#include "geo/position.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <list>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

class GDALDataset;
class GDALRasterBand;
class OGRCoordinateTransformation;
class OGRSpatialReference;

namespace tumpline::geo {

/// Cells of rasters as far as they were read, the least recently used dropped first. A tile holds
/// one column and one row of its neighbours, so that four cells around a point stand in one tile.
class TileCache {
  public:
    static constexpr int side = 256;
    static constexpr std::size_t stride = side + 1;
    static constexpr std::size_t most_tiles = 256; ///< 64 MB of cells

    struct Key {
        int raster;
        int column;
        int row;

        friend bool operator==(const Key&, const Key&) = default;
    };

    /// (side + 1)^2 cells in rows from the north-west; NaN is void.
    using Cells = std::vector<float>;

    /// The cells of a tile, or null if they must be read; valid until the next `put`.
    [[nodiscard]] const Cells* find(const Key& key);

    const Cells* put(const Key& key, Cells cells);

  private:
    struct Tile {
        Key key;
        Cells cells;
    };

    struct Hash {
        std::size_t operator()(const Key& key) const noexcept;
    };

    std::list<Tile> tiles_; ///< most recently used first
    std::unordered_map<Key, std::list<Tile>::iterator, Hash> places_;
};

/// One raster of heights that GDAL opened, of any size and CRS.
class Raster {
  public:
    /// Throws: InputError naming what makes the file unusable.
    Raster(const std::filesystem::path& file, int number);
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
        void operator()(GDALDataset* dataset) const;
        void operator()(OGRCoordinateTransformation* transformation) const;
        void operator()(OGRSpatialReference* crs) const;
    };

    void find_crs();
    void find_cell_size();
    void find_heights();
    [[nodiscard]] std::optional<Place> place_of(const Position& position) const;
    [[nodiscard]] Position position_of(const Place& place) const;
    [[nodiscard]] float cell(const Cell& cell, TileCache& cache);
    [[nodiscard]] const TileCache::Cells& tile(const Cell& first, TileCache& cache);
    [[nodiscard]] TileCache::Cells read_tile(const Cell& first);

    std::filesystem::path file_;
    int number_;
    std::unique_ptr<GDALDataset, Free> dataset_;
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
