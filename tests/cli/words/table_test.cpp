#include "cli/words/table.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

TEST(Table, HeadingsTakeTwoLinesBeforeACellIsShortened) {
    Table table({{"Name", false, true}, {"Heaviest load", true}});
    table.row({"Upper river", "21.5 kg"});
    // 2 + 11 + 2 + 13 columns do not fit in 23; with the heading in two lines it is 2 + 11 + 2 + 8.
    EXPECT_EQ(table.text(2, 23),
              "               Heaviest\n"
              "  Name             load\n"
              "  Upper river   21.5 kg\n");
    EXPECT_EQ(table.text(2, 40),
              "  Name         Heaviest load\n"
              "  Upper river        21.5 kg\n");
}

TEST(Table, LongNamesGiveWayWhereTheyMay) {
    Table table({{"Name", false, true}, {"Mass", true}});
    table.row({"a very long name of a thing", "1.5 kg"});
    EXPECT_EQ(table.text(0, 20),
              "Name            Mass\n"
              "a very long…  1.5 kg\n");
}

TEST(Table, ColumnsThatDoNotFitStandBelowBehindTheFirstOne) {
    Table table({{"Day", true}, {"Distance", true}, {"Climb", true}, {"Arrive", true}});
    table.row({"1", "11.5 km", "515 m", "12:41"});
    table.row({"2", "13.2 km", "275 m", "13:40"});
    table.remark("told once");
    EXPECT_EQ(table.text(0, 20),
              "Day  Distance  Climb\n"
              "  1   11.5 km  515 m\n"
              "  2   13.2 km  275 m\n"
              "  told once\n"
              "\n"
              "Day  Arrive\n"
              "  1   12:41\n"
              "  2   13:40\n");
}

TEST(Table, ColumnsUnderOneHeadingStayTogether) {
    Table table({{"Leg"}, {"worst", true}, {"limit", true}, {"worst", true}, {"limit", true}});
    table.group({1, 2, "Ada"});
    table.group({3, 2, "Bram"});
    table.row({"1", "19.0", "22.0", "21.6", "25.0"});
    EXPECT_EQ(table.text(0, 24),
              "              Ada\n"
              "Leg  worst  limit\n"
              "1     19.0   22.0\n"
              "\n"
              "             Bram\n"
              "Leg  worst  limit\n"
              "1     21.6   25.0\n");
}

} // namespace
} // namespace tumpline::cli
