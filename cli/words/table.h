#pragma once

#include "cli/words/text_width.h"

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

/// A column: its heading, on which side its cells stand, and whether long cells may be shortened.
struct Column {
    std::string heading;
    bool right = false;    ///< figures stand on the right
    bool shortens = false; ///< gives way when the table would be too wide
};

/// Rows of text under headings, aligned by what a terminal shows. Where the line is too short,
/// headings take two lines, then long names are shortened, then the columns that are left stand
/// below in a table of their own, behind the first column again; no figure is left out. Cells are
/// made harmless (see one_line). Readable without colour.
class Table {
  public:
    explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}

    /// A heading over `count` columns from `first`, above their own headings.
    struct Group {
        std::size_t first;
        std::size_t count;
        std::string heading;
    };

    void group(Group group) { groups_.push_back(std::move(group)); }

    /// A row; cells left out are empty. A table without rows prints nothing.
    void row(std::vector<std::string> cells);
    /// A remark about the row before it, over the whole width, broken into lines.
    void remark(const std::string& text);

    [[nodiscard]] bool empty() const { return rows_.empty(); }

    /// The lines of the table, each ended and at most `most` wide, all moved in by `indent`.
    [[nodiscard]] std::string text(std::size_t indent = 2, std::size_t most = line_columns) const;

  private:
    struct Row {
        std::vector<std::string> cells;
        std::string remark; ///< if it is one, it has no cells
    };

    /// Columns that stand side by side, and how wide each is.
    struct Block {
        std::vector<std::size_t> columns;
        std::vector<std::size_t> widths;

        [[nodiscard]] std::size_t width() const;
    };

    [[nodiscard]] Block block_of(std::vector<std::size_t> columns, std::size_t most) const;
    /// Columns that stay together: those under one heading, else each by itself.
    [[nodiscard]] std::vector<std::vector<std::size_t>> units() const;
    [[nodiscard]] std::vector<Block> blocks(std::size_t most) const;
    [[nodiscard]] std::string group_line(const Block& block) const;
    [[nodiscard]] std::string heading_lines(const Block& block, const std::string& margin) const;

    std::vector<Column> columns_;
    std::vector<Group> groups_; ///< from left to right
    std::vector<Row> rows_;
};

/// `text` broken into lines with `first` before the first line and as many spaces before the
/// others: an item of a list.
[[nodiscard]] std::string
hanging(const std::string& first, const std::string& text, std::size_t most = line_columns);

} // namespace tumpline::cli
