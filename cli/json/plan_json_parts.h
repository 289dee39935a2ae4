#pragma once

#include "planner/plan.h"

#include <nlohmann/json_fwd.hpp>

#include <vector>

/// Parts of the plan as JSON, each an entry of docs/plan-json.md of the same name.
namespace tumpline::cli {

[[nodiscard]] nlohmann::ordered_json verdict_json(const planner::Plan& plan);

[[nodiscard]] nlohmann::ordered_json left_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json suitability_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json hazards_json(const planner::Plan& plan);

[[nodiscard]] nlohmann::ordered_json appointments_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json leave_by_json(const planner::Plan& plan,
                                                   const std::vector<planner::LeaveBy>& leave_by);
[[nodiscard]] nlohmann::ordered_json connections_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json permits_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json exits_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json turn_rounds_json(const planner::Plan& plan);

[[nodiscard]] nlohmann::ordered_json items_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json start_loads_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json luggage_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json volumes_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json stays_home_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json comes_json(const planner::Plan& plan);
/// Who bears the party's things and the boats.
[[nodiscard]] nlohmann::ordered_json party_bearers_json(const planner::Plan& plan);

[[nodiscard]] nlohmann::ordered_json remedies_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json flow_json(const planner::PlanFlow& flow);

/// The column that a river takes: a word, or null for a reading.
[[nodiscard]] nlohmann::ordered_json flow_column_json(const planner::PlanFlow& flow);
[[nodiscard]] nlohmann::ordered_json flows_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json decisions_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json other_ways_json(const planner::Plan& plan);

[[nodiscard]] nlohmann::ordered_json stages_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json water_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json water_line_json(const planner::Plan& plan);
[[nodiscard]] nlohmann::ordered_json carrying_json(const planner::Plan& plan);

} // namespace tumpline::cli
