#include "cli/export/csv.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace tumpline::cli {

std::string csv_record(const std::vector<std::string>& fields) {
    std::string record;
    bool first = true;
    for (const std::string& field : fields) {
        if (!first)
            record.push_back(',');
        first = false;
        if (field.find_first_of("\",\r\n") == std::string::npos) {
            record.append(field);
            continue;
        }
        record.push_back('"');
        for (const char letter : field) {
            if (letter == '"')
                record.push_back('"');
            record.push_back(letter);
        }
        record.push_back('"');
    }
    return record.append("\r\n");
}

std::string csv_text(std::string_view text) {
    // Blanks that do not show: a spreadsheet may take them off before it reads the cell.
    constexpr std::string_view unseen[] = {" ",
                                           "\u00a0",
                                           "\u200b",
                                           "\u200c",
                                           "\u200d",
                                           "\u200e",
                                           "\u200f",
                                           "\u2060",
                                           "\u3000",
                                           "\ufeff"};
    constexpr std::string_view formula[] = {
        "=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20"};
    std::string_view seen = text;
    const auto takes_off = [&](std::string_view blank) {
        if (!seen.starts_with(blank))
            return false;
        seen.remove_prefix(blank.size());
        return true;
    };
    while (std::any_of(std::begin(unseen), std::end(unseen), takes_off))
        ;
    const bool runs = std::any_of(std::begin(formula),
                                  std::end(formula),
                                  [&](std::string_view begin) { return seen.starts_with(begin); });
    return (runs ? "'" : "") + std::string(text);
}

std::string csv_number(double number) {
    return std::isfinite(number) ? fmt::format("{}", number) : std::string();
}

} // namespace tumpline::cli
