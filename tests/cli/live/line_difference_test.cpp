#include "cli/live/line_difference.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {

namespace {

std::string told(const std::string& before, const std::string& after) {
    std::string text;
    for (const DifferentLine& line : line_difference(before, after))
        text += (line.added ? "+" : "-") + std::to_string(line.line) + line.text + " ";
    return text;
}

TEST(LineDifference, ShowsWhatWentAndWhatCameWithItsNumber) {
    EXPECT_EQ(told("a\nb\nc\n", "a\nb\nc\n"), "");
    EXPECT_EQ(told("a\nb\nc\n", "a\nx\nc\n"), "-2b +2x ");
    EXPECT_EQ(told("a\nb\nc\nd\ne\n", "a\nB\nc\nd\nE\n"), "-2b +2B -5e +5E ");
    EXPECT_EQ(told("a\nb\n", "a\nn\nb\n"), "+2n ");
    EXPECT_EQ(told("a\r\nb\r\n", "b\r\n"), "-1a ");
    EXPECT_EQ(told("a\na\n", "a\na\na\n"), "+3a ");
}

} // namespace

} // namespace tumpline::cli
