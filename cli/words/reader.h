#pragma once

#include "cli/words/sections.h"
#include "cli/words/text_width.h"
#include "planner/quantities/quantities.h"

#include <cstddef>

namespace tumpline::cli {

/// For whom text is written.
struct Reader {
    planner::UnitSystem units = planner::UnitSystem::metric;
    bool colour = false; ///< bold headings, no more: everything reads the same without
    std::size_t columns = line_columns; ///< how wide lines may be
    Show show{};                        ///< instead of the first screen
};

} // namespace tumpline::cli
