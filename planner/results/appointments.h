#pragma once

#include "planner/results/assembly.h"

#include <vector>

namespace tumpline::planner {

/// Appointments worked backwards to the latest departures that still meet them.
[[nodiscard]] std::vector<PlanAppointment> plan_appointments(const Assembly& draft);

/// Where an appointment is kept: the pass that its day covers, else the last.
[[nodiscard]] std::size_t appointment_boundary(const Assembly& draft, const Appointment& spec);

} // namespace tumpline::planner
