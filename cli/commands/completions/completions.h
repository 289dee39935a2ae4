#pragma once

#include "cli/commands/completions/command_table.h"

#include <string>

/// Scripts by which shells complete commands, options, their words and file names. The build writes
/// them from the program's own table (cli/completions/main.cpp).
namespace tumpline::cli {

/// For bash; file names are left to bash itself, so that it may quote them as it does elsewhere.
[[nodiscard]] std::string bash_completion(const CommandTable& table);

[[nodiscard]] std::string zsh_completion(const CommandTable& table);

[[nodiscard]] std::string fish_completion(const CommandTable& table);

} // namespace tumpline::cli
