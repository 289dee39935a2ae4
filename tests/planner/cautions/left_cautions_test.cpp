/// What is needed while it lies elsewhere, and what is never fetched.

#include "planner/cautions/left_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/out_and_back.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

using testing::HasSubstr;

std::vector<Caution> told(const test::RandomTrip& made, const std::string& code) {
    std::vector<Caution> found;
    for (const Caution& caution : make_plan(made.trip, made.route).cautions)
        if (caution.code == code)
            found.push_back(caution);
    return found;
}

TEST(LeftCautions, StopALegAfloatWithoutItsBoat) {
    test::RandomTrip made = test::out_and_back(Travel::paddle);
    made.trip.kit[2].afloat = ItemUse::worn;
    made.trip.leaves = {test::at_col({"boat", "lamp"})};
    const std::vector<Caution> stops = told(made, "needed-elsewhere");
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_EQ(stops[0].level, Level::stop);
    EXPECT_EQ(stops[0].leg, LegNumber{2});
    EXPECT_THAT(stops[0].text, HasSubstr("boat and lamp lie at Col"));
    EXPECT_EQ(make_plan(made.trip, made.route).verdict.level, VerdictLevel::cannot);
    EXPECT_TRUE(told(test::out_and_back(Travel::paddle), "needed-elsewhere").empty());
}

TEST(LeftCautions, TellOfGearAndOfWhatIsUsedOnFoot) {
    test::RandomTrip made = test::out_and_back();
    made.trip.leaves = {test::at_col({"tent", "poles", "lamp"})};
    EXPECT_TRUE(told(made, "needed-elsewhere").empty()) << "by day nobody sleeps";
    const std::vector<Caution> cautions = told(made, "gear-left-behind");
    ASSERT_EQ(cautions.size(), 1U);
    EXPECT_EQ(cautions[0].level, Level::caution);
    EXPECT_THAT(cautions[0].text, HasSubstr("without poles and lamp, left at Col"));
    ASSERT_EQ(told(made, "left-unwatched").size(), 1U);
    EXPECT_THAT(told(made, "left-unwatched")[0].text, HasSubstr("local rules"));
    EXPECT_TRUE(told(test::out_and_back(), "left-unwatched").empty());
    made.trip.kit[1].ashore = ItemUse::worn;
    EXPECT_EQ(told(made, "needed-elsewhere").size(), 1U) << "boots are needed";
}

TEST(LeftCautions, NameADozenThingsAndCountTheRest) {
    test::RandomTrip made = test::out_and_back();
    std::vector<std::string> names;
    for (int i = 1; i <= 30; ++i) {
        KitItem thing;
        thing.name = "sock " + std::to_string(i);
        thing.mass_kg = 0.01;
        thing.ashore = ItemUse::worn;
        made.trip.kit.push_back(thing);
        names.push_back(thing.name);
    }
    made.trip.leaves = {test::at_col(names)};
    const std::vector<Caution> stops = told(made, "needed-elsewhere");
    ASSERT_FALSE(stops.empty());
    EXPECT_THAT(stops[0].text, HasSubstr("sock 10, sock 11 and 19 more lie at Col"));
}

TEST(LeftCautions, StopANightWithoutAShelter) {
    test::RandomTrip made = test::out_and_back();
    made.trip.leaves = {test::at_col({"tent"})};
    made.trip.route.places.push_back({.name = "Tarn",
                                      .kind = PlaceKind::camp,
                                      .at = made.route.at(5e3),
                                      .along = {},
                                      .water = {},
                                      .closed = {},
                                      .closed_weekdays = {},
                                      .holds = {},
                                      .food_mass_kg = {},
                                      .note = {}});
    made.route.places.insert(made.route.places.begin() + 1,
                             {.name = "Tarn",
                              .kind = PlaceKind::camp,
                              .at = made.route.at(5e3),
                              .along_m = 5e3,
                              .off_m = 0.0,
                              .leg = 2,
                              .spec = 1});
    made.trip.days.nights = {"Tarn"};
    const std::vector<Caution> stops = told(made, "needed-elsewhere");
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_EQ(stops[0].day, std::optional<int>(1));
    EXPECT_THAT(stops[0].text, HasSubstr("tent lies at Col"));
    made.trip.kit[0].is.reset();
    EXPECT_TRUE(told(made, "needed-elsewhere").empty());
    EXPECT_THAT(told(made, "gear-left-behind").at(0).text, HasSubstr("is not known"));
    made.trip.days.nights = {"Col"}; // the night at the place itself has the tent
    EXPECT_TRUE(told(made, "gear-left-behind").empty());
}

TEST(LeftCautions, StopWhatIsNeverLeftOrNeverFetched) {
    test::RandomTrip made = test::out_and_back();
    made.trip.leaves = {test::at_col({"tent"})};
    EXPECT_TRUE(told(made, "not-left").empty());
    EXPECT_TRUE(told(made, "not-fetched").empty());
    made.trip.leaves[0].fetch_day = 4;
    ASSERT_EQ(told(made, "not-fetched").size(), 1U);
    EXPECT_THAT(told(made, "not-fetched")[0].text, HasSubstr("there again on day 4"));
    made.trip.leaves[0].day = 3;
    ASSERT_EQ(told(made, "not-left").size(), 1U);
    EXPECT_EQ(told(made, "not-left")[0].level, Level::stop);
}

} // namespace
} // namespace tumpline::planner
