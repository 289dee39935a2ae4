#pragma once

#include <string_view>

namespace tumpline::planner {

/// What is the same for every caution of one code.
struct CautionKind {
    std::string_view code;
    std::string_view title;
    bool breaks = false; ///< at Level::caution: it breaks what was asked for
    bool always = false; ///< holds on any such trip and is counted nowhere
    int order = 0;       ///< in the list under the verdict: the gravest first
};

/// The entry of `code`; where the table has none, one without a title.
[[nodiscard]] CautionKind caution_kind(std::string_view code);

} // namespace tumpline::planner
