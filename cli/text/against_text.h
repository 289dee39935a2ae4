#pragma once

#include "planner/plan.h"
#include "planner/recordings/plan_against_recording.h"

#include <string>

namespace tumpline::cli {

/// A plan and what a recording of the trip tells beside it.
struct Compared {
    planner::Plan plan;
    planner::Against against;
};

/// The recording beside its plan, leg by leg; times alone, so no units.
[[nodiscard]] std::string against_text(const Compared& compared);

} // namespace tumpline::cli
