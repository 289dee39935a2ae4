#include "planner/defaults/wind_shy.h"

#include <algorithm>

namespace tumpline::planner {

std::optional<std::size_t> most_wind_shy(const std::vector<AssumedCraft>& craft) {
    const auto lowest = std::min_element(
        craft.begin(), craft.end(), [](const AssumedCraft& a, const AssumedCraft& b) {
            return a.wind_ceiling_mps < b.wind_ceiling_mps;
        });
    return lowest == craft.end() ? std::nullopt
                                 : std::optional(static_cast<std::size_t>(lowest - craft.begin()));
}

} // namespace tumpline::planner
