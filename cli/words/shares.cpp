#include "cli/words/shares.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace tumpline::cli {

std::vector<int> whole_percents(const std::vector<double>& shares) {
    constexpr double alike = 1e-9; // of percent: sums that differ by a rounding of their parts
    std::vector<int> percents;
    std::vector<double> remainders;
    for (const double share : shares) {
        const double percent = 100.0 * share;
        percents.push_back(static_cast<int>(std::floor(percent + alike)));
        remainders.push_back(percent - percents.back());
    }
    const double whole = 100.0 * std::accumulate(shares.begin(), shares.end(), 0.0);
    int missing =
        static_cast<int>(std::lround(whole)) - std::accumulate(percents.begin(), percents.end(), 0);
    std::vector<std::size_t> order(shares.size());
    std::iota(order.begin(), order.end(), 0U);
    std::ranges::stable_sort(
        order, [&](std::size_t a, std::size_t b) { return remainders[a] > remainders[b] + alike; });
    for (const std::size_t i : order)
        if (missing-- > 0)
            ++percents[i];
    return percents;
}

} // namespace tumpline::cli
