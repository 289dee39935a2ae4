#include "planner/trip/problem_lines.h"

#include "planner/trip/json_document.h"
#include "planner/trip/json_pointer.h"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <system_error>
#include <utility>

namespace tumpline::planner {

namespace {

/// The file as a document, if it still is one.
std::optional<JsonValue> document_in(const std::string& file) {
    std::error_code error;
    const std::filesystem::path path(file);
    if (!std::filesystem::is_regular_file(path, error) ||
        std::filesystem::file_size(path, error) > JsonLimits{}.longest_bytes)
        return std::nullopt;
    std::ifstream in(path, std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
    try {
        return read_json(text, file);
    } catch (const geo::InputError&) { // a key given twice has a pointer too, and no document
        return std::nullopt;
    }
}

} // namespace

std::vector<geo::Problem> with_lines(std::vector<geo::Problem> problems) {
    std::map<std::string, std::optional<JsonValue>> documents;
    for (geo::Problem& problem : problems) {
        if (!problem.place.starts_with('/'))
            continue;
        const auto [document, first] = documents.emplace(problem.file, std::nullopt);
        if (first)
            document->second = document_in(problem.file);
        if (!document->second)
            continue;
        if (const JsonValue* value = find_at(*document->second, problem.place))
            problem.place += fmt::format(" (line {})", value->line);
    }
    return problems;
}

} // namespace tumpline::planner
