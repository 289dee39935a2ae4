#pragma once

#include "planner/plan.h"
#include "planner/quantities/quantities.h"

#include <chrono>
#include <vector>

/// The pieces of which hand_built_plan is made.
namespace tumpline::test {

/// Local time at Europe/Oslo in June (UTC+2) on a day of the trip, from minutes after midnight.
[[nodiscard]] inline planner::sys_seconds hand_built_time(int day, int minutes) {
    const std::chrono::sys_days first = std::chrono::year{2027} / std::chrono::June / 18;
    return first + std::chrono::days{day - 1} + std::chrono::minutes{minutes} -
           std::chrono::hours{2};
}

/// Minutes after midnight.
[[nodiscard]] constexpr int clock_minutes(int hour, int minute) {
    return 60 * hour + minute;
}

[[nodiscard]] planner::Trip hand_built_trip();
[[nodiscard]] std::vector<planner::PlanLeg> hand_built_legs();
[[nodiscard]] planner::Remedies hand_built_remedies();
[[nodiscard]] planner::OtherWays hand_built_other_ways();

/// Appointments, connections, permits, ways out and where to turn round, once the days are there.
void add_hand_built_ends(planner::Plan& plan);
/// What comes, who bears it at the start, luggage and volumes.
void add_hand_built_packing(planner::Plan& plan);
/// Food, fuel and water, once the days are there.
void add_hand_built_supplies(planner::Plan& plan);

} // namespace tumpline::test
