#include "cli/export/csv.h"

#include <fmt/format.h>

#include <cmath>

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
    std::string field(text);
    if (!field.empty() &&
        std::string_view("=+-@\t\r\n").find(field.front()) != std::string_view::npos)
        field.insert(field.begin(), '\'');
    return field;
}

std::string csv_number(double number) {
    return std::isfinite(number) ? fmt::format("{}", number) : std::string();
}

} // namespace tumpline::cli
