#include "planner/trip/problem_lines.h"

#include "planner/trip/json_document.h"
#include "planner/trip/json_pointer.h"

#include <fmt/format.h>

#include <cctype>
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

/// Whether what was found is another value than the one in the file, as one set on the command
/// line.
bool is_another(const std::string& found, const JsonValue& value) {
    if (found.empty() || (found.front() != '"' && found.front() != '-' &&
                          std::isdigit(static_cast<unsigned char>(found.front())) == 0))
        return false; // words, not the value
    const bool as_written = value.kind == JsonValue::Kind::text && found.starts_with(value.text);
    return !as_written && !found.starts_with(shown(value));
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
        const JsonValue* const value = find_at(*document->second, problem.place);
        if (value != nullptr && !is_another(problem.found, *value))
            problem.place += fmt::format(" (line {})", value->line);
    }
    return problems;
}

} // namespace tumpline::planner
