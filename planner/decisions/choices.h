#pragma once

#include "planner/plan.h"
#include "planner/route/alternatives.h"

#include <vector>

namespace tumpline::planner {

/// Which of what takes further plans is computed.
struct Choices {
    bool remedies = true;
    bool other_ways = true;
    bool flows = true;
};

/// The plan with what it takes further plans to know: `remedies`, `other_ways` and
/// `flows`.
[[nodiscard]] Plan make_plan_with_choices(const Trip& trip,
                                          const Route& route,
                                          const std::vector<OtherRoute>& others = {},
                                          const Choices& choices = {});

} // namespace tumpline::planner
