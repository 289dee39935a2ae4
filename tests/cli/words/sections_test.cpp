#include "cli/words/sections.h"

#include "geo/input_error.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <string>

namespace tumpline::cli {
namespace {

TEST(Sections, AreReadInAnyOrderAndOnceEach) {
    const Show show = show_named("plan", "packs,days,packs");
    EXPECT_EQ(show.sections, (std::vector{Section::packs, Section::days}));
    EXPECT_FALSE(show.first_screen());
    EXPECT_TRUE(Show{}.first_screen());
}

TEST(Sections, AllIsEverySectionOfTheCommand) {
    for (const char* command : {"plan", "pack", "nights", "odds", "compare"}) {
        EXPECT_EQ(show_named(command, "all").sections, sections_of(command));
        EXPECT_GE(sections_of(command).size(), 3U) << command;
        std::set<std::string_view> words;
        for (const Section section : sections_of(command)) {
            EXPECT_TRUE(words.insert(word(section)).second) << word(section);
            EXPECT_EQ(show_named(command, word(section)).sections, std::vector{section});
        }
    }
}

TEST(Sections, OfAnotherCommandAndNoNameAreRefused) {
    for (const char* names : {"arrivals", "", "days,", "DAYS", "days packs"})
        EXPECT_THROW((void)show_named("plan", names), geo::InputError) << names;
    try {
        (void)show_named("plan", "portage");
        FAIL();
    } catch (const geo::InputError& error) {
        EXPECT_THAT(error.what(), testing::HasSubstr("write \"portages\""));
    }
}

} // namespace
} // namespace tumpline::cli
