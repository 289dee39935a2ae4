#include "planner/cautions/caution_titles.h"

#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <string>

namespace tumpline::planner {
namespace {

/// Rows of docs/cautions.md: code and what stands under "level".
std::vector<std::pair<std::string, std::string>> documented() {
    std::vector<std::pair<std::string, std::string>> rows;
    std::ifstream lines(test::root / "docs" / "cautions.md");
    for (std::string line; std::getline(lines, line);) {
        const std::size_t end = line.find("` | ");
        if (!line.starts_with("| `") || line.find('-') > end)
            continue;
        const std::size_t level = end + 4;
        rows.emplace_back(line.substr(3, end - 3),
                          line.substr(level, line.find(" | ", level) - level));
    }
    return rows;
}

TEST(CautionTitles, EveryDocumentedCodeHasAShortTitleOfItsOwn) {
    std::set<std::string> titles;
    ASSERT_GT(documented().size(), 50U);
    for (const auto& [code, level] : documented()) {
        const std::string title(caution_kind(code).title);
        EXPECT_FALSE(title.empty()) << code;
        EXPECT_LE(title.size(), 60U) << code;
        EXPECT_TRUE(titles.insert(title).second) << "two codes are \"" << title << "\"";
    }
}

TEST(CautionTitles, ThePageMarksTheCodesThatBreakWhatWasAsked) {
    for (const auto& [code, level] : documented())
        EXPECT_EQ(level.find("breaks") != level.npos, caution_kind(code).breaks)
            << code << ": " << level;
}

TEST(CautionTitles, WhatDrownsStandsBeforeWhatMakesFiguresDoubtful) {
    EXPECT_LT(caution_kind("exposed-crossing").order, caution_kind("pack-over-limit").order);
    EXPECT_LT(caution_kind("pack-over-limit").order, caution_kind("no-elevation").order);
    EXPECT_EQ(caution_kind("of-nobody").title, "");
}

} // namespace
} // namespace tumpline::planner
