#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace tumpline::cli {

/// A line that one text has and the other has not.
struct DifferentLine {
    bool added = false;   ///< the later text has it
    std::size_t line = 0; ///< its number there, from 1
    std::string text;     ///< without its end
};

/// What was taken away and added from `before` to `after`, in their order: as few lines as can be,
/// but between texts that differ in thousands of lines, where all of those between are shown.
[[nodiscard]] std::vector<DifferentLine> line_difference(const std::string& before,
                                                         const std::string& after);

} // namespace tumpline::cli
