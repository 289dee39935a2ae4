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

/// Ada's paddle of two pieces, or one of four for rapids, on class III with a boat for lakes only.
std::string with_paddles() {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0), test::river(3000.0, 0.001)});
    plain.route.legs[1].spec.river_class = 3;
    plain.trip.craft[0].deck = planner::Deck::open;
    plain.trip.kit = {test::thing("paddle", 0.9)};
    plain.trip.kit[0].afloat = planner::ItemUse::used;
    plain.trip.kit[0].paddle = {.pieces = 2, .stroke = planner::Stroke::low};
    planner::CraftChoice paddle;
    paddle.name = "short paddle";
    paddle.mass_kg = 1.1;
    paddle.is_paddle = true;
    paddle.paddle = planner::PaddleSpec{.pieces = 4, .stroke = planner::Stroke::high};
    plain.trip.craft_choices = {paddle};
    return craft_text(planner::compare_craft(plain.trip, plain.route, {}), {});
}

TEST(CraftText, SetsPaddlesSideBySideAndSaysHowTheySuit) {
    const std::string text = with_paddles();
    EXPECT_THAT(text, HasSubstr("each paddle, the best first."));
    EXPECT_THAT(text, testing::ContainsRegex("\n  short paddle +[a-z]+ +1 "));
    EXPECT_THAT(text, HasSubstr("1 in place of paddle"));
    const std::string flat = [&] {
        std::string joined = text;
        for (std::size_t at = 0; (at = joined.find("\n  ", at)) != joined.npos;)
            joined.replace(at, 3, " ");
        return joined;
    }();
    EXPECT_THAT(flat, HasSubstr("made for a low stroke: paddles for rapids are shorter"));
    EXPECT_THAT(flat, HasSubstr("two pieces or one stick out of a pack"));
    EXPECT_THAT(flat, HasSubstr("four pieces go into a pack"));
    EXPECT_THAT(flat, HasSubstr("waves come into an open boat (leg 2,"));
}

} // namespace
} // namespace tumpline::cli
