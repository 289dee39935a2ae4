#include "tests/support/hand_built_parts.h"

namespace tumpline::test {

planner::Remedies hand_built_remedies() {
    planner::Remedies remedies;
    remedies.overloaded = {{.member = "Björn",
                            .limit_kg = 21.0,
                            .worst_kg = 22.4,
                            .over_kg = 1.4,
                            .days = {1, 2},
                            .plan_leg = 1}};
    remedies.raise = {.factor = 1.067, .limits_kg = {23.5, 22.4}};
    remedies.leave = {
        .mass_kg = 1.1, .things = {"tarp", "tent"}, .together = false, .heaviest_of_limit = 0.98};
    remedies.supply = {.place = "Birch spit",
                       .after_day = 1,
                       .lighter_kg = 2.3,
                       .heaviest_of_limit = 0.97,
                       .enough = true};
    remedies.relay = {.plan_legs = {1},
                      .more_s = 18000.0,
                      .more_on_foot_m = 28400.0,
                      .dark_days = {1},
                      .heaviest_of_limit = 0.6,
                      .enough = true};
    return remedies;
}

planner::OtherWays hand_built_other_ways() {
    planner::OtherWays others;
    others.planned = {.distance_m = 46000.0,
                      .on_foot_m = 17500.0,
                      .paddle_m = 28500.0,
                      .ascent_m = 840.0,
                      .moving_s = 36000.0,
                      .under_way_s = 50400.0,
                      .days = 3,
                      .energy_j = 22000.0 * planner::j_per_kcal,
                      .carried_kg_km = 690.0,
                      .heaviest_kg = 22.4,
                      .heaviest_member = "Björn",
                      .heaviest_of_limit = 1.067,
                      .stops = {}};
    planner::OtherWay round{.instead_of = {"Across the tarn"},
                            .by = {"Round the tarn"},
                            .without_boats = false,
                            .left_home_kg = 0.0,
                            .refused = "",
                            .figures = others.planned};
    round.figures->on_foot_m = 24100.0;
    round.figures->under_way_s = 54000.0;
    planner::OtherWay none{.instead_of = {"Across the tarn", "Upper river"},
                           .by = {"Round the tarn", "Valley path"},
                           .without_boats = true,
                           .left_home_kg = 14.2,
                           .refused = "\"Gravel bar\" lies off this way",
                           .figures = std::nullopt};
    others.ways = {round, none};
    return others;
}

} // namespace tumpline::test
