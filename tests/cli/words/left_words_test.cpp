/// What is laid down, in words.

#include "cli/words/left_words.h"

#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

TEST(LeftWords, NameThingsAndWeighFood) {
    const Figures shown{planner::UnitSystem::metric, "UTC", Blank::plain};
    const Figures imperial{planner::UnitSystem::imperial, "UTC", Blank::plain};
    planner::LaidThings left;
    left.mass_kg = 5.3;
    left.things = {{.part = planner::Part::food, .what = "food", .mass_kg = 2.0},
                   {.part = planner::Part::craft, .what = "red boat", .mass_kg = 3.1},
                   {.what = "lamp", .count = 2, .mass_kg = 0.2}};
    EXPECT_EQ(laid_words(left.things[0], shown), "2.0 kg of food");
    EXPECT_EQ(laid_words(left.things[0], imperial), "4.4 lb of food");
    EXPECT_EQ(laid_words(left.things[2], shown), "2 lamp");
    EXPECT_EQ(laid_words(left, shown), "2.0 kg of food, red boat, 2 lamp (5.3 kg)");
}

TEST(LeftWords, SayWhenItIsFetched) {
    const Figures shown{planner::UnitSystem::metric, "UTC", Blank::plain};
    planner::LaidThings left;
    EXPECT_EQ(fetched_words(left, shown), "never fetched");
    left.fetch_day = 3;
    left.fetch_along_m = 41.2e3;
    EXPECT_EQ(fetched_words(left, shown), "fetched on day 3 at 41.2 km");
}

} // namespace
} // namespace tumpline::cli
