#pragma once

#include "geo/light/time_zone.h"
#include "planner/plan.h"
#include "planner/solution/fixed_point.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// The steps from a settled loop to the plan that people read. Each fills its own part of the plan
/// and reads only what stands before it.
namespace tumpline::planner {

/// What the steps read.
struct Assembly {
    const Prepared& prepared;
    const Solved& settled;
};

/// The instant `after_midnight_s` into a day of the trip (from 1), counted from its setting off by
/// the clock so that a change of the clocks within the day moves nothing.
[[nodiscard]] sys_seconds instant(const Assembly& draft, int day, double after_midnight_s);

[[nodiscard]] Date date_of(const Assembly& draft, int day);

/// A boundary's name: its place, else the leg that ends or begins there, else "km 12.3".
[[nodiscard]] std::string boundary_name(const Assembly& draft, std::size_t boundary);

/// When darkness falls on a day, if it does: a dusk just after midnight is that of the evening
/// before.
[[nodiscard]] std::optional<sys_seconds> dusk_of(const PlanDay& day);

/// Where an appointment is kept: the pass that its day covers, else the last.
[[nodiscard]] std::size_t appointment_boundary(const Assembly& draft, const Appointment& spec);

/// The loop with the nights that the trip asks for.
[[nodiscard]] Solved settle_trip(const Prepared& prepared);

/// The plan of a settled loop.
[[nodiscard]] Plan assemble_plan(const Prepared& prepared, const Solved& settled);

[[nodiscard]] std::vector<PlanLeg> plan_legs(const Assembly& draft);
[[nodiscard]] std::vector<Event> plan_events(const Assembly& draft);
[[nodiscard]] std::vector<PlanDay> plan_days(const Assembly& draft,
                                             const std::vector<PlanLeg>& legs);
[[nodiscard]] Totals plan_totals(const Assembly& draft,
                                 const std::vector<PlanDay>& days,
                                 const std::vector<PlanLeg>& legs);
[[nodiscard]] std::vector<Stage> plan_stages(const Assembly& draft);
[[nodiscard]] std::vector<WaterStretch> plan_water(const Assembly& draft);
[[nodiscard]] std::vector<Litres> plan_litres(const Assembly& draft);
[[nodiscard]] CarrySummary plan_carries(const Assembly& draft);
[[nodiscard]] Sharing plan_sharing(const Assembly& draft, const std::vector<PlanLeg>& legs);
[[nodiscard]] std::vector<PlanAppointment> plan_appointments(const Assembly& draft);
[[nodiscard]] std::vector<ExitPoint> plan_exits(const Assembly& draft);
[[nodiscard]] std::vector<TurnRound> plan_turn_rounds(const Assembly& draft);
/// Nights at camps that are closed then or too small.
[[nodiscard]] std::vector<Caution> camp_cautions(const Assembly& draft);
/// What is to be said of what people bear.
[[nodiscard]] std::vector<Caution> load_cautions(const Assembly& draft, const Plan& plan);
/// What is to be said of boats, wind and rivers.
[[nodiscard]] std::vector<Caution> water_cautions(const Assembly& draft, const Plan& plan);
/// What holds on any water, once.
[[nodiscard]] std::vector<Caution> usual_water_cautions(const Plan& plan);
/// What is to be said of food, fuel and water.
[[nodiscard]] std::vector<Caution> supply_cautions(const Assembly& draft, const Plan& plan);
/// Everything the reader must know beside the figures of `plan`, whose other parts are filled.
[[nodiscard]] std::vector<Caution> plan_cautions(const Assembly& draft, const Plan& plan);

} // namespace tumpline::planner
