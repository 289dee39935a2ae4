#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

// NOLINTNEXTLINE(readability-identifier-naming): the library's own name
namespace CLI {
class App;
class ParseError;
} // namespace CLI

namespace tumpline::cli {

/// What `--help` prints about the program (an app without a parent) or one of its commands, in
/// lines of at most `columns`.
[[nodiscard]] std::string help_text(const CLI::App& app, std::size_t columns);

/// One line that says what is wrong with a command line and what to write instead: the nearest
/// command or option to a misspelt one, what is missing, what is too much.
[[nodiscard]] std::string misuse_text(const CLI::App& app, const CLI::ParseError& error);

/// "tumpline plan", of a command.
[[nodiscard]] std::string command_name(const CLI::App& app);

} // namespace tumpline::cli
