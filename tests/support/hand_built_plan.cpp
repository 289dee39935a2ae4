#include "tests/support/hand_built_plan.h"

#include "tests/support/hand_built_parts.h"

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::test {

namespace {

using namespace std::chrono_literals;
using namespace planner;

std::vector<PlanDay> days(const std::vector<PlanLeg>& legs) {
    std::vector<PlanDay> days(3);
    const std::vector<std::string> stops = {"Road end", "Birch spit", "Gravel bar", "Road bridge"};
    for (int number = 1; number <= 3; ++number) {
        PlanDay& day = days[static_cast<std::size_t>(number - 1)];
        day.day = number;
        day.date = std::chrono::year_month_day{
            std::chrono::sys_days{std::chrono::year{2027} / std::chrono::June / 18} +
            std::chrono::days{number - 1}};
        day.from = stops[static_cast<std::size_t>(number - 1)];
        day.to = stops[static_cast<std::size_t>(number)];
        day.camp = {61.52 + 0.1 * number, 13.1};
        day.from_m = -1.0;
        for (const char* name : {"Ada", "Björn"}) {
            MemberDay& member = day.members.emplace_back();
            member.member = name;
            member.energy_j = (std::string(name) == "Ada" ? 1650.0 : 1900.0) * planner::j_per_kcal;
            member.food_kg = std::string(name) == "Ada" ? 0.61 : 0.7;
            member.water_l = 4.9;
        }
        std::size_t index = 0;
        for (const PlanLeg& leg : legs) {
            ++index;
            if (leg.day != number)
                continue;
            if (day.from_m < 0.0) {
                for (std::size_t member = 0; member < 2; ++member)
                    day.members[member].set_off_kg = leg.loads[member].pack_start_kg;
                day.from_m = leg.from_m;
                day.set_off = leg.start;
            }
            day.to_m = leg.to_m;
            const double length_m = leg.to_m - leg.from_m;
            (leg.travel == Travel::walk      ? day.walk_m
             : leg.travel == Travel::portage ? day.portage_m
                                             : day.paddle_m) += length_m;
            day.on_foot_m += leg.on_foot_m;
            day.ascent_m += leg.ascent_m;
            day.descent_m += leg.descent_m;
            day.moving_s += leg.moving_s;
            day.changeover_s += leg.changeover_s;
            day.rest_s += leg.rest_s;
            day.arrive = leg.end;
            for (std::size_t member = 0; member < 2; ++member) {
                day.members[member].energy_j += leg.loads[member].energy_j;
                if (leg.travel != Travel::paddle &&
                    leg.loads[member].pack_max_kg > day.members[member].heaviest_kg) {
                    day.members[member].heaviest_kg = leg.loads[member].pack_max_kg;
                    day.members[member].heaviest_leg = PlanLegNumber::of_index(index - 1);
                }
            }
        }
        day.arrive_early = day.arrive - 50min;
        day.arrive_late = day.arrive + 80min;
        day.light.sun.rise = hand_built_time(number, clock_minutes(3, 42));
        day.light.sun.set = hand_built_time(number, clock_minutes(22, 51));
        day.light.twilight.rise = hand_built_time(number, clock_minutes(2, 1));
        day.light.twilight.day = geo::SunDay::rises_only;
        day.food_kg = day.members[0].food_kg + day.members[1].food_kg;
        day.fuel_kg = 0.06;
        day.water_l = day.members[0].water_l + day.members[1].water_l;
    }
    const double starts_kg[3][2] = {{19.4, 20.6}, {17.6, 18.5}, {15.8, 16.7}};
    for (std::size_t day = 0; day < 3; ++day)
        for (std::size_t member = 0; member < 2; ++member) {
            days[day].members[member].pack_start_kg = starts_kg[day][member];
            days[day].members[member].pack_end_kg =
                day < 2 ? starts_kg[day + 1][member] : starts_kg[day][member] - 1.2;
        }
    return days;
}

Totals totals(const std::vector<PlanDay>& days) {
    Totals sum;
    for (const PlanDay& day : days) {
        sum.distance_m += day.to_m - day.from_m;
        sum.walk_m += day.walk_m;
        sum.portage_m += day.portage_m;
        sum.paddle_m += day.paddle_m;
        sum.on_foot_m += day.on_foot_m;
        sum.ascent_m += day.ascent_m;
        sum.descent_m += day.descent_m;
        sum.moving_s += day.moving_s;
        sum.changeover_s += day.changeover_s;
        sum.rest_s += day.rest_s;
        for (const MemberDay& member : day.members)
            sum.energy_j += member.energy_j;
    }
    sum.elapsed_s =
        std::chrono::duration<double>(days.back().arrive - days.front().set_off).count();
    sum.days = static_cast<int>(days.size());
    sum.food_kg = 9.9;
    sum.fuel_kg = 0.154;
    return sum;
}

std::vector<Caution> cautions() {
    return {
        {Level::caution,
         "cold-water",
         std::nullopt,
         std::nullopt,
         "The water is 9 °C: a swim of minutes takes the strength of hands and arms. Dress for it, "
         "stay near the shore, and ask local guides.",
         "common practice, no source"},
        {Level::note,
         "gradient-hint",
         2,
         LegNumber{4},
         "The steepest 500 m of this river fall 6 m per km; read current descriptions of it.",
         "common practice, no source",
         "The steepest 500 yd of this river fall 32 ft per mile; read current descriptions of it."},
        {Level::note,
         "level-ground-assumed",
         3,
         LegNumber{5},
         "The raster does not cover 300 m of this leg; they are taken as level.",
         "docs/models/elevation.md"},
        {Level::note,
         "usual-water",
         std::nullopt,
         std::nullopt,
         "Water rises and falls within hours. Current information on the river, local authorities "
         "and qualified guides come before this plan.",
         "common practice, no source"}};
}

std::vector<Event> events() {
    return {{EventKind::set_off,
             1,
             1,
             0.0,
             hand_built_time(1, clock_minutes(8, 0)),
             0.0,
             "Road end",
             0.0},
            {EventKind::fill_water,
             1,
             1,
             6300.0,
             hand_built_time(1, clock_minutes(10, 40)),
             0.0,
             "Shelf spring",
             2.5},
            {EventKind::boots_to_boat,
             1,
             2,
             14200.0,
             hand_built_time(1, clock_minutes(14, 2)),
             2100.0,
             "",
             0.0},
            {EventKind::arrive,
             1,
             2,
             17300.0,
             hand_built_time(1, clock_minutes(15, 26)),
             0.0,
             "Birch spit",
             0.0},
            {EventKind::set_off,
             2,
             3,
             17300.0,
             hand_built_time(2, clock_minutes(8, 0)),
             0.0,
             "Birch spit",
             0.0},
            {EventKind::landing,
             2,
             4,
             25100.0,
             hand_built_time(2, clock_minutes(10, 30)),
             600.0,
             "",
             0.0},
            {EventKind::scout,
             2,
             4,
             25100.0,
             hand_built_time(2, clock_minutes(10, 40)),
             900.0,
             "",
             0.0},
            {EventKind::arrive,
             2,
             4,
             32400.0,
             hand_built_time(2, clock_minutes(11, 53)),
             0.0,
             "Gravel bar",
             0.0},
            {EventKind::set_off,
             3,
             4,
             32400.0,
             hand_built_time(3, clock_minutes(8, 0)),
             0.0,
             "Gravel bar",
             0.0},
            {EventKind::boat_to_boots,
             3,
             5,
             41900.0,
             hand_built_time(3, clock_minutes(9, 32)),
             3600.0,
             "",
             0.0},
            {EventKind::arrive,
             3,
             5,
             46000.0,
             hand_built_time(3, clock_minutes(11, 51)),
             0.0,
             "Road bridge",
             0.0}};
}

/// Enough entries that the list is not empty: the food of both and one breakfast.
Ledger ledger() {
    Ledger ledger;
    const auto book = [&](Entry entry) {
        entry.step = ledger.entries.size();
        ledger.entries.push_back(std::move(entry));
    };
    for (std::size_t member = 0; member < 2; ++member) {
        Entry packed;
        packed.member = member;
        packed.part = Part::food;
        packed.mass_mg = member == 0 ? 4'700'000 : 5'200'000;
        packed.why = "packed at Road end";
        book(packed);
        Entry breakfast;
        breakfast.member = member;
        breakfast.part = Part::food;
        breakfast.mass_mg = 180'000;
        breakfast.from = Account::pack;
        breakfast.to = Account::eaten;
        breakfast.why = "breakfast";
        book(breakfast);
    }
    return ledger;
}

CarrySummary carrying(const PlanLeg& portage) {
    CarrySummary summary;
    summary.sentence =
        "A double carry with the boats inflated; everyone always takes their own boat.";
    summary.portages = 1;
    summary.length_m = portage.to_m - portage.from_m;
    summary.spans = {{.carries = 2.0,
                      .rolled = false,
                      .first_day = 2,
                      .last_day = 2,
                      .first_plan_leg = 3,
                      .last_plan_leg = 3,
                      .portages = 1}};
    for (const auto& [craft, member] : {std::pair{"red boat", "Ada"}, {"blue boat", "Björn"}})
        summary.boats.push_back(
            {.craft = craft, .members = {member}, .first_day = 2, .last_day = 2, .portages = 1});
    summary.ways = {{.carries = std::nullopt,
                     .rolled = false,
                     .moving_s = portage.moving_s,
                     .changeover_s = portage.changeover_s,
                     .walked_m = portage.on_foot_m,
                     .more_s = 0.0,
                     .more_walked_m = 0.0,
                     .heaviest_kg = 13.92,
                     .heaviest_member = "Björn",
                     .heaviest_ratio = 0.989,
                     .over_limit = 0,
                     .most_over_kg = 0.0,
                     .within_from_day = 2},
                    {.carries = 1.0,
                     .rolled = false,
                     .moving_s = 1260.0,
                     .changeover_s = 1200.0,
                     .walked_m = 1100.0,
                     .more_s = -1980.0,
                     .more_walked_m = -2200.0,
                     .heaviest_kg = 17.72,
                     .heaviest_member = "Björn",
                     .heaviest_ratio = 1.291,
                     .over_limit = 1,
                     .most_over_kg = 4.0,
                     .within_from_day = std::nullopt}};
    return summary;
}

/// A river with two levels, of which one has no reading.
void add_hand_built_flow(planner::Plan& plan) {
    using planner::FlowLevel;
    const planner::GaugeReading reading{.value = 14.0, .stage = false};
    const auto afloat = std::find_if(plan.legs.begin(), plan.legs.end(), [](const auto& leg) {
        return leg.travel == planner::Travel::paddle;
    });
    afloat->flow = planner::PlanFlow{.gauge = "bridge",
                                     .now = {.column = FlowLevel::normal, .reading = {}},
                                     .states = {{.current_mps = 1.0, .reading = reading}}};
    planner::FlowPlan flow{.level = FlowLevel::normal, .moving_s = 36'000.0, .days = 3};
    flow.legs.push_back({.leg = afloat->leg,
                         .name = afloat->name,
                         .current_mps = 1.0,
                         .moving_s = 3600.0,
                         .reading = reading,
                         .river_class = 1,
                         .asked = true});
    flow.appointments.push_back({.what = "last bus", .spare_s = 1800.0});
    plan.flows = {flow};
    plan.decisions.push_back(
        {.leg = afloat->leg,
         .day = afloat->day,
         .name = afloat->name,
         .at = "Landing",
         .along_m = afloat->from_m,
         .gauge = "bridge",
         .below = planner::GaugeReading{.value = 8.0, .stage = false},
         .above = planner::GaugeReading{.value = 40.0, .stage = false},
         .not_at = {},
         .above_why = "it is said not to be runnable",
         .reading_known = true,
         .latest = planner::LatestStart{.at = afloat->start, .keeps = "dusk", .passed = false},
         .wind_mps = 8.0,
         .wind_craft = "red boat",
         .instead = {},
         .wait_at = "Landing",
         .back_to = {},
         .back_s = {}});
}

} // namespace

Plan hand_built_plan() {
    Plan plan;
    plan.trip = hand_built_trip();
    plan.models = {{"walking", "swiss-signpost", "[SwissTopo2015]"},
                   {"load_effect", "equal-effort", "docs/models/load_effect.md"},
                   {"energy", "lcda-backpacking-2022", "[Looney2022]"},
                   {"resting", "mifflin-st-jeor-1990", "[Mifflin1990]"},
                   {"paddling", "power-balance", "docs/models/paddling.md"}};
    plan.bands = {{.family = "walking", .low = 0.85, .high = 1.25, .basis = "a judgement"},
                  {.family = "paddling", .low = 0.85, .high = 1.25, .basis = "a judgement too"}};
    plan.defaults = {{"/days/hours", "8", "common practice, no source"},
                     {"/changeovers/boots_to_boat", "35 min", "common practice, no source"},
                     {"/food/replace", "0.9", "common practice, no source"}};
    plan.converged = {
        .rounds = 6, .largest_change_kg = 0.0004, .largest_change_s = 0.3, .settled = true};
    plan.legs = hand_built_legs();
    plan.days = days(plan.legs);
    plan.totals = totals(plan.days);
    plan.events = events();
    add_hand_built_ends(plan);
    add_hand_built_packing(plan);
    add_hand_built_supplies(plan);
    plan.carrying = carrying(plan.legs[2]);
    plan.remedies = hand_built_remedies();
    plan.other_ways = hand_built_other_ways();
    add_hand_built_flow(plan);
    plan.sharing.heaviest_ratio = 0.868;
    plan.sharing.lower_bound = 0.855;
    plan.sharing.member = "Ada";
    plan.sharing.plan_leg = 1;
    plan.heaviest_packs = {{"Ada", 19.104, 22.0, 1}, {"Björn", 20.23, 24.0, 1}};
    plan.cautions = cautions();
    plan.ledger = ledger();
    return plan;
}

} // namespace tumpline::test
