#include "cli/console.h"

#include <unistd.h>

#include <cstdlib>
#include <iostream>
#include <string_view>

namespace tumpline::cli {

namespace {

std::string_view environment(const char* name) {
    const char* const value = std::getenv(name);
    return value == nullptr ? std::string_view() : std::string_view(value);
}

} // namespace

Console process_console() {
    const bool dumb = environment("TERM") == "dumb" || environment("TERM").empty();
    return {.out = std::cout,
            .err = std::cerr,
            .colour = ::isatty(STDOUT_FILENO) == 1 && !dumb && environment("NO_COLOR").empty(),
            .progress = ::isatty(STDERR_FILENO) == 1 && !dumb};
}

} // namespace tumpline::cli
