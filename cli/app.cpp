#include "cli/app.h"

#include <fmt/ostream.h>

namespace tumpline::cli {

ExitCode run(const std::vector<std::string>& arguments, Console console) {
    if (arguments == std::vector<std::string>{"--version"}) {
        fmt::print(console.out, "tumpline 0.1.0\n");
        return ExitCode::done;
    }
    fmt::print(console.err, "tumpline: expected a command\n");
    return ExitCode::bad_input;
}

} // namespace tumpline::cli
