#pragma once

#include "sample-routes/make/lay_out.h"

#include <cstdint>
#include <vector>

namespace tumpline::samples {

/// Heights on a grid of longitude and latitude, whole metres, row by row from the north-west.
struct Raster {
    double west_deg;
    double north_deg;
    double cell_lon_deg;
    double cell_lat_deg;
    int columns;
    int rows;
    std::vector<std::int16_t> heights_m;
};

/// Invented ground around a route: a trough whose floor is the route's own height, with water as
/// wide as the lines say, slopes to either side and hills between. So a climb runs up a valley, the
/// highest point of the way is the lowest of its ridge, a lake is level from shore to shore and a
/// river only falls. On top lies noise as rasters have it: about 1.2 m on land, 0.4 m on water.
[[nodiscard]] Raster make_ground(const Layout& layout, std::uint64_t seed);

} // namespace tumpline::samples
