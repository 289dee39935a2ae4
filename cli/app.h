#pragma once

#include "cli/console.h"

#include <functional>
#include <string>
#include <vector>

// NOLINTNEXTLINE(readability-identifier-naming): the library's own name
namespace CLI {
class App;
} // namespace CLI

namespace tumpline::cli {

/// Runs one command line (without the program's name) and returns the exit code. Never throws.
[[nodiscard]] ExitCode run(const std::vector<std::string>& arguments, Console console);

/// Calls `look` with the program's commands and options, for whoever describes them.
void look_at_commands(const std::function<void(const CLI::App&)>& look);

} // namespace tumpline::cli
