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

TEST(CrossCheck, AnUnknownNameIsOneProblemHoweverOftenItStands) {
    Trip trip = small_trip();
    trip.kit.resize(3, trip.kit.front());
    for (KitItem& item : trip.kit)
        item.owner = "Adda";
    EXPECT_THAT(checked(trip),
                ElementsAre(AllOf(HasSubstr("/kit/0/for"),
                                  HasSubstr("\"Adda\" (and at 2 more places)"),
                                  HasSubstr("write \"Ada\""))));
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

TEST(CrossCheck, KeysOfOneWayOfTravelAreSlipsOnAnother) {
    Trip trip = small_trip();
    trip.route.legs[0].terrain = Terrain::bog; // paddled
    trip.route.legs[0].carries = 2.0;          // no portage
    trip.route.legs[1].current_mps = 1.0;      // a carry
    EXPECT_THAT(
        checked(trip),
        ElementsAre(AllOf(HasSubstr("/route/legs/0/terrain"), HasSubstr("legs on foot")),
                    AllOf(HasSubstr("/route/legs/0/carries"), HasSubstr("portages")),
                    AllOf(HasSubstr("/route/legs/1/current"), HasSubstr("legs that are paddled"))));
}

TEST(CrossCheck, ClimbBelongsToALegByItsLength) {
    Trip trip = small_trip();
    TripLeg& carry = trip.route.legs[1];
    carry.ascent_m = 30.0;
    EXPECT_THAT(checked(trip), ElementsAre(HasSubstr("\"ascent\" without \"length\"")));
    carry.length_m = 900.0;
    EXPECT_THAT(checked(trip), ElementsAre(HasSubstr("\"ascent\" alone")));
    carry.descent_m = 10.0;
    EXPECT_THAT(checked(trip), IsEmpty());
    carry.ascent_m = 1791.0; // 1801 m up and down over 900 m: more than twice
    EXPECT_THAT(checked(trip), ElementsAre(HasSubstr("ground of 63 degrees")));
}

TEST(CrossCheck, DepthIsAFordsOnly) {
    Trip trip = small_trip();
    trip.route.places[0].depth_m = 0.4;
    EXPECT_THAT(checked(trip), ElementsAre(HasSubstr("/route/places/0/depth")));
    trip.route.places[0].kind = PlaceKind::ford;
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

TEST(CrossCheck, OnlyAlternativesAreNoRoute) {
    Trip trip = small_trip();
    trip.route.legs[0].instead_of = "carry";
    EXPECT_THAT(checked(trip), IsEmpty());
    trip.route.legs[1].instead_of = "carry";
    EXPECT_THAT(checked(trip), testing::Contains(HasSubstr("found alternatives only")));
}

} // namespace
} // namespace tumpline::planner
