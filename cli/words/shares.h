#pragma once

#include <vector>

namespace tumpline::cli {

/// Shares of a whole as whole percent that sum to what the shares sum to, 100 for all of it: each
/// cut to the percent below, what is missing given one each to the largest remainders, of equal
/// ones to the first (the method of largest remainders).
[[nodiscard]] std::vector<int> whole_percents(const std::vector<double>& shares);

} // namespace tumpline::cli
