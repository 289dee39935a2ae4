#pragma once

#include <string>
#include <vector>

// NOLINTNEXTLINE(readability-identifier-naming): the library's own name
namespace CLI {
class App;
} // namespace CLI

namespace tumpline::cli {

/// What may stand after an option or a command.
enum class Takes { nothing, one_of_words, file, folder, free_text };

/// An option of a command line.
struct OptionEntry {
    std::vector<std::string> names; ///< as they are written: "-o", "--output"
    std::string help;
    std::string value; ///< what its value is called, like "TRIP"; empty if it takes none
    Takes takes = Takes::nothing;
    std::vector<std::string> words; ///< of a closed set
    bool again = false;             ///< may be given several times, or takes several values
};

/// A command of the program.
struct CommandEntry {
    std::string name;
    std::string help;
    std::string value; ///< what its words without a dash are called; empty if it takes none
    bool several = false;
    std::vector<OptionEntry> options; ///< its own, then those of every command
};

/// The commands and options of the program, for whoever describes them.
struct CommandTable {
    std::vector<CommandEntry> commands;
    std::vector<OptionEntry> options; ///< that may stand before a command
};

/// Taken from what the command line is read with, so that the two cannot differ.
[[nodiscard]] CommandTable command_table(const CLI::App& app);

} // namespace tumpline::cli
