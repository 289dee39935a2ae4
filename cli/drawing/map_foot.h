#pragma once

#include "cli/drawing/load_band.h"
#include "cli/drawing/map_frame.h"
#include "cli/drawing/map_labels.h"
#include "geo/ground/map_projection.h"

#include <string>
#include <vector>

/// What tells a map's reader where and how far.
namespace tumpline::cli {

/// North arrow and scale bar in a strip under the frame.
[[nodiscard]] std::string map_foot(const geo::MapProjection& projection,
                                   const Frame& sheet,
                                   const Drawing& drawing,
                                   const Figures& shown);

/// Dots with the route's kilometres or miles along a line, every so many that they stay apart.
[[nodiscard]] std::string kilometre_marks(const std::vector<DrawnPoint>& line,
                                          const Stretch& stretch,
                                          Labels& labels,
                                          const Drawing& drawing,
                                          const Figures& shown);

/// "50 000": digits in groups of three.
[[nodiscard]] std::string grouped(double number);

} // namespace tumpline::cli
