#pragma once

#include <cstddef>
#include <ostream>

namespace tumpline::cli {

/// The widest line that a command prints where nobody says how wide it may be.
inline constexpr std::size_t line_columns = 100;

/// What the program answers to its caller.
enum class ExitCode {
    done = 0,
    fault = 1,     ///< of the program itself
    bad_input = 2, ///< wrong usage or input that cannot be used; nothing was written
    no_plan = 3    ///< the input is fine, but its own hard limits allow no plan
};

/// Where a command writes.
struct Console {
    std::ostream& out; ///< results
    std::ostream& err; ///< messages and progress
    bool colour = false;
    bool progress = false;              ///< somebody watches `err`
    std::size_t columns = line_columns; ///< how wide lines may be
};

/// The console of this process: colour only on a terminal that can show it and without NO_COLOR in
/// the environment; progress only where standard error is a terminal. Lines are as wide as COLUMNS
/// in the environment says, else as the terminal is, else `line_columns`; never below 72 or above
/// 120.
[[nodiscard]] Console process_console();

} // namespace tumpline::cli
