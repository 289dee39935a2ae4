#include "planner/models/walking_rules.h"

#include "planner/models/constants.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr double hour = 3600.0;

/// One fitness of Tranter's table: corrected hours under Naismith's hours of `tranter_columns`;
/// 0 where the cell is blank.
struct TranterRow {
    double fitness_min;
    std::array<double, 16> hours;
};

constexpr std::array<double, 16> tranter_columns = {
    2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24};

// The 2.75 in the first row is from memory: the copy seen prints 2.25, which breaks the spacing.
constexpr std::array<TranterRow, 6> tranter_rows = {{
    {15, {1, 1.5, 2, 2.75, 3.5, 4.5, 5.5, 6.75, 7.75, 10, 12.5, 14.5, 17, 19.5, 22, 24}},
    {20, {1.25, 2.25, 3.25, 4.5, 5.5, 6.5, 7.75, 8.75, 10, 12.5, 15, 17.5, 20, 23, 0, 0}},
    {25, {1.5, 3, 4.25, 5.5, 7, 8.5, 10, 11.5, 13.25, 15, 17.5, 0, 0, 0, 0, 0}},
    {30, {2, 3.5, 5, 6.75, 8.5, 10.5, 12.5, 14.5, 0, 0, 0, 0, 0, 0, 0, 0}},
    {40, {2.75, 4.25, 5.75, 7.5, 9.5, 11.5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}},
    {50, {3.25, 4.75, 6.5, 8.5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}},
}};

} // namespace

double naismith_metric_s(const WalkTotals& walk) {
    return (walk.length_m / 1000.0 / 5.0 + walk.ascent_m / 600.0) * hour;
}

double naismith_1892_s(const WalkTotals& walk) {
    return (walk.length_m / m_per_mile / 3.0 + walk.ascent_m / m_per_foot / 2000.0) * hour;
}

double langmuir_1984_s(const WalkTotals& walk, const LangmuirDescent& descent) {
    const double correction_h = (descent.steep_m - descent.moderate_m) / 1800.0;
    return std::max(0.0, naismith_metric_s(walk) + correction_h * hour);
}

double langmuir_party_s(const WalkTotals& walk) {
    return (walk.length_m / 1000.0 / 4.0 + walk.ascent_m / 450.0) * hour;
}

std::optional<double> tranter_s(double naismith_s, double fitness_s) {
    return tranter_s(naismith_s,
                     fitness_s,
                     {.load_20_kg = false, .night_or_headwind = false, .bad_footing_levels = 0});
}

std::optional<double> tranter_s(double naismith_s, double fitness_s, const TranterBurden& burden) {
    std::size_t row = 0;
    while (row < tranter_rows.size() && tranter_rows[row].fitness_min * 60.0 < fitness_s - 1e-9)
        ++row;
    row += static_cast<std::size_t>(burden.load_20_kg) +
           static_cast<std::size_t>(burden.night_or_headwind) +
           static_cast<std::size_t>(std::max(burden.bad_footing_levels, 0));
    if (row >= tranter_rows.size())
        return std::nullopt;

    const std::array<double, 16>& hours = tranter_rows[row].hours;
    const double naismith_h = naismith_s / hour;
    if (naismith_h <= tranter_columns.front())
        return std::max(0.0, naismith_h) / tranter_columns.front() * hours.front() * hour;
    for (std::size_t column = 1; column < hours.size() && hours[column] > 0.0; ++column) {
        if (naismith_h > tranter_columns[column])
            continue;
        const double share = (naismith_h - tranter_columns[column - 1]) /
                             (tranter_columns[column] - tranter_columns[column - 1]);
        return std::lerp(hours[column - 1], hours[column], share) * hour;
    }
    return std::nullopt;
}

double scarf_2007_m(const WalkTotals& walk, double alpha) {
    return walk.length_m + alpha * walk.ascent_m;
}

double swiss_rule_of_thumb_s(const WalkTotals& walk) {
    return swiss_training_rule_s(walk) + walk.descent_m / 800.0 * hour;
}

double swiss_training_rule_s(const WalkTotals& walk) {
    return (walk.length_m / 1000.0 / 4.0 + walk.ascent_m / 400.0) * hour;
}

double swiss_effort_km(const WalkTotals& walk) {
    return walk.length_m / 1000.0 + walk.ascent_m / 100.0 + walk.descent_m / 150.0;
}

double din_33466_s(const WalkTotals& walk) {
    const double h = walk.length_m / 1000.0 / 4.0;
    const double v = walk.ascent_m / 300.0 + walk.descent_m / 500.0;
    return (std::max(h, v) + std::min(h, v) / 2.0) * hour;
}

} // namespace tumpline::planner
