#include "geo/profiles/height_cleaning.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <span>
#include <vector>

namespace tumpline::geo {

namespace {

/// Stretches of one height, as the pooling of neighbours makes them.
struct Pool {
    double sum_m;
    std::size_t samples;

    [[nodiscard]] double mean_m() const { return sum_m / static_cast<double>(samples); }
};

/// The nearest heights (least squares) that never fall, or never rise: neighbours in the wrong
/// order are pooled to their mean until none are left.
void make_monotone(std::span<double> heights_m, bool rising) {
    const double sign = rising ? 1.0 : -1.0;
    std::vector<Pool> pools;
    for (const double height_m : heights_m) {
        pools.push_back({.sum_m = sign * height_m, .samples = 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean_m() > pools.back().mean_m()) {
            const Pool last = pools.back();
            pools.pop_back();
            pools.back().sum_m += last.sum_m;
            pools.back().samples += last.samples;
        }
    }
    auto next = heights_m.begin();
    for (const Pool& pool : pools)
        next = std::fill_n(next, pool.samples, sign * pool.mean_m());
}

/// Takes the stairs out of monotone heights: a moving mean whose reach shrinks towards the ends,
/// so that it keeps both ends and stays monotone.
void ease(std::span<double> heights_m, std::size_t radius) {
    std::vector<double> sums_m(heights_m.size() + 1, 0.0);
    const double origin_m = heights_m.empty() ? 0.0 : heights_m.front();
    for (std::size_t i = 0; i < heights_m.size(); ++i)
        sums_m[i + 1] = sums_m[i] + (heights_m[i] - origin_m);
    for (std::size_t i = 1; i + 1 < heights_m.size(); ++i) {
        const std::size_t reach = std::min({radius, i, heights_m.size() - 1 - i});
        heights_m[i] = origin_m + (sums_m[i + reach + 1] - sums_m[i - reach]) /
                                      static_cast<double>(2 * reach + 1);
    }
    // Sums of many heights leave the last digits wrong; a step back by them would be a climb.
    const bool rising = heights_m.empty() || heights_m.back() >= heights_m.front();
    for (std::size_t i = 1; i < heights_m.size(); ++i)
        heights_m[i] = rising ? std::clamp(heights_m[i], heights_m[i - 1], heights_m.back())
                              : std::clamp(heights_m[i], heights_m.back(), heights_m[i - 1]);
}

/// From one turning point to the next: monotone, and both keep their heights.
void make_swing(std::span<double> heights_m, std::size_t radius) {
    const auto [low_m, high_m] = std::minmax({heights_m.front(), heights_m.back()});
    const bool rising = heights_m.back() > heights_m.front();
    for (double& height_m : heights_m)
        height_m = std::clamp(height_m, low_m, high_m);
    make_monotone(heights_m, rising);
    ease(heights_m, radius);
}

/// A whole profile that swings less than the threshold: its foot and summit if it is one slope and
/// stands out of its own noise; otherwise nothing.
std::vector<std::size_t> lone_slope(const std::vector<double>& heights_m,
                                    const std::vector<double>& smooth_m) {
    const auto [lowest, highest] = std::minmax_element(smooth_m.begin(), smooth_m.end());
    const double range_m = *highest - *lowest;
    const bool rising = lowest < highest;

    double furthest_m = smooth_m.front(); // so far, in the direction of the slope
    double worst_back_m = 0.0;
    double scatter_m2 = 0.0;
    for (std::size_t i = 0; i < smooth_m.size(); ++i) {
        furthest_m = rising ? std::max(furthest_m, smooth_m[i]) : std::min(furthest_m, smooth_m[i]);
        worst_back_m = std::max(worst_back_m, std::abs(furthest_m - smooth_m[i]));
        scatter_m2 += (heights_m[i] - smooth_m[i]) * (heights_m[i] - smooth_m[i]);
    }
    const double scatter_m = std::sqrt(scatter_m2 / static_cast<double>(smooth_m.size()));
    if (range_m <= 0.0 || worst_back_m > 0.25 * range_m || range_m < 4.0 * scatter_m)
        return {};
    const auto foot = static_cast<std::size_t>(lowest - smooth_m.begin());
    const auto summit = static_cast<std::size_t>(highest - smooth_m.begin());
    return {std::min(foot, summit), std::max(foot, summit)};
}

} // namespace

std::vector<std::size_t> turning_points(const std::vector<double>& heights_m, double threshold_m) {
    std::vector<std::size_t> turns;
    std::size_t lowest = 0;
    std::size_t highest = 0;
    std::size_t furthest = 0; // since the last turning point, in the direction of the swing
    int direction = 0;
    for (std::size_t i = 1; i < heights_m.size(); ++i) {
        const double height_m = heights_m[i];
        if (direction == 0) {
            if (height_m < heights_m[lowest])
                lowest = i;
            if (height_m > heights_m[highest])
                highest = i;
            if (height_m - heights_m[lowest] >= threshold_m && lowest != i)
                direction = 1;
            else if (heights_m[highest] - height_m >= threshold_m && highest != i)
                direction = -1;
            if (direction != 0) {
                turns.push_back(direction > 0 ? lowest : highest);
                furthest = i;
            }
            continue;
        }
        const double onwards_m = direction * (height_m - heights_m[furthest]);
        if (onwards_m > 0.0) {
            furthest = i;
        } else if (-onwards_m >= threshold_m) {
            turns.push_back(furthest);
            furthest = i;
            direction = -direction;
        }
    }
    if (direction != 0)
        turns.push_back(furthest);
    return turns;
}

std::vector<double> smoothed(const std::vector<double>& heights_m, std::size_t radius) {
    if (radius == 0 || heights_m.size() < 3)
        return heights_m;
    std::vector<double> smooth_m(heights_m.size());
    for (std::size_t i = 0; i < heights_m.size(); ++i) {
        const std::size_t first = i - std::min(radius, i);
        const std::size_t last = std::min(i + radius, heights_m.size() - 1);
        // The line z = mean + slope (x - middle), x counted in samples.
        const double middle = 0.5 * static_cast<double>(first + last);
        double sum_m = 0.0;
        double moment_m = 0.0;
        double spread = 0.0;
        for (std::size_t j = first; j <= last; ++j) {
            const double x = static_cast<double>(j) - middle;
            const double rise_m = heights_m[j] - heights_m[i];
            sum_m += rise_m;
            moment_m += x * rise_m;
            spread += x * x;
        }
        smooth_m[i] = heights_m[i] + sum_m / static_cast<double>(last - first + 1) +
                      moment_m / spread * (static_cast<double>(i) - middle);
    }
    return smooth_m;
}

std::vector<double> smoothed_by_parabolas(const std::vector<double>& heights_m,
                                          std::size_t radius) {
    std::vector<double> smooth_m = smoothed(heights_m, radius);
    const auto r = static_cast<double>(radius);
    const double divisor = (2.0 * r - 1.0) * (2.0 * r + 1.0) * (2.0 * r + 3.0) / 3.0;
    for (std::size_t i = radius; radius > 0 && i + radius < heights_m.size(); ++i) {
        double rise_m = 0.0;
        for (std::size_t away = 1; away <= radius; ++away) {
            const auto x = static_cast<double>(away);
            const double weight = (3.0 * r * r + 3.0 * r - 1.0 - 5.0 * x * x) / divisor;
            rise_m += weight *
                      ((heights_m[i - away] - heights_m[i]) + (heights_m[i + away] - heights_m[i]));
        }
        smooth_m[i] = heights_m[i] + rise_m;
    }
    return smooth_m;
}

std::vector<double> cleaned_land(const std::vector<double>& heights_m, const Cleaning& cleaning) {
    if (heights_m.empty())
        return {};
    std::vector<double> clean_m = smoothed_by_parabolas(heights_m, cleaning.radius);
    if (cleaning.threshold_m <= 0.0)
        return clean_m; // every step counts
    const std::vector<double> searched_m =
        smoothed(smoothed(heights_m, cleaning.radius), cleaning.radius);
    std::vector<std::size_t> turns = turning_points(searched_m, cleaning.threshold_m);
    if (turns.empty())
        turns = lone_slope(heights_m, searched_m);
    if (turns.empty()) {
        const double mean_m = std::accumulate(clean_m.begin(), clean_m.end(), 0.0) /
                              static_cast<double>(clean_m.size());
        return std::vector<double>(clean_m.size(), mean_m);
    }
    std::fill_n(clean_m.begin(), turns.front(), clean_m[turns.front()]);
    for (std::size_t i = 1; i < turns.size(); ++i)
        make_swing(std::span(clean_m).subspan(turns[i - 1], turns[i] - turns[i - 1] + 1),
                   (cleaning.radius + 1) / 2);
    std::fill(clean_m.begin() + static_cast<std::ptrdiff_t>(turns.back()),
              clean_m.end(),
              clean_m[turns.back()]);
    return clean_m;
}

std::vector<double> cleaned_lake(const std::vector<double>& heights_m) {
    if (heights_m.empty())
        return {};
    std::vector<double> sorted_m = heights_m;
    const auto middle = sorted_m.begin() + static_cast<std::ptrdiff_t>(sorted_m.size() / 2);
    std::nth_element(sorted_m.begin(), middle, sorted_m.end());
    double median_m = *middle;
    if (sorted_m.size() % 2 == 0)
        median_m = 0.5 * (median_m + *std::max_element(sorted_m.begin(), middle));
    return std::vector<double>(heights_m.size(), median_m);
}

std::vector<double> cleaned_river(const std::vector<double>& heights_m, std::size_t radius) {
    std::vector<double> clean_m = smoothed(heights_m, radius);
    make_monotone(clean_m, false);
    ease(clean_m, radius);
    return clean_m;
}

} // namespace tumpline::geo
