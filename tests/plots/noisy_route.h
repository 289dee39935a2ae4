#pragma once

#include <string>

namespace tumpline::plots {

/// The climb of the standard route read from heights that are wrong, as a table.
[[nodiscard]] std::string noisy_climb_table();

} // namespace tumpline::plots
