#include "geo/one_line.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::geo {
namespace {

TEST(OneLine, KeepsWhatCanBePrinted) {
    EXPECT_EQ(one_line("  Ford \n over\tthe  river "), "Ford over the river");
    EXPECT_EQ(one_line("a\x1B[31mb\x7F"
                       "c"),
              "a [31mb c");
    EXPECT_EQ(one_line("Bj\xC3\xB8rn \xE6\xB9\x96 \xF0\x9F\x9B\xB6"),
              "Bj\xC3\xB8rn \xE6\xB9\x96 \xF0\x9F\x9B\xB6");
    EXPECT_EQ(one_line("\xFF"
                       "a\xC3"),
              "?a?");
    EXPECT_EQ(one_line("\xED\xA0\x80 \xC0\xAF \xF5\x80\x80\x80"), "??? ?? ????");
    EXPECT_EQ(one_line(""), "");
}

TEST(OneLine, CutsBetweenCharacters) {
    std::string text(199, 'x');
    EXPECT_EQ(one_line(text + "\xC3\xB8").size(), 199U);
    EXPECT_EQ(one_line(text + "yz").size(), 200U);
}

} // namespace
} // namespace tumpline::geo
