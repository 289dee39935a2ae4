#include "planner/decisions/choices.h"
#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <optional>
#include <string>
#include <vector>

/// What cannot be divided and nobody is to carry.
namespace tumpline::planner {
namespace {

using testing::HasSubstr;

constexpr const char* code = "item-over-limits";

std::vector<Caution> told(const Plan& plan) {
    std::vector<Caution> found;
    std::copy_if(plan.cautions.begin(),
                 plan.cautions.end(),
                 std::back_inserter(found),
                 [](const Caution& one) { return one.code == code; });
    return found;
}

/// Ada with a limit of 20 kg and, where `strong_kg` is given, Bo with that one.
test::PlainTrip party(std::optional<double> strong_kg = {}) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0), test::walk(2000.0)});
    plain.trip.party[0].carry_limit_kg = 20.0;
    if (strong_kg) {
        Member bo = plain.trip.party[0];
        bo.name = "Bo";
        bo.carry_limit_kg = strong_kg;
        plain.trip.party.push_back(bo);
    }
    return plain;
}

KitItem of_the_party(const std::string& name, double mass_kg) {
    KitItem item = test::thing(name, mass_kg);
    item.owner.clear();
    return item;
}

TEST(ItemOverLimits, StopsTheTripOnceAndNamesThingAndHighestLimit) {
    test::PlainTrip plain = party(25.0);
    plain.trip.kit = {of_the_party("cast-iron stove", 26.0)};
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(told(plan).size(), 1U);
    const Caution stop = told(plan).front();
    EXPECT_EQ(stop.level, Level::stop);
    EXPECT_EQ(stop.leg, LegNumber{1});
    EXPECT_THAT(stop.text, HasSubstr("cast-iron stove of 26.0 kg"));
    EXPECT_THAT(stop.text, HasSubstr("Bo's, 25.0 kg"));
    EXPECT_THAT(stop.imperial, HasSubstr("57.3 lb"));
    EXPECT_FALSE(plan.can_be_carried_out());
}

TEST(ItemOverLimits, IsSilentWhereOneOfThePartyMayBearIt) {
    test::PlainTrip plain = party(27.0);
    plain.trip.kit = {of_the_party("cast-iron stove", 26.0)};
    EXPECT_TRUE(told(make_plan(plain.trip, plain.route)).empty());
}

TEST(ItemOverLimits, LooksOnlyAtTheMemberItMustStayWith) {
    test::PlainTrip plain = party(27.0);
    plain.trip.kit = {of_the_party("cast-iron stove", 26.0)};
    plain.trip.kit[0].bearer = "Ada";
    const std::vector<Caution> stops = told(make_plan(plain.trip, plain.route));
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_THAT(stops[0].text, HasSubstr("is over Ada's limit of 20.0 kg"));
}

TEST(ItemOverLimits, TellsOfEachMembersThingOfTheSameName) {
    test::PlainTrip plain = party(25.0);
    plain.trip.kit = {test::thing("barrel", 26.0), test::thing("barrel", 27.0)};
    plain.trip.kit[0].owner = "Ada";
    plain.trip.kit[1].owner = "Bo";
    const std::vector<Caution> stops = told(make_plan(plain.trip, plain.route));
    ASSERT_EQ(stops.size(), 2U);
    EXPECT_THAT(stops[0].text, HasSubstr("is over Ada's limit of 20.0 kg"));
    EXPECT_THAT(stops[1].text, HasSubstr("is over Bo's limit of 25.0 kg"));
}

TEST(ItemOverLimits, CountsWhatGoesInOnePieceTogether) {
    test::PlainTrip plain = party(25.0);
    plain.trip.kit = {of_the_party("tarp", 13.0), of_the_party("poles", 13.0)};
    EXPECT_TRUE(told(make_plan(plain.trip, plain.route)).empty());
    for (KitItem& item : plain.trip.kit)
        item.piece = "shelter bag";
    const std::vector<Caution> stops = told(make_plan(plain.trip, plain.route));
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_THAT(stops[0].text, HasSubstr("shelter bag of 26.0 kg"));
}

TEST(ItemOverLimits, LeavesOutWhatIsWornOrStaysAtHome) {
    test::PlainTrip plain = party();
    plain.trip.kit = {test::thing("armour", 26.0), test::thing("anvil", 26.0)};
    plain.trip.kit[0].ashore = ItemUse::worn;
    plain.trip.kit[1].bring = false;
    EXPECT_TRUE(told(make_plan(plain.trip, plain.route)).empty());
}

