#include "tests/support/hand_built_parts.h"

#include <string>
#include <vector>

namespace tumpline::test {

namespace {

using namespace planner;

std::vector<ExitPoint> exits() {
    std::vector<ExitPoint> exits;
    for (int km = 0; km <= 46; ++km) {
        ExitPoint& point = exits.emplace_back();
        point.along_m = 1000.0 * km;
        point.forward = "Road bridge";
        point.back = "Road end";
        point.forward_s = 800.0 * (46 - km);
        point.back_s = 1100.0 * km;
        point.no_return = km == 20;
    }
    return exits;
}

/// Back to the first night's place from a lake; no way back up the river.
std::vector<TurnRound> turn_rounds() {
    return {{.day = 1,
             .back_to = "Road end",
             .back_to_m = 0.0,
             .exit = false,
             .dusk = hand_built_time(1, clock_minutes(23, 40)),
             .limit = TurnLimit::dusk,
             .at = hand_built_time(1, clock_minutes(16, 30)),
             .along_m = 17300.0,
             .leg = 2,
             .whole_day = true,
             .back_s = 25800.0},
            {.day = 2,
             .back_to = "Birch spit",
             .back_to_m = 17300.0,
             .exit = false,
             .dusk = std::nullopt,
             .limit = TurnLimit::no_way_back,
             .at = hand_built_time(2, clock_minutes(9, 14)),
             .along_m = 18400.0,
             .leg = 4,
             .whole_day = false,
             .back_s = 2700.0}};
}

} // namespace

void add_hand_built_ends(planner::Plan& plan) {
    PlanAppointment bus;
    bus.what = "last bus";
    bus.at = "Road bridge";
    bus.day = 3;
    bus.by = hand_built_time(3, clock_minutes(18, 5));
    bus.arrive = hand_built_time(3, clock_minutes(11, 51));
    bus.margin_s = 5400.0;
    bus.spare_s = 17040.0;
    bus.leave_by = {{.place = "Birch spit",
                     .day = 2,
                     .along_m = 17300.0,
                     .at = hand_built_time(2, clock_minutes(20, 7)),
                     .night = true,
                     .planned = hand_built_time(2, clock_minutes(8, 0)),
                     .spare_s = 43620.0,
                     .days_later = 0,
                     .bound = LeaveBound::midnight,
                     .bound_at = "Gravel bar"},
                    {.place = "Gravel bar",
                     .day = 3,
                     .along_m = 32400.0,
                     .at = hand_built_time(3, clock_minutes(12, 44)),
                     .night = true,
                     .planned = hand_built_time(3, clock_minutes(8, 0)),
                     .spare_s = 17040.0,
                     .days_later = 0,
                     .bound = LeaveBound::appointment,
                     .bound_at = "Road bridge"}};
    plan.appointments = {bus};
    plan.connections = {{.what = "morning bus",
                         .place = "Road bridge",
                         .to_start = false,
                         .margin_s = 2700.0,
                         .there = hand_built_time(3, clock_minutes(14, 0)),
                         .taken = hand_built_time(3, clock_minutes(18, 5)),
                         .used = true,
                         .wait_s = 14700.0,
                         .nights = 0,
                         .set_off_moved = false,
                         .before = hand_built_time(3, clock_minutes(9, 10)),
                         .next = hand_built_time(4, clock_minutes(9, 10)),
                         .next_food_kg = 1.2,
                         .next_days = 1,
                         .camp = false,
                         .dry = false,
                         .leave_by = {bus.leave_by.back()}}};
    plan.permits = {{.where = "Gravel bar",
                     .nights = true,
                     .people = 2,
                     .most_people = 6,
                     .dates = DateSpan{plan.days[0].date, plan.days[1].date},
                     .bookings = {{.day = 2,
                                   .date = plan.days[1].date,
                                   .open = true,
                                   .a_day_later = plan.days[2].date,
                                   .later_open = false}},
                     .note = "by post"}};
    plan.exits = exits();
    plan.turn_rounds = turn_rounds();
}

} // namespace tumpline::test
