#pragma once

#include "planner/plan.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <string_view>

namespace tumpline::cli {

/// The plan as JSON: every key of docs/plan-json.md, SI units in the keys' suffixes, numbers with
/// all their digits, ended by a line end. `version` is the program's own.
[[nodiscard]] std::string plan_json(const planner::Plan& plan, std::string_view version);

/// The same before it is written, for an answer that it is a part of.
[[nodiscard]] nlohmann::ordered_json plan_json_value(const planner::Plan& plan,
                                                     std::string_view version);

/// The part of it that says who carries what: legs with their loads, sharing, what stays at home
/// and what comes. The keys are those of the plan.
[[nodiscard]] std::string pack_json(const planner::Plan& plan, std::string_view version);

} // namespace tumpline::cli
