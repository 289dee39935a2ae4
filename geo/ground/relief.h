#pragma once

#include "geo/ground/height_grid.h"

#include <cstdint>
#include <string>
#include <vector>

namespace tumpline::geo {

/// From where light falls on a relief.
struct Light {
    bool many = true;     ///< from four sides at 30 degrees, so that no ridge lies along the light
    double azimuth = 315; ///< degrees; of a single light at 45 degrees
};

/// The shade of every cell by the GDAL library's hillshade (Horn's gradient): 1 dark to 255 light,
/// 0 where the height is unknown; level ground is 181 in a single light.
[[nodiscard]] std::vector<std::uint8_t> hillshade(const HeightGrid& grid, const Light& light);

/// A relief as a grey picture (PNG) of sixteen tones, a pixel a cell: only what is darker than
/// level ground is toned, to at most 55 %; level and unknown ground is white. Empty where there is
/// nothing to shade.
[[nodiscard]] std::string relief_png(const HeightGrid& grid);

} // namespace tumpline::geo
