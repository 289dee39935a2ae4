#include "planner/trip/cross_check.h"

#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>

namespace tumpline::planner {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::string> checked(const Trip& trip) {
    Problems problems("t.json");
    check_trip(trip, problems);
    std::vector<std::string> texts;
    for (const geo::Problem& problem : problems.take())
        texts.push_back(to_string(problem));
    return texts;
}

Trip small_trip() {
    return test::small_trip_with("/name", R"("small")");
}

TEST(CrossCheck, HasNothingAgainstTheSmallTrip) {
    EXPECT_THAT(checked(small_trip()), IsEmpty());
}

TEST(CrossCheck, NamesStandOnceWhateverTheirCase) {
    Trip trip = small_trip();
    trip.party[1].name = "ADA";
    EXPECT_THAT(
        checked(trip),
        ElementsAre(AllOf(HasSubstr("/party/1/name"), HasSubstr("another name than /party/0's"))));
}

TEST(CrossCheck, ALimitIsAtMostTwiceTheBody) {
    Trip trip = small_trip();
    trip.party[0].carry_limit_kg = 136.0; // 2 x 68
    EXPECT_THAT(checked(trip), IsEmpty());
    trip.party[0].carry_limit_kg = 136.1;
    EXPECT_THAT(checked(trip), ElementsAre(HasSubstr("/party/0/carry_limit")));
    trip.party[0].carry_limit_kg = {};
    trip.party[1].portage_limit_kg = 160.1; // 2 x 80
    EXPECT_THAT(checked(trip), ElementsAre(HasSubstr("/party/1/portage_limit")));
}

TEST(CrossCheck, NobodySitsInTwoBoats) {
    Trip trip = small_trip();
    trip.craft.push_back(trip.craft.front());
    trip.craft[1].name = "blue boat";
    EXPECT_THAT(
        checked(trip),
        ElementsAre(AllOf(HasSubstr("/craft/1/crew/0"), HasSubstr("already in \"red boat\""))));
}

TEST(CrossCheck, FreeboardAsksForTheWaterplane) {
    Trip trip = small_trip();
    trip.craft[0].freeboard_m = 0.2;
    EXPECT_THAT(checked(trip), ElementsAre(HasSubstr("no \"waterplane\" beside it")));
    trip.craft[0].waterplane_m2 = 1.3;
    EXPECT_THAT(checked(trip), IsEmpty());
}

TEST(CrossCheck, DaysAgreeWithThemselves) {
    Trip trip = small_trip();
    trip.days.hours = 8.0;
    trip.days.hours_limit = 7.5;
    trip.days.rest_days_after = {2, 3, 2};
    trip.days.halt = MiddayHalt{.from_s = 50'000.0, .to_s = 50'000.0, .above_c = {}};
    trip.days.nights = {"Birch spitt"};
    EXPECT_THAT(checked(trip),
                ElementsAre(AllOf(HasSubstr("/days/hours_limit"), HasSubstr("found 7.5")),
                            AllOf(HasSubstr("/days/rest_days_after/2"), HasSubstr("2 twice")),
                            HasSubstr("/days/halt/to"),
                            AllOf(HasSubstr("/days/nights/0"), HasSubstr("write \"Birch spit\""))));
}

TEST(CrossCheck, WhatIsAtHandLiesInNoBag) {
    Trip trip = small_trip();
    trip.kit[0].bag = BagSide::left;
    EXPECT_THAT(checked(trip), IsEmpty());
    trip.kit[0].at_hand = true;
    EXPECT_THAT(checked(trip), ElementsAre(HasSubstr("/kit/0/bag")));
}

} // namespace
} // namespace tumpline::planner
