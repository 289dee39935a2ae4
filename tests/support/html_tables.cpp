#include "tests/support/html_tables.h"

#include <gtest/gtest.h>

#include <utility>

namespace tumpline::test {

namespace {

/// The pieces from `begin` (a tag without its end, "<td") to `end` ("</td>"), which do not nest.
std::vector<std::string>
pieces(const std::string& html, const std::string& begin, const std::string& end) {
    std::vector<std::string> found;
    std::size_t at = 0;
    while ((at = html.find(begin, at)) != std::string::npos) {
        const char after = at + begin.size() < html.size() ? html[at + begin.size()] : '>';
        const std::size_t to = html.find(end, at);
        if (to == std::string::npos)
            break;
        if (after == '>' || after == ' ') {
            found.push_back(html.substr(at, to + end.size() - at));
            at = to + end.size();
        } else {
            at += begin.size();
        }
    }
    return found;
}

/// Cells of a row: `th` and `td` alike.
std::vector<std::string> cells_of_row(std::string row) {
    for (const auto& [from, to] : {std::pair{"<th", "<td"}, {"</th>", "</td>"}})
        for (std::size_t at = row.find(from); at != std::string::npos; at = row.find(from, at + 1))
            row.replace(at, std::string(from).size(), to);
    std::vector<std::string> cells;
    for (const std::string& cell : pieces(row, "<td", "</td>"))
        cells.push_back(text_of_html(cell));
    return cells;
}

std::string first_piece(const std::string& html, const std::string& begin, const std::string& end) {
    const std::vector<std::string> found = pieces(html, begin, end);
    return found.empty() ? std::string() : found.front();
}

} // namespace

std::map<std::string, std::string> HtmlTable::row(const std::string& first) const {
    std::map<std::string, std::string> found;
    for (const std::vector<std::string>& cells : rows)
        if (cells.front() == first)
            for (std::size_t i = 0; i < cells.size(); ++i)
                found[heads[i]] = cells[i];
    if (found.empty())
        ADD_FAILURE() << "no row begins with \"" << first << "\"";
    return found;
}

std::string text_of_html(const std::string& html) {
    std::string text;
    bool in_tag = false;
    for (const char letter : html) {
        if (letter == '<' || letter == '>') {
            in_tag = letter == '<';
            text.push_back(' ');
        } else if (!in_tag) {
            text.push_back(letter);
        }
    }
    for (const auto& [from, to] : {std::pair<std::string, std::string>{"\u00a0", " "},
                                   {"&#39;", "'"},
                                   {"&apos;", "'"},
                                   {"&quot;", "\""},
                                   {"&lt;", "<"},
                                   {"&gt;", ">"},
                                   {"&amp;", "&"}})
        for (std::size_t at = text.find(from); at != std::string::npos;
             at = text.find(from, at + to.size()))
            text.replace(at, from.size(), to);
    std::string squeezed;
    for (const char letter : text) {
        const bool blank = letter == ' ' || letter == '\n';
        if (!blank)
            squeezed.push_back(letter);
        else if (!squeezed.empty() && squeezed.back() != ' ')
            squeezed.push_back(' ');
    }
    while (!squeezed.empty() && squeezed.back() == ' ')
        squeezed.pop_back();
    return squeezed;
}

std::vector<HtmlTable> tables_of_html(const std::string& html) {
    std::vector<HtmlTable> tables;
    for (const std::string& piece : pieces(html, "<table", "</table>")) {
        HtmlTable& table = tables.emplace_back();
        table.caption = text_of_html(first_piece(piece, "<caption", "</caption>"));
        table.heads = cells_of_row(first_piece(piece, "<thead", "</thead>"));
        for (const std::string& row :
             pieces(first_piece(piece, "<tbody", "</tbody>"), "<tr", "</tr>")) {
            std::vector<std::string> cells = cells_of_row(row);
            if (cells.size() == table.heads.size() && !cells.empty())
                table.rows.push_back(std::move(cells));
        }
    }
    return tables;
}

HtmlTable
table_with(const std::string& html, const std::vector<std::string>& heads, std::size_t nth) {
    for (const HtmlTable& table : tables_of_html(html))
        if (table.heads == heads && nth-- == 0)
            return table;
    ADD_FAILURE() << "no such table";
    return {};
}

} // namespace tumpline::test
