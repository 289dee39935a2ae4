#pragma once

#include <cstddef>
#include <map>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::test {

/// A line of a table: what stands under each heading.
using Record = std::map<std::string, std::string>;

[[nodiscard]] inline std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> made;
    std::istringstream stream(line);
    for (std::string cell; std::getline(stream, cell, ',');)
        made.push_back(cell);
    return made;
}

/// Records by heading; no field of the plan holds a comma.
[[nodiscard]] inline std::vector<Record> records(const std::string& table) {
    std::vector<Record> made;
    std::vector<std::string> headings;
    std::istringstream stream(table);
    for (std::string line; std::getline(stream, line);) {
        if (line.ends_with('\r'))
            line.pop_back();
        const std::vector<std::string> row = cells_of(line);
        if (headings.empty()) {
            headings = row;
            continue;
        }
        Record record;
        for (std::size_t i = 0; i < headings.size(); ++i)
            record[headings[i]] = i < row.size() ? row[i] : "";
        made.push_back(std::move(record));
    }
    return made;
}

} // namespace tumpline::test
