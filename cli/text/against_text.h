#pragma once

#include "planner/plan.h"
#include "planner/recordings/plan_against_recording.h"

#include <cstddef>
#include <string>

namespace tumpline::cli {

/// A plan and what a recording of the trip tells beside it.
struct Compared {
    planner::Plan plan;
    planner::Against against;
};

/// The recording beside its plan, leg by leg; times alone, so no units; lines no longer
/// than `columns`.
[[nodiscard]] std::string against_text(const Compared& compared, std::size_t columns);

} // namespace tumpline::cli