TEST(ItemOverLimits, IsACautionWhereTheLimitIsOnlyAssumed) {
    test::PlainTrip plain = party();
    plain.trip.party[0].carry_limit_kg.reset();
    plain.trip.kit = {test::thing("anvil", 40.0)};
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(told(plan).size(), 1U);
    EXPECT_EQ(told(plan)[0].level, Level::caution);
    EXPECT_THAT(told(plan)[0].text, HasSubstr("assumed by body mass"));
}

TEST(ItemOverLimits, HoldsABoatAgainstItsCrew) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0), test::lake(2000.0)});
    plain.trip.party[0].carry_limit_kg = 20.0;
    plain.trip.craft[0].mass_kg = 24.0;
    const std::vector<Caution> stops = told(make_plan(plain.trip, plain.route));
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_THAT(stops[0].text, HasSubstr("24.0 kg"));
}

TEST(ItemOverLimits, HoldsAPieceOfAPortageAgainstThePortageLimits) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0), test::walk(500.0)});
    plain.route.legs[1].spec.travel = Travel::portage;
    plain.route.legs[1].travel = Travel::portage;
    plain.trip.party[0].carry_limit_kg = 20.0;
    plain.trip.party[0].portage_limit_kg = 28.0;
    plain.trip.kit = {test::thing("barrel", 27.0)};
    EXPECT_TRUE(told(make_plan(plain.trip, plain.route)).empty());
    plain.trip.party[0].portage_limit_kg = 26.0;
    const std::vector<Caution> stops = told(make_plan(plain.trip, plain.route));
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_EQ(stops[0].leg, LegNumber{2});
    EXPECT_THAT(stops[0].text, HasSubstr("barrel"));
}

TEST(ItemOverLimits, StopsAtAPortageWhereTheWalkBeforeOnlyWarned) {
    test::PlainTrip plain =
        test::plain_trip({test::walk(3000.0), test::lake(2000.0), test::walk(500.0)});
    plain.route.legs[2].spec.travel = Travel::portage;
    plain.route.legs[2].travel = Travel::portage;
    plain.trip.party[0].carry_limit_kg.reset();
    plain.trip.party[0].portage_limit_kg = 30.0;
    plain.trip.kit = {test::thing("anvil", 40.0)};
    const std::vector<Caution> said = told(make_plan(plain.trip, plain.route));
    ASSERT_EQ(said.size(), 2U);
    EXPECT_EQ(said[0].level, Level::caution);
    EXPECT_EQ(said[0].leg, LegNumber{1});
    EXPECT_EQ(said[1].level, Level::stop);
    EXPECT_EQ(said[1].leg, LegNumber{3});
}

TEST(ItemOverLimits, DoesNotTakeWaterForAThingThatCannotBeDivided) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0), test::walk(500.0)});
    plain.route.legs[1].spec.travel = Travel::portage;
    plain.route.legs[1].travel = Travel::portage;
    plain.trip.party[0].carry_limit_kg = 5.0;
    plain.trip.water.capacity_l = 20.0;
    plain.trip.water.reserve_l = 9.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_GT(plan.legs[1].loads[0].parts.water_kg, 5.0);
    EXPECT_TRUE(told(plan).empty());
}

TEST(ItemOverLimits, IsNotMendedByWalkingTwice) {
    test::PlainTrip plain = party(25.0);
    plain.trip.kit = {of_the_party("tarp", 13.0), of_the_party("poles", 13.0)};
    for (KitItem& item : plain.trip.kit)
        item.piece = "shelter bag";
    const Plan plan = make_plan_with_choices(plain.trip, plain.route);
    ASSERT_TRUE(plan.remedies.relay);
    EXPECT_FALSE(plan.remedies.relay->enough);
    EXPECT_NEAR(plan.remedies.relay->heaviest_of_limit, 26.0 / 25.0, 1e-9);
}

/// One alone has nobody for the other end of what two may carry.
TEST(HandsNotHad, SaysThatAPortageIsNotCarriedAsAsked) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0), test::walk(600.0)});
    plain.route.legs[1].spec.travel = Travel::portage;
    plain.route.legs[1].travel = Travel::portage;
    plain.route.legs[1].spec.carry_by = CarryBy::two;
    KitItem barrel = of_the_party("barrel", 9.0);
    barrel.borne_by = 2;
    plain.trip.kit = {barrel};
    const std::vector<std::string> alone = test::cautions_of(plain, "hands-not-had");
    ASSERT_EQ(alone.size(), 1U);
    EXPECT_THAT(alone[0], HasSubstr("\"carry_by\": \"two\""));
    EXPECT_THAT(alone[0], HasSubstr("planned is \"hands\""));
    test::add_member(plain, "Bo", 25.0);
    EXPECT_TRUE(test::cautions_of(plain, "hands-not-had").empty());
}

} // namespace
} // namespace tumpline::planner
