#include "cli/text/craft_text.h"

#include "cli/words/text_width.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>
#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

/// Ada walks 4 km and paddles 3 km of class II; one boat that nobody knows, one of class I.
std::string shown(planner::UnitSystem units) {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0), test::river(3000.0, 0.001)});
    plain.route.legs[1].spec.river_class = 2;
    plain.trip.craft[0].river_class = 3;
    plain.trip.craft[0].payload_kg = 150.0;
    planner::CraftChoice unknown;
    unknown.name = "a boat with a name that is much too long for a table of figures";
    unknown.mass_kg = 2.0;
    planner::CraftChoice flat = unknown;
    flat.name = "flat boat";
    flat.river_class = 1;
    flat.price = 199.5;
    plain.trip.craft_choices = {unknown, flat};
    return craft_text(planner::compare_craft(plain.trip, plain.route, {}), {.units = units});
}

TEST(CraftText, NamesTheBestAndWhatDecides) {
    const std::string text = shown(planner::UnitSystem::metric);
    EXPECT_THAT(text, HasSubstr("The best: as the trip is\n"));
    EXPECT_THAT(text, HasSubstr("What decides: margins of\nclass and payload, both are known"));
    EXPECT_THAT(text, HasSubstr("class margin and payload margin not known"));
    EXPECT_THAT(text, HasSubstr("cannot be done: Class II is harder than"));
    EXPECT_THAT(text, HasSubstr("199.50"));
    EXPECT_THAT(text, HasSubstr("price not given"));
    EXPECT_THAT(text, testing::ContainsRegex("flat boat +cannot +1 "));
    EXPECT_THAT(text, testing::ContainsRegex("as the trip is +[a-z]+ +1 "));
}

TEST(CraftText, KeepsToItsWidthInBothSystems) {
    for (const auto units : {planner::UnitSystem::metric, planner::UnitSystem::imperial}) {
        std::istringstream lines(shown(units));
        for (std::string line; std::getline(lines, line);)
            EXPECT_LE(columns_of(line), line_columns) << line;
    }
    EXPECT_THAT(shown(planner::UnitSystem::imperial), HasSubstr(" lb mi"));
    EXPECT_THAT(shown(planner::UnitSystem::imperial), Not(HasSubstr(" kg")));
}

} // namespace
} // namespace tumpline::cli
