#pragma once

#include "cli/console.h"

#include <memory>

// NOLINTNEXTLINE(readability-identifier-naming): the library's own name
namespace CLI {
class App;
} // namespace CLI

namespace tumpline::cli {

struct DeclaredCommands;

/// The commands and options of the program, and what was chosen of them.
class CommandLine {
  public:
    CommandLine();
    ~CommandLine();
    CommandLine(const CommandLine&) = delete;
    CommandLine& operator=(const CommandLine&) = delete;

    /// What parses the arguments, and is asked by whoever describes the program.
    [[nodiscard]] CLI::App& app();

    /// Runs the command that was parsed. Throws: geo::InputError as the command does.
    [[nodiscard]] ExitCode run(Console console) const;

  private:
    std::unique_ptr<DeclaredCommands> declared_;
};

} // namespace tumpline::cli
