#include "geo/input_error.h"

#include <fmt/format.h>

#include <utility>

namespace tumpline::geo {

namespace {

std::string first_line(const std::vector<Problem>& problems) {
    return problems.empty() ? std::string("input that cannot be used")
                            : to_string(problems.front());
}

} // namespace

std::string to_string(const Problem& problem) {
    std::string text = problem.file;
    if (!problem.place.empty())
        text += fmt::format("{}{}", text.empty() ? "" : ": ", problem.place);
    if (!problem.found.empty())
        text += fmt::format("{}found {}", text.empty() ? "" : ": ", problem.found);
    if (!problem.expected.empty())
        text += fmt::format("{}expected {}",
                            problem.found.empty() ? (text.empty() ? "" : ": ") : ", ",
                            problem.expected);
    if (!problem.advice.empty())
        text += fmt::format("; {}", problem.advice);
    return text;
}

InputError::InputError(std::vector<Problem> problems)
    : std::runtime_error(first_line(problems)), problems_(std::move(problems)) {}

} // namespace tumpline::geo
