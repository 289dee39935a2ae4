#pragma once

#include <vector>

namespace tumpline::geo {

/// Makes the formats below known to GDAL, and no other; docs/decisions says why each is in.
void register_formats();

/// Names of the formats of heights, as GDAL wants them, ended by a null. What a VRT is made of is
/// read by these too.
[[nodiscard]] std::vector<const char*> raster_formats();

/// Names of the formats of lines and points, ended by a null. GPX has a reader of its own.
[[nodiscard]] std::vector<const char*> vector_formats();

/// The same and extracts of OpenStreetMap: what may be drawn around a route.
[[nodiscard]] std::vector<const char*> layer_formats();

} // namespace tumpline::geo
