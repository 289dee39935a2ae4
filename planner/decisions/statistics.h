#pragma once

#include <cstddef>
#include <vector>

/// Figures of many draws, and what can be said of them.
namespace tumpline::planner {

/// `values` must not be empty.
[[nodiscard]] double mean(const std::vector<double>& values);

/// A share so large of the draws is not above the figure: the least of them for which that holds.
struct Quantiles {
    double q05;
    double q10;
    double q50;
    double q90;
    double q95;
};

/// `values` must not be empty.
[[nodiscard]] Quantiles quantiles(std::vector<double> values);

/// Ranks from 1, equal values sharing the mean of theirs.
[[nodiscard]] std::vector<double> ranks(const std::vector<double>& values);

/// Pearson's correlation; 0 where one of the two does not vary. Of ranks it is Spearman's: -1 to 1,
/// whatever the form of the dependence as long as it is one way.
[[nodiscard]] double correlation(const std::vector<double>& x, const std::vector<double>& y);

} // namespace tumpline::planner
