#pragma once

#include "cli/drawing/map_frame.h"
#include "geo/ground/map_projection.h"

#include <string>

namespace tumpline::cli {

class Labels;

/// Meridians and parallels at a round step, faint, with their degrees at the frame; also where a
/// pole or the 180th meridian lies inside; a figure without room is left out. A <g> element.
[[nodiscard]] std::string
graticule(const geo::MapProjection& projection, const Frame& frame, double text, Labels& labels);

} // namespace tumpline::cli
