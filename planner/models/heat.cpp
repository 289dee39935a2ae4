#include "planner/models/heat.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

using ByEffort = std::array<int, 3>;

/// Minutes of work; rows are heat categories, columns easy, moderate, hard work.
constexpr std::array<ByEffort, 5> work{{
    {60, 60, 40},
    {60, 50, 30},
    {60, 40, 30},
    {60, 30, 20},
    {50, 20, 10},
}};

struct UnusedRow {
    double from_c;
    ByEffort minutes;
    std::array<double, 3> litres;
};

/// Rows by the lower end of their band; columns light, moderate, heavy.
constexpr std::array<UnusedRow, 6> unused{{
    {20.0, {60, 60, 40}, {0.5, 0.75, 0.75}},
    {25.5, {50, 40, 30}, {0.5, 0.75, 0.75}},
    {26.5, {40, 30, 20}, {0.5, 0.75, 1.0}},
    {29.5, {30, 20, 10}, {0.75, 0.75, 1.0}},
    {31.0, {20, 10, 0}, {0.75, 0.75, 1.0}},
    {32.0, {10, 0, 0}, {1.0, 1.0, 1.0}},
}};

std::size_t column_of(Effort effort) {
    switch (effort) {
    case Effort::easy:
        return 0;
    case Effort::moderate:
        return 1;
    case Effort::hard:
        return 2;
    }
    return 2;
}

/// Bands are printed to a tenth.
const UnusedRow* row_at(double wbgt_c) {
    const double printed_c = std::round(wbgt_c * 10.0) / 10.0;
    const UnusedRow* found = nullptr;
    for (const UnusedRow& row : unused)
        if (printed_c >= row.from_c)
            found = &row;
    return found;
}

} // namespace

double vapour_pressure_hpa(const Air& air) {
    const double T = air.temperature_c;
    return air.humidity * 6.105 * std::exp(17.27 * T / (237.7 + T));
}

double wbgt_c(const Air& air) {
    return 0.567 * air.temperature_c + 0.393 * vapour_pressure_hpa(air) + 3.94;
}

int work_minutes(int category, Effort effort) {
    return work.at(static_cast<std::size_t>(std::clamp(category, 1, 5) - 1)).at(column_of(effort));
}

std::optional<int> unused_work_minutes(double wbgt_c, Effort effort) {
    const UnusedRow* const row = row_at(wbgt_c);
    return row != nullptr ? std::optional(row->minutes.at(column_of(effort))) : std::nullopt;
}

std::optional<double> unused_litres(double wbgt_c, Effort effort) {
    const UnusedRow* const row = row_at(wbgt_c);
    return row != nullptr ? std::optional(row->litres.at(column_of(effort))) : std::nullopt;
}

std::span<const ModelEntry> heat_entries() {
    static constexpr std::array<ModelEntry, 3> entries{{
        {.family = "heat",
         .name = "wbgt-by-humidity",
         .answers = "How hot is it for somebody at work, by temperature and humidity?",
         .source = "BOMThermal",
         .covers = "moderately high sun and light wind; a first look, not a measurement",
         .is_default = true,
         .why = "it asks for nothing that a forecast does not say"},
        {.family = "heat",
         .name = "work-rest-used-to-heat",
         .answers = "How many minutes of an hour does somebody used to heat work?",
         .source = "TBMED507",
         .covers = "from 25.6 C of the index, five categories, four hours of work",
         .is_default = false,
         .why = "after ten to fourteen days in such heat"},
        {.family = "heat",
         .name = "work-rest-not-used-to-heat",
         .answers = "How many minutes of an hour does somebody not used to heat work?",
         .source = "DNDHeat",
         .covers = "from 20.0 C of the index",
         .is_default = false,
         .why = "for whoever comes from a cooler place"},
    }};
    return entries;
}

} // namespace tumpline::planner
