#include "cli/words/table.h"

#include "cli/words/text_width.h"

#include <algorithm>
#include <numeric>

namespace tumpline::cli {

namespace {

constexpr std::size_t gap = 2;
constexpr std::size_t least_width = 10; ///< of a column that gives way

std::size_t longest_word(const std::string& heading) {
    std::size_t longest = 0;
    for (std::size_t begin = 0; begin < heading.size();) {
        const std::size_t end = std::min(heading.find(' ', begin), heading.size());
        longest = std::max(longest, columns_of(heading.substr(begin, end - begin)));
        begin = end + 1;
    }
    return longest;
}

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

std::size_t Table::Block::width() const {
    return std::accumulate(widths.begin(), widths.end(), gap * (widths.size() - 1));
}

Table::Block Table::block_of(std::vector<std::size_t> columns, std::size_t most) const {
    Block block{std::move(columns), {}};
    std::vector<std::size_t> cells;  // the widest of each column
    std::vector<std::size_t> narrow; // with its heading broken between words
    for (const std::size_t i : block.columns) {
        std::size_t widest = 0;
        for (const Row& row : rows_)
            if (!row.cells.empty())
                widest = std::max(widest, columns_of(row.cells[i]));
        cells.push_back(widest);
        narrow.push_back(std::max(widest, longest_word(columns_[i].heading)));
        block.widths.push_back(std::max(widest, columns_of(columns_[i].heading)));
    }
    const auto give_way = [&](const auto& least) { // the one with the most to give
        std::size_t best = block.widths.size();
        for (std::size_t k = 0; k < block.widths.size(); ++k)
            if (block.widths[k] > least(k) &&
                (best == block.widths.size() ||
                 block.widths[k] - least(k) > block.widths[best] - least(best)))
                best = k;
        if (best == block.widths.size())
            return false;
        --block.widths[best];
        return true;
    };
    while (block.width() > most && give_way([&](std::size_t k) { return narrow[k]; }))
        ;
    while (block.width() > most && give_way([&](std::size_t k) {
               return columns_[block.columns[k]].shortens ? std::min(block.widths[k], least_width)
                                                          : block.widths[k];
           }))
        ;
    return block;
}

std::vector<std::vector<std::size_t>> Table::units() const {
    std::vector<std::vector<std::size_t>> units;
    for (std::size_t i = 0; i < columns_.size();) {
        const auto group = std::find_if(
            groups_.begin(), groups_.end(), [&](const Group& one) { return one.first == i; });
        units.emplace_back(group == groups_.end() ? 1 : group->count);
        std::iota(units.back().begin(), units.back().end(), i);
        i += units.back().size();
    }
    return units;
}

std::vector<Table::Block> Table::blocks(std::size_t most) const {
    std::vector<std::size_t> all(columns_.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    std::vector<Block> blocks{block_of(all, most)};
    if (blocks.front().width() <= most)
        return blocks;
    blocks.clear();
    std::vector<std::size_t> side_by_side;
    for (const std::vector<std::size_t>& unit : units()) {
        std::vector<std::size_t> longer = side_by_side;
        longer.insert(longer.end(), unit.begin(), unit.end());
        if (side_by_side.size() > 1 && block_of(longer, most).width() > most) {
            blocks.push_back(block_of(side_by_side, most));
            longer = unit;
            longer.insert(longer.begin(), 0); // what the rows are about
        }
        side_by_side = std::move(longer);
    }
    blocks.push_back(block_of(side_by_side, most));
    return blocks;
}

std::string Table::group_line(const Block& block) const {
    std::string text;
    for (const Group& group : groups_) {
        const auto first = std::find(block.columns.begin(), block.columns.end(), group.first);
        if (first == block.columns.end())
            continue;
        const auto at = static_cast<std::size_t>(first - block.columns.begin());
        const auto* const widths = block.widths.data();
        const std::size_t begins = std::accumulate(widths, widths + at, gap * at);
        const std::size_t width =
            std::accumulate(widths + at, widths + at + group.count, gap * (group.count - 1));
        text.append(begins - std::min(begins, columns_of(text)), ' ');
        text.append(padded(fitted(one_line(group.heading), width), width, true));
    }
    return text;
}

std::string Table::heading_lines(const Block& block, const std::string& margin) const {
    std::vector<std::vector<std::string>> headings;
    std::size_t high = 1;
    for (std::size_t k = 0; k < block.columns.size(); ++k) {
        headings.push_back(wrapped(columns_[block.columns[k]].heading, block.widths[k]));
        high = std::max(high, headings.back().size());
    }
    std::string text;
    for (std::size_t line = 0; line < high; ++line) {
        text += margin;
        for (std::size_t k = 0; k < block.columns.size(); ++k) {
            const std::size_t above = high - headings[k].size(); // they stand upon the cells
            const std::string word = line < above ? std::string() : headings[k][line - above];
            text.append(padded(word, block.widths[k], columns_[block.columns[k]].right))
                .append(gap, ' ');
        }
        end_line(text);
    }
    return text;
}

std::string Table::text(std::size_t indent, std::size_t most) const {
    if (rows_.empty())
        return {};
    const std::string margin(indent, ' ');
    std::string text;
    bool first = true;
    for (const Block& block : blocks(most - indent)) {
        if (!first)
            text += "\n";
        if (const std::string groups = group_line(block); !groups.empty()) {
            text += margin + groups;
            end_line(text);
        }
        text += heading_lines(block, margin);
        for (const Row& row : rows_) {
            if (row.cells.empty()) {
                text += first ? hanging(margin + "  ", row.remark, most) : std::string();
                continue;
            }
            text += margin;
            for (std::size_t k = 0; k < block.columns.size(); ++k) {
                const std::string cell = fitted(row.cells[block.columns[k]], block.widths[k]);
                text.append(padded(cell, block.widths[k], columns_[block.columns[k]].right))
                    .append(gap, ' ');
            }
            end_line(text);
        }
        first = false;
    }
    return text;
}

std::string hanging(const std::string& first, const std::string& text, std::size_t most) {
    const std::size_t indent = columns_of(first);
    std::string lines;
    for (const std::string& line : wrapped(one_line(text), most - indent)) {
        lines.append(lines.empty() ? first : std::string(indent, ' ')).append(line);
        end_line(lines);
    }
    return lines;
}

} // namespace tumpline::cli
