#include "geo/gate/gdal_fault.h"

#include "geo/one_line.h"

#include <fmt/format.h>

#include <charconv>
#include <cstddef>
#include <fstream>
#include <optional>
#include <string_view>

namespace tumpline::geo {

namespace {

/// The number after `mark` in `text`.
std::optional<std::size_t> number_after(std::string_view text, std::string_view mark) {
    const std::size_t start = text.find(mark);
    if (start == std::string_view::npos)
        return std::nullopt;
    const std::string_view rest = text.substr(start + mark.size());
    std::size_t value = 0;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), value);
    return error == std::errc() ? std::optional(value) : std::nullopt;
}

/// The line that holds byte `offset` of `file`.
std::size_t line_at(const std::filesystem::path& file, std::size_t offset) {
    std::ifstream in(file, std::ios::binary);
    std::size_t line = 1;
    for (std::size_t byte = 0; byte < offset && in; ++byte)
        line += in.get() == '\n' ? 1U : 0U;
    return line;
}

/// Takes away from `text` what stands between `from` and `to`, both included, if both are there.
void remove_between(std::string& text, std::string_view from, std::string_view to) {
    const std::size_t start = text.find(from);
    const std::size_t end = start == std::string::npos ? start : text.find(to, start);
    if (end != std::string::npos)
        text.erase(start, end + to.size() - start);
}

} // namespace

std::string fault_place(const std::string& fault, const std::filesystem::path& file) {
    if (const auto line = number_after(fault, "line "))
        return fmt::format("line {}", *line);
    if (const auto offset = number_after(fault, "(at offset ")) // of text; others' are of bytes
        return fmt::format("line {}", line_at(file, *offset));
    return "";
}

std::string fault_in_words(std::string fault, const std::filesystem::path& file) {
    const bool json =
        fault.find("JSON parsing error") != std::string::npos || fault.starts_with("At line ");
    remove_between(fault, "(at offset ", ")");
    remove_between(fault, "At line ", ": ");
    remove_between(fault, "JSON parsing error", ": ");
    remove_between(fault, "PROJ: ", "proj_");
    remove_between(fault, "create_from", ": ");
    const std::string path = std::filesystem::absolute(file).string();
    remove_between(fault, path, path);
    return fmt::format("{} (\"{}\")", json ? "broken JSON" : "trouble", one_line(fault));
}

} // namespace tumpline::geo
