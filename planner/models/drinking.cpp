#include "planner/models/drinking.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr double gallon_l = 3.785411784;

// Quarts per hour; rows are heat categories, columns easy, moderate, hard work.
constexpr std::array<std::array<double, 3>, 5> quarts{{
    {0.5, 0.75, 0.75},
    {0.5, 0.75, 1.0},
    {0.75, 0.75, 1.0},
    {0.75, 0.75, 1.0},
    {1.0, 1.0, 1.0},
}};

constexpr std::array<DailyWater, 6> printed{{
    {"women, temperate, all water including that in food", 2.0, 3.1, "EFSA2010"},
    {"men, temperate, all water including that in food", 2.5, 4.0, "EFSA2010"},
    {"men over 14, beverages alone", resting_l_per_day, resting_l_per_day, "JequierConstant2010"},
    {"men over 14, water in food", 0.75, 0.75, "JequierConstant2010"},
    {"field water supply, cool climate", 0.5 * gallon_l, 1.0 * gallon_l, "MD0535"},
    {"field water supply, hot and dry climate", 2.0 * gallon_l, 6.0 * gallon_l, "MD0535"},
}};

/// More by a twentieth for each degree above 15 C.
double heat_factor(double air_c) {
    return 1.0 + 0.05 * std::max(0.0, air_c - 15.0);
}

} // namespace

double drinking_lps(Effort effort, double air_c) {
    constexpr double second = 1.0 / 3600.0;

    struct Rate {
        double base;
        double cap;
    };

    Rate rate{};
    switch (effort) {
    case Effort::easy:
        rate = {0.30, 0.946};
        break;
    case Effort::moderate:
        rate = {0.45, 0.946};
        break;
    case Effort::hard:
        rate = {0.60, 1.2};
        break;
    }
    return std::min(rate.cap, rate.base * heat_factor(air_c)) * second;
}

double resting_lps(double air_c) {
    return resting_l_per_day / 86400.0 * heat_factor(air_c);
}

double camp_l(const InCamp& camp) {
    return kitchen_l + std::max(0.0, camp.stay_s) * resting_lps(camp.air_c);
}

bool drinking_covers(double air_c) {
    return air_c >= coldest_air_c && air_c <= hottest_air_c;
}

double drinking_day_l(const DrinkingDay& day) {
    return std::min(day.moving_s * day.rate_lps + day.camp_l, most_drunk_per_day_l);
}

std::optional<int> heat_category(double wbgt_c) {
    const double wbgt_f = wbgt_c * 1.8 + 32.0;
    constexpr std::array<double, 5> from_f{78.0, 82.0, 85.0, 88.0, 90.0};
    int category = 0;
    for (const double lower_f : from_f)
        if (wbgt_f >= lower_f - 1e-9)
            ++category;
    if (category == 0)
        return std::nullopt;
    return category;
}

double heat_table_qt_per_h(int category, Effort effort) {
    return quarts[static_cast<std::size_t>(std::clamp(category, 1, 5) - 1)]
                 [static_cast<std::size_t>(effort)];
}

std::span<const DailyWater> daily_water() {
    return printed;
}

std::span<const ModelEntry> drinking_entries() {
    static constexpr std::array<ModelEntry, 2> entries{{
        {.family = "drinking",
         .name = "effort-and-air",
         .answers = "How much water does an hour on the move ask for?",
         .source = "TBMED507",
         .covers = "air from -30 to 45 C; people differ by a factor of two, humid heat asks more",
         .is_default = true,
         .why = "needs only air temperature and effort, and keeps inside the printed limits"},
        {.family = "drinking",
         .name = "heat-table",
         .answers = "What does an army's table give per hour of work in the heat?",
         .source = "TBMED507",
         .covers = "acclimatised soldiers, wet-bulb globe temperature from 25.6 C",
         .why = "to compare with, where the wet-bulb globe temperature is known"},
    }};
    return entries;
}

} // namespace tumpline::planner
