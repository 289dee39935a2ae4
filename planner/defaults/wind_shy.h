#pragma once

#include "planner/defaults/defaults.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// The craft that must leave open water first when the wind rises: the one of the lowest ceiling,
/// the first of equals, by its index; none where there is no boat.
[[nodiscard]] std::optional<std::size_t> most_wind_shy(const std::vector<AssumedCraft>& craft);

} // namespace tumpline::planner
