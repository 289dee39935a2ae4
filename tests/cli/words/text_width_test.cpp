#include "cli/words/text_width.h"

#include "cli/words/table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

using testing::ElementsAre;

TEST(TextWidth, CountsColumnsAndNotBytes) { // widths as in UAX 11, East Asian Width
    EXPECT_EQ(columns_of(""), 0U);
    EXPECT_EQ(columns_of("Björn"), 5U);
    EXPECT_EQ(columns_of("Bjo\u0308rn"), 5U); // the diaeresis joins the o
    EXPECT_EQ(columns_of("川下り"), 6U);
    EXPECT_EQ(columns_of("한강"), 4U);
    EXPECT_EQ(columns_of("\U0001F6F6"), 2U);
    EXPECT_EQ(columns_of("\u0E01\u0E34\u0E19"), 2U); // a vowel over its consonant
    EXPECT_EQ(columns_of("\uFF21"), 2U);             // a fullwidth A
    EXPECT_EQ(columns_of("\U000E0FFF"), 1U);         // nobody's character yet
    EXPECT_EQ(columns_of("\xff\xfe"), 2U);           // no UTF-8: a replacement for each byte
}

TEST(TextWidth, ShortensWithAnEllipsis) {
    EXPECT_EQ(fitted("Upper river", 11), "Upper river");
    EXPECT_EQ(fitted("Upper river", 8), "Upper r…");
    EXPECT_EQ(fitted("Upper river", 7), "Upper…"); // no blank before it
    EXPECT_EQ(fitted("川下り", 5), "川下…");
    EXPECT_EQ(fitted("川下り", 4), "川…"); // half a character is none
    EXPECT_EQ(fitted("川下り", 1), "…");
    EXPECT_EQ(fitted("川下り", 0), "");
}

TEST(TextWidth, MakesTextHarmless) {
    EXPECT_EQ(one_line("a\tb\nc"), "a b c");
    EXPECT_EQ(one_line("\033[2J"), "\uFFFD[2J");
    EXPECT_EQ(one_line("a\u202Eb"), "a\uFFFDb");
    EXPECT_EQ(one_line("\xc3"), "\uFFFD");
    EXPECT_EQ(one_line("\xc0\x80"), "\uFFFD\uFFFD");           // an overlong zero
    EXPECT_EQ(one_line("\xed\xa0\x80"), "\uFFFD\uFFFD\uFFFD"); // half of a pair
    EXPECT_EQ(one_line("Ærøy 北"), "Ærøy 北");
    EXPECT_EQ(one_line("a\u2028b\u2029c"), "a\uFFFDb\uFFFDc"); // separators of lines and paragraphs
    EXPECT_EQ(one_line("a\u200Eb\u2066c\u2069"), "a\uFFFDb\uFFFDc\uFFFD"); // turn the reading round
    EXPECT_EQ(one_line("a\u0085b\uFEFFc"), "a\uFFFDb\uFFFDc");
    EXPECT_EQ(one_line("\u0915\u094D\u200D\u0937"), "\u0915\u094D\u200D\u0937"); // joined letters
    EXPECT_EQ(one_line("\u0661\u0600"), "\u0661\u0600"); // a sign of numbers that is seen
}

TEST(TextWidth, WrapsBetweenWords) {
    EXPECT_THAT(wrapped("one two three", 7), ElementsAre("one two", "three"));
    EXPECT_THAT(wrapped("  one   two ", 7), ElementsAre("one two"));
    EXPECT_THAT(wrapped("unbreakable", 4), ElementsAre("unbr", "eaka", "ble"));
    EXPECT_THAT(wrapped("a 川川川", 4), ElementsAre("a", "川川", "川"));
    EXPECT_THAT(wrapped("it weighs 50 kg.", 12), ElementsAre("it weighs", "50 kg."));
    EXPECT_TRUE(wrapped("", 4).empty());
}

TEST(TextWidth, KeepsAFigureWithItsUnits) {
    // Broken where only the words' lengths count, these would part after "21 h", "12 fl", "km".
    EXPECT_THAT(wrapped("in all 21 h 19 min.", 12), ElementsAre("in all", "21 h 19 min."));
    EXPECT_THAT(wrapped("it is 12 fl oz", 11), ElementsAre("it is", "12 fl oz"));
    EXPECT_THAT(wrapped("borne 3 kg km", 11), ElementsAre("borne", "3 kg km"));
    EXPECT_THAT(wrapped("camp at km 12.3, then", 12), ElementsAre("camp at", "km 12.3,", "then"));
    EXPECT_THAT(wrapped("it is 5 ft 3 in, no", 11), ElementsAre("it is", "5 ft 3 in,", "no"));
    EXPECT_THAT(wrapped("wait 2 days.", 7), ElementsAre("wait", "2 days."));
    // Two figures of one unit, or of none, are two.
    EXPECT_THAT(wrapped("from 2 h 3 h", 10), ElementsAre("from 2 h", "3 h"));
    EXPECT_THAT(wrapped("in 2 h 3 people", 8), ElementsAre("in 2 h", "3 people"));
    // A letter that is no figure's unit stays a word.
    EXPECT_THAT(wrapped("class h 4 min", 7), ElementsAre("class h", "4 min"));
}

TEST(Table, AlignsByColumnsAndShortensWhereItMay) {
    Table table({{"Name"}, {"Mass", true}, {"Why", false, true}});
    table.row({"Björn", "20.2 kg", std::string(200, 'x')});
    table.row({"川", "9 kg"});
    table.remark("note");
    const std::string text = table.text(2);
    EXPECT_EQ(text,
              "  Name      Mass  Why\n"
              "  Björn  20.2 kg  " +
                  std::string(81, 'x') +
                  "…\n"
                  "  川        9 kg\n"
                  "    note\n");
}

TEST(Table, WithoutRowsIsNothing) {
    EXPECT_EQ(Table({{"Name"}}).text(), "");
}

} // namespace
} // namespace tumpline::cli
