#pragma once

#include "geo/input_error.h"

#include <vector>

namespace tumpline::planner {

/// Problems for people: where the place of one is a JSON pointer into a file that can be read
/// again, its line stands beside it: "/kit/3/mass (line 42)".
[[nodiscard]] std::vector<geo::Problem> with_lines(std::vector<geo::Problem> problems);

} // namespace tumpline::planner
