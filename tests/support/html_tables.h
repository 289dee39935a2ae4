#pragma once

#include <map>
#include <string>
#include <vector>

namespace tumpline::test {

/// A table of a page: its caption, its headings, and its rows of as many cells, all as people read
/// them.
struct HtmlTable {
    std::string caption;
    std::vector<std::string> heads;
    std::vector<std::vector<std::string>> rows;

    /// The row that begins with `first`, each cell under its heading; fails the test if there is
    /// none.
    [[nodiscard]] std::map<std::string, std::string> row(const std::string& first) const;
};

/// What people read of a piece of a page: without marks, one blank between words.
[[nodiscard]] std::string text_of_html(const std::string& html);

/// The tables of a page, in its order.
[[nodiscard]] std::vector<HtmlTable> tables_of_html(const std::string& html);

/// The `nth` table (from 0) of those with exactly these headings; fails the test if there is none.
[[nodiscard]] HtmlTable
table_with(const std::string& html, const std::vector<std::string>& heads, std::size_t nth = 0);

} // namespace tumpline::test
