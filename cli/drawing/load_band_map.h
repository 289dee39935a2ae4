#pragma once

#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_line.h"

#include <string>
#include <vector>

namespace tumpline::cli {

/// The band along a route's line in a drawing, a <g> for each leg that comes into it.
[[nodiscard]] std::string band_markup(const planner::Plan& plan,
                                      const planner::Route& route,
                                      const std::vector<DrawnPoint>& line,
                                      const Drawing& drawing);

} // namespace tumpline::cli
