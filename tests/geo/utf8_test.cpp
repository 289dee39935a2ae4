#include "geo/utf8.h"

#include <gtest/gtest.h>

#include <string_view>

namespace tumpline::geo {
namespace {

/// Bytes of the character at the front, 0 if there is none.
std::size_t bytes_of(std::string_view text) {
    const auto character = first_character(text);
    return character ? character->bytes : 0;
}

TEST(Utf8, ReadsACharacterOfOneToFourBytes) { // Unicode Standard, table 3-6
    EXPECT_EQ(first_character("Mx")->code, U'M');
    EXPECT_EQ(first_character("\u00F6l")->code, U'\u00F6');
    EXPECT_EQ(first_character("\u5DDD")->code, U'\u5DDD');
    EXPECT_EQ(first_character("\U0001F6F6")->code, U'\U0001F6F6');
    EXPECT_EQ(bytes_of("Mx"), 1U);
    EXPECT_EQ(bytes_of("\u00F6l"), 2U);
    EXPECT_EQ(bytes_of("\u5DDD"), 3U);
    EXPECT_EQ(bytes_of("\U0001F6F6"), 4U);
    EXPECT_EQ(bytes_of(std::string_view("\0", 1)), 1U);
}

TEST(Utf8, RefusesWhatTheStandardRefuses) {                  // table 3-7
    for (const std::string_view bytes : {"\x80",             // goes on without a beginning
                                         "\xC3",             // cut short
                                         "\xC3(",            // does not go on
                                         "\xC0\x80",         // too long a form of U+0000
                                         "\xC1\xBF",         // of U+007F
                                         "\xE0\x9F\xBF",     // of U+07FF
                                         "\xF0\x8F\xBF\xBF", // of U+FFFF
                                         "\xED\xA0\x80",     // half of a pair
                                         "\xF4\x90\x80\x80", // beyond U+10FFFF
                                         "\xF5\x80\x80\x80",
                                         "\xFF"})
        EXPECT_FALSE(first_character(bytes)) << bytes.size();
    EXPECT_FALSE(first_character(""));
}

} // namespace
} // namespace tumpline::geo
