#include "tests/support/hand_built_parts.h"

#include <cstddef>
#include <string>
#include <vector>

namespace tumpline::test {

using namespace planner;

namespace {

/// A load whose parts are those of its worst; start and end differ from it by food and water.
struct Load {
    double pack_start_kg, pack_end_kg;
    Parts parts;
    double worn_kg, limit_kg, energy_kcal;
};

MemberLoad member_load(const std::string& member, const Load& load) {
    MemberLoad made;
    made.member = member;
    made.pack_start_kg = load.pack_start_kg;
    made.pack_end_kg = load.pack_end_kg;
    made.pack_max_kg = load.parts.sum_kg();
    made.worn_kg = load.worn_kg;
    made.limit_kg = load.limit_kg;
    made.parts = load.parts;
    made.energy_j = load.energy_kcal * planner::j_per_kcal;
    return made;
}

Parts parts(double kit_kg, Parts rest) {
    rest.kit_kg = kit_kg;
    return rest;
}

void load_craft(PlanLeg& leg) {
    for (const char* name : {"red boat", "blue boat"}) {
        const bool red = std::string(name) == "red boat";
        CraftLoad craft;
        craft.craft = name;
        craft.left = {{"sleeping bag and mat", 1.4, {red ? 4U : 9U}},
                      {"food", red ? 2.31 : 2.6, {}}};
        craft.right = {{"clothes", 2.1, {red ? 5U : 10U}},
                       {red ? "stove and pot" : "tent", red ? 0.52 : 1.9, {red ? 1U : 0U}}};
        craft.at_hand = {{"throw bag", red ? 0.35 : 0.0, {2}}, {"water", 1.0, {}}};
        if (!red)
            craft.at_hand.erase(craft.at_hand.begin());
        for (const Stowed& bag : craft.left)
            craft.left_kg += bag.mass_kg;
        for (const Stowed& bag : craft.right)
            craft.right_kg += bag.mass_kg;
        for (const Stowed& bag : craft.at_hand)
            craft.at_hand_kg += bag.mass_kg;
        craft.load_kg =
            (red ? 68.0 : 82.0) + 1.8 + craft.left_kg + craft.right_kg + craft.at_hand_kg;
        craft.payload_kg = 160.0;
        craft.draft_change_m = red ? 0.021 : 0.024;
        craft.freeboard_m = 0.20 - *craft.draft_change_m;
        leg.craft.push_back(craft);
    }
}

} // namespace

std::vector<PlanLeg> hand_built_legs() {
    std::vector<PlanLeg> legs(6);
    PlanLeg& pass = legs[0];
    pass.leg = 1;
    pass.day = 1;
    pass.name = "Road end over the saddle";
    pass.travel = Travel::walk;
    pass.from_m = 0.0;
    pass.to_m = 14200.0;
    pass.ascent_m = 620.0;
    pass.descent_m = 310.0;
    pass.moving_s = 18600.0;
    pass.moving_low_s = 15800.0;
    pass.moving_high_s = 22300.0;
    pass.rest_s = 3120.0;
    pass.start = hand_built_time(1, clock_minutes(8, 0));
    pass.end = hand_built_time(1, clock_minutes(14, 2));
    pass.on_foot_m = 14200.0;
    pass.loads = {
        member_load(
            "Ada",
            {19.104,
             17.91,
             parts(8.15, {.craft_kg = 3.3, .food_kg = 4.7, .fuel_kg = 0.304, .water_kg = 2.65}),
             1.9,
             22.0,
             2410.0}),
        member_load("Björn",
                    {20.23,
                     18.87,
                     parts(8.93, {.craft_kg = 3.3, .food_kg = 5.2, .water_kg = 2.8}),
                     2.1,
                     24.0,
                     2830.0})};

    PlanLeg& tarn = legs[1];
    tarn.leg = 2;
    tarn.day = 1;
    tarn.name = "Across Long Tarn";
    tarn.travel = Travel::paddle;
    tarn.from_m = 14200.0;
    tarn.to_m = 17300.0;
    tarn.moving_s = 2940.0;
    tarn.moving_low_s = 2600.0;
    tarn.moving_high_s = 3600.0;
    tarn.changeover_s = 2100.0;
    tarn.start = hand_built_time(1, clock_minutes(14, 2));
    tarn.end = hand_built_time(1, clock_minutes(15, 26));
    tarn.wind_mps = 2.8;
    tarn.wind_force = 2;
    tarn.wind_head_mps = 1.2;
    tarn.loads = {
        member_load("Ada",
                    {16.24,
                     16.1,
                     parts(7.18, {.food_kg = 4.31, .fuel_kg = 0.304, .water_kg = 1.0}),
                     1.8,
                     0.0,
                     190.0}),
        member_load(
            "Björn",
            {17.2, 17.06, parts(7.96, {.food_kg = 4.76, .water_kg = 1.0}), 1.8, 0.0, 215.0})};
    load_craft(tarn);

    PlanLeg& carry = legs[2];
    carry.leg = 3;
    carry.day = 2;
    carry.name = "Fall carry";
    carry.travel = Travel::portage;
    carry.from_m = 17300.0;
    carry.to_m = 18400.0;
    carry.ascent_m = 12.0;
    carry.descent_m = 68.0;
    carry.moving_s = 3240.0;
    carry.moving_low_s = 2760.0;
    carry.moving_high_s = 4100.0;
    carry.changeover_s = 1200.0;
    carry.start = hand_built_time(2, clock_minutes(8, 0));
    carry.end = hand_built_time(2, clock_minutes(9, 14));
    carry.lengths = 3.0;
    carry.on_foot_m = 3300.0;
    carry.loads = {
        member_load(
            "Ada",
            {16.784,
             16.784,
             parts(8.15, {.craft_kg = 3.63, .food_kg = 3.7, .fuel_kg = 0.304, .water_kg = 1.0}),
             1.9,
             13.0,
             390.0}),
        member_load("Björn",
                    {17.72,
                     17.72,
                     parts(8.93, {.craft_kg = 3.63, .food_kg = 4.16, .water_kg = 1.0}),
                     2.1,
                     15.0,
                     450.0})};
    carry.loads[0].carries = {{1, 12.854, 1.0, {{"pack"}}},
                              {2, 3.93, 1.0, {{"red boat"}, {"paddle"}}}};
    carry.loads[1].carries = {{1, 13.92, 1.0, {{"pack"}}}, {2, 3.8, 1.0, {{"blue boat"}}}};
    for (MemberLoad& load : carry.loads) { // on a portage the worst is the heaviest carry
        load.pack_max_kg = load.carries.front().pack_kg;
        load.pack_start_kg = load.pack_max_kg;
        load.pack_end_kg = load.pack_max_kg;
        load.parts.craft_kg = 0.0;
        load.parts.kit_kg =
            load.pack_max_kg - load.parts.food_kg - load.parts.fuel_kg - load.parts.water_kg;
    }
    carry.choices = {{.carries = 1.0,
                      .rolled = false,
                      .lengths = 1.0,
                      .walked_m = 1100.0,
                      .moving_s = 1260.0,
                      .changeover_s = 1200.0,
                      .heaviest_kg = 17.72,
                      .heaviest_member = "Björn",
                      .heaviest_ratio = 1.291,
                      .within_limits = false,
                      .chosen = false},
                     {.carries = 1.0,
                      .rolled = true,
                      .lengths = 1.0,
                      .walked_m = 1100.0,
                      .moving_s = 1230.0,
                      .changeover_s = 5700.0,
                      .heaviest_kg = 17.9,
                      .heaviest_member = "Björn",
                      .heaviest_ratio = 1.3,
                      .within_limits = false,
                      .chosen = false},
                     {.carries = 2.0,
                      .rolled = false,
                      .lengths = 3.0,
                      .walked_m = 3300.0,
                      .moving_s = 3240.0,
                      .changeover_s = 1200.0,
                      .heaviest_kg = 13.92,
                      .heaviest_member = "Björn",
                      .heaviest_ratio = 0.989,
                      .within_limits = true,
                      .chosen = true}};
    carry.break_even_m = 2350.0;

    for (std::size_t half = 0; half < 2; ++half) {
        PlanLeg& river = legs[3 + half];
        const bool first = half == 0;
        river.leg = 4;
        river.day = first ? 2 : 3;
        river.part = first ? 1 : 2;
        river.name = "Upper river";
        river.travel = Travel::paddle;
        river.from_m = first ? 18400.0 : 32400.0;
        river.to_m = first ? 32400.0 : 41900.0;
        river.descent_m = first ? 33.0 : 19.0;
        river.moving_s = first ? 6900.0 : 4740.0;
        river.moving_low_s = first ? 6100.0 : 4200.0;
        river.moving_high_s = first ? 8600.0 : 5900.0;
        river.changeover_s = first ? 1500.0 : 0.0;
        river.rest_s = first ? 1140.0 : 780.0;
        river.start = first ? hand_built_time(2, clock_minutes(9, 14))
                            : hand_built_time(3, clock_minutes(8, 0));
        river.end = first ? hand_built_time(2, clock_minutes(11, 53))
                          : hand_built_time(3, clock_minutes(9, 32));
        river.gradient = first ? 33.0 / 14000.0 : 19.0 / 9500.0;
        river.steepest_500m = first ? 0.006 : 0.004;
        river.current_mps = 1.0;
        if (!first) // the second day's stretch has nobody's figure for its current
            river.current_estimate = {.slow_mps = 0.9,
                                      .likely_mps = 1.0,
                                      .fast_mps = 1.2,
                                      .slope = 0.002,
                                      .depth_m = 0.6,
                                      .bed = "winding-pools-shoals",
                                      .steep = false,
                                      .limited = false};
        const double eaten_kg = first ? 0.0 : 1.0;
        river.loads = {
            member_load(
                "Ada",
                {12.134 - eaten_kg,
                 11.93 - eaten_kg,
                 parts(7.18, {.food_kg = 3.65 - eaten_kg, .fuel_kg = 0.304, .water_kg = 1.0}),
                 1.8,
                 0.0,
                 410.0}),
            member_load("Björn",
                        {12.97 - eaten_kg,
                         12.74 - eaten_kg,
                         parts(7.96, {.food_kg = 4.01 - eaten_kg, .water_kg = 1.0}),
                         1.8,
                         0.0,
                         465.0})};
        load_craft(river);
    }

    PlanLeg& path = legs[5];
    path.leg = 5;
    path.day = 3;
    path.name = "Meadow path to the bridge";
    path.travel = Travel::walk;
    path.from_m = 41900.0;
    path.to_m = 46000.0;
    path.ascent_m = 40.0;
    path.descent_m = 22.0;
    path.moving_s = 4080.0;
    path.moving_low_s = 3500.0;
    path.moving_high_s = 4900.0;
    path.changeover_s = 3600.0;
    path.rest_s = 660.0;
    path.start = hand_built_time(3, clock_minutes(9, 32));
    path.end = hand_built_time(3, clock_minutes(11, 51));
    path.on_foot_m = 4100.0;
    path.loads = {
        member_load("Ada",
                    {15.434,
                     15.0,
                     parts(8.15,
                           {.craft_kg = 3.63,
                            .food_kg = 1.9,
                            .fuel_kg = 0.2,
                            .water_kg = 1.2,
                            .waste_kg = 0.354}),
                     1.9,
                     22.0,
                     470.0}),
        member_load(
            "Björn",
            {16.36,
             15.91,
             parts(8.93, {.craft_kg = 3.63, .food_kg = 2.3, .water_kg = 1.2, .waste_kg = 0.3}),
             2.1,
             24.0,
             540.0})};
    for (PlanLeg& leg : legs) // what is packed at the start is the worst of a leg without a spring
        for (MemberLoad& load : leg.loads) {
            load.pack_end_kg += load.pack_max_kg - load.pack_start_kg;
            load.pack_start_kg = load.pack_max_kg;
        }
    for (PlanLeg& leg : legs)
        leg.speed_mps =
            (leg.travel == Travel::paddle ? leg.to_m - leg.from_m : leg.on_foot_m) / leg.moving_s;
    return legs;
}

} // namespace tumpline::test
