#pragma once

#include <ostream>

namespace tumpline::cli {

/// What the program answers to its caller.
enum class ExitCode { done = 0, fault = 1, bad_input = 2, no_plan = 3 };

/// Where a command writes.
struct Console {
    std::ostream& out; ///< results
    std::ostream& err; ///< messages and progress
    bool colour = false;
};

} // namespace tumpline::cli
