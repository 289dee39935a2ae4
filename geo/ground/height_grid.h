#pragma once

#include "geo/ground/elevation.h"
#include "geo/ground/map_projection.h"

#include <cstddef>
#include <functional>
#include <vector>

namespace tumpline::geo {

/// Stands for an unknown height where the GDAL library wants a number.
inline constexpr double void_height_m = -32768.0;

/// Where the cells of a grid lie on a map.
struct GridFrame {
    MapPoint north_west; ///< the outer corner of the first cell
    double cell_m;
    int columns;
    int rows;

    [[nodiscard]] MapPoint centre(int column, int row) const {
        return {north_west.east_m + (column + 0.5) * cell_m,
                north_west.north_m - (row + 0.5) * cell_m};
    }
};

/// Heights of the ground in the plane of a map, row by row from the north; NaN where none is known.
struct HeightGrid {
    GridFrame frame;
    std::vector<float> heights_m;

    [[nodiscard]] float at(int column, int row) const {
        return heights_m[static_cast<std::size_t>(row) * static_cast<std::size_t>(frame.columns) +
                         static_cast<std::size_t>(column)];
    }

    [[nodiscard]] bool empty() const; ///< no height is known at all
};

/// Fills a grid from the rasters. Coordinates are projected at every sixteenth cell and are
/// bilinear between: centimetres off at the cells of a map.
[[nodiscard]] HeightGrid
sampled_heights(Elevation& elevation, const MapProjection& projection, const GridFrame& frame);

/// Makes cells unknown whose centres are not wanted.
void keep_only(HeightGrid& grid, const std::function<bool(const MapPoint&)>& wanted);

/// The grid under a Gaussian of one cell, for lines without the raster's own steps. Unknown cells
/// have no weight and stay unknown.
[[nodiscard]] HeightGrid smoothed(const HeightGrid& grid);

/// Makes the cells inside an area unknown: level water has no contours, and the noise of a raster
/// on it is not drawn. Rings count by the even-odd rule.
void make_unknown(HeightGrid& grid, const std::vector<std::vector<MapPoint>>& rings);

/// The slope (rise over run) that all but two in a hundred of the grid's cells keep to; 0 for a
/// grid without heights.
[[nodiscard]] double steep_slope(const HeightGrid& grid);

} // namespace tumpline::geo
