#pragma once

#include "cli/drawing/map_frame.h"
#include "cli/drawing/map_labels.h"
#include "geo/ground/map_projection.h"

#include <string>

namespace tumpline::cli {

/// The lines of the UTM grid in the zone of the map's middle, dotted, with their kilometres at the
/// upper and right edge. A <g> element; empty about a pole.
[[nodiscard]] std::string
utm_grid(const geo::MapProjection& projection, const Frame& frame, double text, Labels& labels);

/// The distance between the grid's lines at that scale, metres.
[[nodiscard]] double utm_step_m(double pixels_per_m);

} // namespace tumpline::cli
