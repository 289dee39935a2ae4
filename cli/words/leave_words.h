#pragma once

#include "cli/words/figures.h"
#include "planner/plan.h"

#include <string>

/// Latest departures for people who have to keep them: what to do by when, and why not later.
namespace tumpline::cli {

/// "Meet last bus at Quarry stop on Mon 21 Jun 2027 by 17:40, with a margin of 1 h".
[[nodiscard]] std::string appointment_words(const planner::PlanAppointment& meet,
                                            const Figures& shown);

/// "bus at Gravel bar, Sun 20 June 2027, 17:40": the departure that is taken.
[[nodiscard]] std::string connection_meet_words(const planner::PlanConnection& one,
                                                const Figures& shown);

/// "18:20", with the date where the plan leaves on another one: "18:20 on Sun 20 Jun 2027".
[[nodiscard]] std::string leave_hour(const planner::LeaveBy& leave, const Figures& shown);

/// How that stands to the plan: "10 h 20 min after the plan, 08:00".
[[nodiscard]] std::string against_plan_words(const planner::LeaveBy& leave, const Figures& shown);

/// Why not later: "to be at Birch spit before dusk"; empty where only the appointment binds.
[[nodiscard]] std::string bound_words(const planner::LeaveBy& leave, const Figures& shown);

} // namespace tumpline::cli
