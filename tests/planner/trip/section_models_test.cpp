#include "planner/trip/sections.h"
#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::problems_with;
using test::small_trip_with;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;

TEST(SectionModels, EachKeyChoosesOfItsOwnFamily) {
    const Models models = small_trip_with("/models", R"({"walking": "tobler",
        "load_effect": "none", "energy": "pandolf-santee", "paddling": "constant"})")
                              .models;
    EXPECT_EQ(models.walking, "tobler");
    EXPECT_EQ(models.load_effect, "none");
    EXPECT_EQ(models.energy, "pandolf-santee");
    EXPECT_EQ(models.paddling, "constant");
    EXPECT_EQ(models.resting, "");
    EXPECT_THAT(problems_with("/models/walking", R"("pandolf-santee")"),
                testing::ElementsAre(HasSubstr("/models/walking: found \"pandolf-santee\"")));
    EXPECT_THAT(problems_with("/models/energy", R"("pandolf-sante")"),
                testing::ElementsAre(HasSubstr("write \"pandolf-santee\"")));
}

TEST(SectionModels, WordsAreThoseOfOneFamily) {
    EXPECT_THAT(model_words("walking"), Contains("naismith-langmuir"));
    EXPECT_THAT(model_words("walking"), Not(Contains("equal-effort")));
    EXPECT_THAT(model_words("load_effect"), Contains("equal-effort"));
    EXPECT_THAT(model_words("paddling"), Contains("power-balance"));
    EXPECT_TRUE(model_words("swimming").empty());
}

TEST(SectionModels, EachSpreadGoesToItsOwnPlace) {
    const Spread spread =
        small_trip_with("/spread", R"({"pace": 0.11, "day_form": 0.06, "wind": 0.5,
        "current": 0.3, "changeovers": 0.4, "drinking": 0.2, "eating": 0.15})")
            .spread;
    EXPECT_EQ(spread.pace, 0.11);
    EXPECT_EQ(spread.day_form, 0.06);
    EXPECT_EQ(spread.wind, 0.5);
    EXPECT_EQ(spread.current, 0.3);
    EXPECT_EQ(spread.changeovers, 0.4);
    EXPECT_EQ(spread.drinking, 0.2);
    EXPECT_EQ(spread.eating, 0.15);
}

} // namespace
} // namespace tumpline::planner
