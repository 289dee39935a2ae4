#pragma once

#include "planner/defaults/uncertainty_defaults.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace tumpline::cli {

/// "pace on foot".
[[nodiscard]] std::string_view assumption_words(planner::Assumption assumption);

/// A chance as people read it: nothing is certain that was only drawn so often.
[[nodiscard]] std::string chance_words(double chance, std::size_t draws);

} // namespace tumpline::cli
