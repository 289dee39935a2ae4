#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Appointments worked backwards to the latest departures that still meet them, in the weather of
/// the later hours. `legs` are the plan's, with the hours at which the wind rises on them.
[[nodiscard]] std::vector<PlanAppointment> plan_appointments(const Assembly& draft,
                                                             const std::vector<PlanLeg>& legs);

/// Where an appointment is kept: the pass that its day covers, else the last.
[[nodiscard]] std::size_t appointment_boundary(const Assembly& draft, const Appointment& spec);

/// The latest departures from nights and landings that are at a boundary at `by`, its margin kept.
/// Of `meet` place, arrival and margin are read.
[[nodiscard]] std::vector<LeaveBy> latest_departures(const Assembly& draft,
                                                     const std::vector<PlanLeg>& legs,
                                                     PlanAppointment meet,
                                                     std::size_t boundary);

} // namespace tumpline::planner
