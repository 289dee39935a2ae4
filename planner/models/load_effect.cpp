#include "planner/models/load_effect.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr double reference_mps = 1.39; // 5 km/h, where [Naismith1892] walks

/// Power of walking on the level without the 0.19 of standing, W/kg [Looney2022].
double level_power(double S) {
    return 1.78 * std::pow(S, 0.58) + 0.27 * S * S * S * S;
}

double level_power_slope(double S) {
    return 1.78 * 0.58 * std::pow(S, -0.42) + 0.27 * 4.0 * S * S * S;
}

double load_multiplier(double load_ratio) {
    return 1.0 + 1.96 * std::pow(load_ratio, 1.36);
}

/// The speed at which `level_power` is `power`; 0 if it is not above 0.
double speed_at_power_mps(double power) {
    if (power <= 0.0)
        return 0.0;
    double low = 0.0;
    double high = 1.0;
    while (level_power(high) < power)
        high *= 2.0;
    for (int halving = 0; halving < 80; ++halving) {
        const double middle = 0.5 * (low + high);
        (level_power(middle) < power ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// f_L at nodes even in the root of the load ratio, in which it is smooth at 0, with its slopes.
class FactorTable {
  public:
    FactorTable() {
        for (std::size_t node = 0; node < nodes; ++node) {
            const double x = static_cast<double>(node) * step();
            const double l = x * x;
            value_[node] = equal_effort_factor_exact(l);
            slope_[node] = x > 0.0 ? exact_slope(x) : 0.0;
        }
    }

    [[nodiscard]] double at(double load_ratio) const {
        const double place = std::sqrt(std::min(load_ratio, heaviest_load_ratio)) / step();
        const std::size_t node = std::min(static_cast<std::size_t>(place), nodes - 2);
        const double t = place - static_cast<double>(node);
        const double u = 1.0 - t;
        // cubic of Hermite through both nodes with both slopes
        return u * u * ((1.0 + 2.0 * t) * value_[node] + t * step() * slope_[node]) +
               t * t * ((1.0 + 2.0 * u) * value_[node + 1] - u * step() * slope_[node + 1]);
    }

  private:
    static constexpr std::size_t nodes = 1025;

    static double step() { return std::sqrt(heaviest_load_ratio) / static_cast<double>(nodes - 1); }

    /// df/dx with x the root of the load ratio, from the implicit equation.
    static double exact_slope(double x) {
        const double l = x * x;
        const double multiplier = load_multiplier(l);
        const double total = 0.19 + level_power(reference_mps);
        const double multiplier_slope = 1.96 * 1.36 * std::pow(l, 0.36) * 2.0 * x;
        const double S = reference_mps * equal_effort_factor_exact(l);
        const double power_slope = -total / (multiplier * multiplier) * multiplier_slope;
        return power_slope / level_power_slope(S) / reference_mps;
    }

    std::array<double, nodes> value_{};
    std::array<double, nodes> slope_{};
};

constexpr std::array<std::string_view, 2> effect_names = {"equal-effort", "none"};

} // namespace

double equal_effort_factor_exact(double load_ratio) {
    const double l = std::clamp(load_ratio, 0.0, heaviest_load_ratio);
    const double total = 0.19 + level_power(reference_mps);
    return speed_at_power_mps(total / load_multiplier(l) - 0.19) / reference_mps;
}

double equal_effort_factor(double load_ratio) {
    assert(std::isfinite(load_ratio) && load_ratio >= 0.0);
    static const FactorTable table;
    return load_ratio > 0.0 ? table.at(load_ratio) : 1.0;
}

double equal_effort_speed_mps(const EqualEffort& question) {
    const double total = 0.19 + question.reference_eta * level_power(question.reference_mps);
    return speed_at_power_mps((total / load_multiplier(question.load_ratio) - 0.19) / question.eta);
}

double load_factor(LoadEffect effect, double load_ratio, double measured_ratio) {
    switch (effect) {
    case LoadEffect::equal_effort:
        return equal_effort_factor(load_ratio) / equal_effort_factor(measured_ratio);
    case LoadEffect::none:
        return 1.0;
    }
    return 1.0; // not reached: every enumerator returns above
}

bool load_effect_covers(LoadEffect effect, double load_ratio) {
    return effect == LoadEffect::none ||
           (load_ratio >= 0.0 && load_ratio <= equal_effort_most_ratio);
}

std::optional<LoadEffect> load_effect(std::string_view name) {
    const auto* const found = std::find(effect_names.begin(), effect_names.end(), name);
    if (found == effect_names.end())
        return std::nullopt;
    return static_cast<LoadEffect>(found - effect_names.begin());
}

std::string_view load_effect_name(LoadEffect effect) {
    return effect_names.at(static_cast<std::size_t>(effect));
}

std::span<const ModelEntry> load_effect_entries() {
    static constexpr std::array<ModelEntry, 2> entries = {{
        {.family = "load_effect",
         .name = "equal-effort",
         .answers = "How much slower does one walk under this load at the same effort?",
         .source = "EqualEffort",
         .covers = "load up to 0.66 of body mass",
         .is_default = true,
         .why = "agrees with three independent observations, and ties speed and energy together"},
        {.family = "load_effect",
         .name = "none",
         .answers = "What if the load did not slow anybody?",
         .source = "Arithmetic",
         .covers = "light packs",
         .why = "to see what the load costs, or if your own pace was recorded under this load"},
    }};
    return entries;
}

} // namespace tumpline::planner
