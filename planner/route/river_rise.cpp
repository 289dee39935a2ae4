#include "planner/route/river_rise.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <vector>

namespace tumpline::planner {

namespace {

double lower_quartile(std::vector<double> heights_m) {
    const auto at = std::next(heights_m.begin(), static_cast<std::ptrdiff_t>(heights_m.size() / 4));
    std::nth_element(heights_m.begin(), at, heights_m.end());
    return *at;
}

} // namespace

std::optional<double> rise_beyond_noise_m(const geo::Profile& ground) {
    const std::vector<double>& heights_m = ground.heights_m;
    if (heights_m.size() < 2 || ground.unknown > heights_m.size() / 2)
        return std::nullopt;
    const auto fifth = static_cast<std::ptrdiff_t>(std::max<std::size_t>(1, heights_m.size() / 5));
    const double first_m = lower_quartile({heights_m.begin(), std::next(heights_m.begin(), fifth)});
    const double last_m = lower_quartile({std::prev(heights_m.end(), fifth), heights_m.end()});
    // Of an even rise the quartiles of the fifths lie four fifths of it apart.
    const double rise_m = (last_m - first_m) / (heights_m.size() < 5 ? 1.0 : 0.8);
    if (rise_m <= ground.threshold_m)
        return std::nullopt;
    return rise_m;
}

} // namespace tumpline::planner
