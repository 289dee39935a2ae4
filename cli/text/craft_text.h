#pragma once

#include "cli/words/reader.h"
#include "planner/decisions/craft_compared.h"

#include <string>

namespace tumpline::cli {

/// The trip with each boat for people: a table of figures, the best with its runner-up and what
/// decides between them, and what stands against the others.
[[nodiscard]] std::string craft_text(const planner::CraftComparison& compared,
                                     const Reader& reader);

} // namespace tumpline::cli
