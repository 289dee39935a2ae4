#pragma once

#include "cli/console.h"

#include <string>
#include <vector>

namespace tumpline::cli {

/// Runs one command line (without the program's name) and returns the exit code. Never throws.
[[nodiscard]] ExitCode run(const std::vector<std::string>& arguments, Console console);

} // namespace tumpline::cli
