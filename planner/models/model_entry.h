#pragma once

#include <string_view>

namespace tumpline::planner {

/// What people should know of one model before they choose it. One table of these stands beside
/// each family's functions; planner/models/catalogue joins them.
struct ModelEntry {
    std::string_view family;  ///< key of the trip file's "models", or the family's file name
    std::string_view name;    ///< "swiss-signpost"
    std::string_view answers; ///< one sentence: the question it answers
    std::string_view source;  ///< key in docs/references.md
    std::string_view covers;  ///< range of validity in words, with units
    bool is_default = false;
    std::string_view why; ///< when to choose it; for the default: why it is the default
};

} // namespace tumpline::planner
