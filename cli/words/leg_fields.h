#pragma once

#include "planner/plan.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// A leg's figures under the keys that JSON, GeoJSON and CSV share.
namespace tumpline::cli {

/// Not known, a count, a figure, or text of people's own.
using FieldValue = std::variant<std::monostate, std::int64_t, double, std::string>;

struct LegField {
    std::string_view key; ///< with its unit: "distance_m"
    FieldValue value;
};

/// In the order of the columns of legs.csv.
[[nodiscard]] std::vector<LegField> leg_fields(const planner::Plan& plan,
                                               const planner::PlanLeg& leg);

/// "pack_start_kg", "pack_end_kg", "pack_max_kg" of one member, likewise.
[[nodiscard]] std::vector<LegField> pack_fields(const planner::MemberLoad& load);

} // namespace tumpline::cli
