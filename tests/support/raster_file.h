#pragma once

#include "geo/position.h"

#include <array>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>

namespace tumpline::test {

/// A GeoTIFF to be written for a test.
struct RasterFile {
    int columns;
    int rows;
    std::array<double, 6> corner_and_cell; ///< GDAL's geotransform; as written if `point`
    std::string crs;                       ///< anything that GDAL understands; empty: none
    std::optional<double> no_data;
    std::string unit;   ///< of the band; empty: none
    bool point = false; ///< cells are points: the corner is the place of the first of them
    bool bytes = false; ///< small numbers in a palette of colours
};

/// Writes it as 64-bit numbers, each the value of `height` at its column and row.
void write_raster(const std::filesystem::path& file,
                  const RasterFile& raster,
                  const std::function<double(int, int)>& height);

/// Writes what GDAL left in its memory ("/vsimem/...") to a file, and frees it.
void keep_memory(const std::string& memory, const std::filesystem::path& file);

/// An HGT tile as its makers describe it: big-endian 16-bit metres in rows from the north-west, on
/// the lines of the degree grid. `height` of column and row; written without any library.
void write_hgt(const std::filesystem::path& file,
               int samples_per_side,
               const std::function<int(int, int)>& height);

/// A raster of 0.001 degrees a cell, 50 by 40, its north-west corner at 61 N 12 E.
[[nodiscard]] RasterFile small_raster();

/// Centre of a cell of `small_raster`.
[[nodiscard]] geo::Position centre(double column, double row);

/// A plane over its cells, metres.
[[nodiscard]] double tilted_m(int column, int row);

} // namespace tumpline::test
