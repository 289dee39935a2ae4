#pragma once

#include "planner/quantities/quantities.h"

namespace tumpline::cli {

/// For whom text is written.
struct Reader {
    planner::UnitSystem units = planner::UnitSystem::metric;
    bool colour = false; ///< bold headings, no more: everything reads the same without
};

} // namespace tumpline::cli
