#include "cli/console.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <iostream>
#include <string_view>
#include <system_error>

namespace tumpline::cli {

namespace {

std::string_view environment(const char* name) {
    const char* const value = std::getenv(name);
    return value == nullptr ? std::string_view() : std::string_view(value);
}

std::size_t wide_enough(std::size_t columns) {
    return std::clamp(columns, least_columns, most_columns);
}

std::size_t columns_of_reader() {
    const std::string_view set = environment("COLUMNS");
    std::size_t columns = 0;
    const char* const end = set.data() + set.size();
    if (const auto [stop, error] = std::from_chars(set.data(), end, columns);
        error == std::errc() && stop == end && columns > 0)
        return wide_enough(columns);

    struct winsize size {};

    if (::isatty(STDOUT_FILENO) == 1 && ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 &&
        size.ws_col > 0)
        return wide_enough(size.ws_col);
    return line_columns;
}

} // namespace

Console process_console() {
    const bool dumb = environment("TERM") == "dumb" || environment("TERM").empty();
    return {.out = std::cout,
            .err = std::cerr,
            .colour = ::isatty(STDOUT_FILENO) == 1 && !dumb && environment("NO_COLOR").empty(),
            .progress = ::isatty(STDERR_FILENO) == 1 && !dumb,
            .columns = columns_of_reader()};
}

} // namespace tumpline::cli
