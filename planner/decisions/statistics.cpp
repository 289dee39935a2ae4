#include "planner/decisions/statistics.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace tumpline::planner {

namespace {

/// Position of the least value that at least `percent` of the sorted ones do not exceed.
std::size_t position(std::size_t count, std::size_t percent) {
    return (count * percent + 99) / 100 - 1;
}

} // namespace

double mean(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

Quantiles quantiles(std::vector<double> values) {
    assert(!values.empty());
    std::sort(values.begin(), values.end());
    const auto at = [&](std::size_t percent) { return values[position(values.size(), percent)]; };
    return {.q05 = at(5), .q10 = at(10), .q50 = at(50), .q90 = at(90), .q95 = at(95)};
}

std::vector<double> ranks(const std::vector<double>& values) {
    std::vector<std::size_t> order(values.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t i, std::size_t j) {
        return values[i] < values[j];
    });
    std::vector<double> rank(values.size());
    for (std::size_t first = 0; first < order.size();) {
        std::size_t end = first + 1;
        while (end < order.size() && values[order[end]] == values[order[first]])
            ++end;
        const double shared = 0.5 * static_cast<double>(first + 1 + end);
        for (; first < end; ++first)
            rank[order[first]] = shared;
    }
    return rank;
}

double correlation(const std::vector<double>& x, const std::vector<double>& y) {
    assert(x.size() == y.size() && !x.empty());
    const double mean_x = mean(x);
    const double mean_y = mean(y);
    double xx = 0.0;
    double yy = 0.0;
    double xy = 0.0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        xx += (x[i] - mean_x) * (x[i] - mean_x);
        yy += (y[i] - mean_y) * (y[i] - mean_y);
        xy += (x[i] - mean_x) * (y[i] - mean_y);
    }
    return xx > 0.0 && yy > 0.0 ? xy / std::sqrt(xx * yy) : 0.0;
}

} // namespace tumpline::planner
