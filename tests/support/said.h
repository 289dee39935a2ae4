#pragma once

#include "cli/app.h"

#include <string>
#include <vector>

namespace tumpline::test {

/// What the program answers on one command line.
struct Said {
    cli::ExitCode code;
    std::string out;
    std::string err;
};

[[nodiscard]] Said say(const std::vector<std::string>& arguments);

/// Standard output of a command that must come to its end.
[[nodiscard]] std::string printed(const std::vector<std::string>& arguments);

/// What the program says to these arguments and --help.
[[nodiscard]] std::string help_of(std::vector<std::string> arguments);

} // namespace tumpline::test
