#include "cli/words/table.h"

#include "cli/words/text_width.h"

#include <algorithm>
#include <numeric>

namespace tumpline::cli {

namespace {

constexpr std::size_t gap = 2;
constexpr std::size_t least_width = 8; ///< of a column that gives way

std::string padded(const std::string& cell, std::size_t width, bool right) {
    const std::string spaces(width - std::min(width, columns_of(cell)), ' ');
    return right ? spaces + cell : cell + spaces;
}

void end_line(std::string& text) {
    text.erase(text.find_last_not_of(' ') + 1);
    text.push_back('\n');
}

} // namespace

void Table::row(std::vector<std::string> cells) {
    cells.resize(columns_.size());
    for (std::string& cell : cells)
        cell = one_line(cell);
    rows_.push_back({std::move(cells), {}});
}

void Table::remark(const std::string& text) {
    rows_.push_back({{}, one_line(text)});
}

std::vector<std::size_t> Table::widths(std::size_t most) const {
    std::vector<std::size_t> widths;
    for (const Column& column : columns_)
        widths.push_back(columns_of(column.heading));
    for (const Row& row : rows_)
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            widths[i] = std::max(widths[i], columns_of(row.cells[i]));
    const auto total = [&] {
        return std::accumulate(widths.begin(), widths.end(), gap * (widths.size() - 1));
    };
    while (total() > most) { // the widest of those that may gives way
        std::size_t widest = widths.size();
        for (std::size_t i = 0; i < widths.size(); ++i)
            if (columns_[i].shortens && widths[i] > least_width &&
                (widest == widths.size() || widths[i] > widths[widest]))
                widest = i;
        if (widest == widths.size())
            break;
        --widths[widest];
    }
    return widths;
}

std::string Table::group_line(const std::vector<std::size_t>& widths) const {
    std::string text;
    for (const Group& group : groups_) {
        std::size_t begins = 0;
        for (std::size_t i = 0; i < group.first; ++i)
            begins += widths[i] + gap;
        std::size_t width = 0;
        for (std::size_t i = group.first; i < group.first + group.count; ++i)
            width += widths[i] + (i == group.first ? 0 : gap);
        text.append(begins - std::min(begins, columns_of(text)), ' ');
        text.append(padded(fitted(one_line(group.heading), width), width, true));
    }
    return text;
}

std::string Table::text(std::size_t indent) const {
    if (rows_.empty())
        return {};
    const std::vector<std::size_t> width = widths(line_columns - indent);
    const std::string margin(indent, ' ');
    const auto line = [&](const auto& cell_of) {
        std::string row_text = margin;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const std::string cell = fitted(cell_of(i), width[i]);
            row_text.append(padded(cell, width[i], columns_[i].right)).append(gap, ' ');
        }
        end_line(row_text);
        return row_text;
    };
    std::string text;
    if (!groups_.empty()) {
        text = margin + group_line(width);
        end_line(text);
    }
    text += line([&](std::size_t i) { return columns_[i].heading; });
    for (const Row& row : rows_) {
        if (!row.cells.empty()) {
            text += line([&](std::size_t i) { return row.cells[i]; });
            continue;
        }
        text += hanging(margin + "  ", row.remark);
    }
    return text;
}

std::string hanging(const std::string& first, const std::string& text) {
    const std::size_t indent = columns_of(first);
    std::string lines;
    for (const std::string& line : wrapped(one_line(text), line_columns - indent)) {
        lines.append(lines.empty() ? first : std::string(indent, ' ')).append(line);
        end_line(lines);
    }
    return lines;
}

} // namespace tumpline::cli
