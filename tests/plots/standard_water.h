#pragma once

#include <string>

namespace tumpline::plots {

/// Hours over 10 km of lake by craft, model and wind, as a table.
[[nodiscard]] std::string lake_table();

} // namespace tumpline::plots
