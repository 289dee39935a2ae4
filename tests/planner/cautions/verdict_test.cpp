#include "planner/cautions/verdict.h"

#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::string> codes(const std::vector<VerdictReason>& reasons) {
    std::vector<std::string> all;
    for (const VerdictReason& one : reasons)
        all.push_back(one.code);
    return all;
}

std::vector<std::string> unknown_codes(const Plan& plan) {
    std::vector<std::string> all;
    for (const NotJudged& one : plan.verdict.unknown)
        all.push_back(one.code);
    return all;
}

Plan planned(const test::PlainTrip& plain) {
    return make_plan(plain.trip, plain.route);
}

TEST(Verdict, OfAGoodWalkIsClearWithoutAnythingUnder) {
    const Plan plan = planned(test::plain_trip({test::walk(4000.0)}));
    EXPECT_EQ(plan.verdict.level, VerdictLevel::clear);
    EXPECT_THAT(plan.verdict.reasons, IsEmpty());
    EXPECT_THAT(plan.verdict.always, IsEmpty());
    EXPECT_THAT(unknown_codes(plan), ElementsAre("safety-gear"));
    EXPECT_EQ(plan.verdict.unknown_line,
              "Not judged, because not given: whether there is safety gear (first aid and light).");
}

/// Two legs on one day, 21 kg of things on a limit of 20 kg, and Bo's 31 kg of 25 kg.
TEST(Verdict, GroupsEveryPacksCautionsByItsBearer) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0), test::walk(2000.0)});
    plain.trip.party[0].carry_limit_kg = 20.0;
    Member bo = plain.trip.party[0];
    bo.name = "Bo";
    bo.carry_limit_kg = 25.0;
    plain.trip.party.push_back(bo);
    KitItem stones = test::thing("stones", 16.0);
    stones.owner = "Bo";
    KitItem rope = test::thing("rope", 15.0);
    rope.owner = "Bo";
    plain.trip.kit = {test::thing("books", 19.0), test::thing("lamp", 2.0), stones, rope};
    const Plan plan = planned(plain);
    EXPECT_EQ(plan.verdict.level, VerdictLevel::breaks);
    EXPECT_TRUE(plan.can_be_carried_out());
    std::vector<VerdictReason> packs;
    std::copy_if(plan.verdict.reasons.begin(),
                 plan.verdict.reasons.end(),
                 std::back_inserter(packs),
                 [](const auto& one) { return one.code == "pack-over-limit"; });
    ASSERT_EQ(packs.size(), 2U);
    const VerdictReason& ada = packs[0];
    EXPECT_EQ(ada.subject, "Ada");
    EXPECT_EQ(ada.title, "Pack over the limit");
    EXPECT_EQ(ada.count, 2U); // one caution a leg
    EXPECT_THAT(ada.legs, ElementsAre(LegNumber{1}, LegNumber{2}));
    EXPECT_EQ(ada.worst.leg, LegNumber{1}); // food and water are fewer on the second
    EXPECT_THAT(ada.line.metric, HasSubstr("of 20.0 kg, day 1, leg 1 (leg 1)"));
    EXPECT_THAT(ada.line.imperial, HasSubstr("of 44.1 lb"));
    EXPECT_EQ(packs[1].subject, "Bo");
    EXPECT_THAT(packs[1].line.metric, HasSubstr("of 25.0 kg"));
}

TEST(Verdict, PutsWhatCannotBeDoneBeforeWhatBreaks) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0), test::river(4000.0, 0.001)});
    plain.trip.weather.wind_mps = 6.0;
    plain.trip.craft[0].wind_ceiling_mps = 5.0;
    plain.trip.party[0].river_class = 2;
    plain.route.legs[1].spec.river_class = 3;
    const Plan plan = planned(plain);
    EXPECT_EQ(plan.verdict.level, VerdictLevel::cannot);
    EXPECT_FALSE(plan.can_be_carried_out());
    ASSERT_THAT(codes(plan.verdict.reasons), ElementsAre("class-over-party", "wind-over-ceiling"));
    EXPECT_EQ(plan.verdict.reasons[0].level, VerdictLevel::cannot);
    EXPECT_EQ(plan.verdict.reasons[1].level, VerdictLevel::breaks);
    EXPECT_EQ(plan.verdict.reasons[0].line.metric,
              "River harder than somebody paddles, Ada: class III, at most class II, day 1, leg 2 "
              "(leg 2)");
}

TEST(Verdict, OfClassThreeBreaksWhereNobodysClassIsKnown) {
    test::PlainTrip plain = test::plain_trip({test::river(4000.0, 0.001)});
    plain.route.legs[0].spec.river_class = 3;
    EXPECT_EQ(planned(plain).verdict.level, VerdictLevel::breaks);
    EXPECT_THAT(codes(planned(plain).verdict.reasons), ElementsAre("class-unjudged"));
    plain.trip.party[0].river_class = 3;
    EXPECT_EQ(planned(plain).verdict.level, VerdictLevel::clear);
    EXPECT_THAT(codes(planned(plain).verdict.also), testing::Contains("class-hard"));
    plain.trip.party[0].river_class = {};
    plain.route.legs[0].spec.river_class = 2;
    EXPECT_EQ(planned(plain).verdict.level, VerdictLevel::clear);
}

TEST(Verdict, CountsWhatAlwaysHoldsNowhere) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0)});
    plain.trip.weather.water_c = 8.0;
    const Plan plan = planned(plain);
    ASSERT_EQ(plan.verdict.always.size(), 2U);
    EXPECT_EQ(plan.cautions[plan.verdict.always[0]].code, "cold-water");
    EXPECT_EQ(plan.cautions[plan.verdict.always[1]].code, "usual-water");
    EXPECT_EQ(plan.verdict.level, VerdictLevel::clear);
    EXPECT_THAT(codes(plan.verdict.also), testing::Not(testing::Contains("cold-water")));
}

TEST(Verdict, SaysWhatWasNotGivenOnALakeAndARiver) {
    test::PlainTrip plain =
        test::plain_trip({test::walk(1000.0), test::lake(2000.0), test::river(3000.0, 0.001)});
    plain.trip.weather.wind_mps = {};
    plain.trip.party[0].carry_limit_kg = {};
    plain.route.legs[2].spec.river_class = {};
    const Plan plan = planned(plain);
    EXPECT_THAT(unknown_codes(plan),
                ElementsAre("water-temperature",
                            "wind",
                            "river-class",
                            "payload",
                            "stability",
                            "safety-gear",
                            "carry-limit",
                            "fetch",
                            "flow"));
    EXPECT_THAT(plan.verdict.unknown[0].legs, ElementsAre(LegNumber{2}, LegNumber{3}));
    EXPECT_THAT(plan.verdict.unknown[2].legs, ElementsAre(LegNumber{3}));
    EXPECT_EQ(plan.verdict.unknown_line.find("Not judged, because not given: water temperature, "),
              0U);
    EXPECT_THAT(plan.verdict.unknown_line, HasSubstr("carry limit of Ada"));
    EXPECT_EQ(plan.verdict.level, VerdictLevel::clear); // not known leaves the level as it is
}

TEST(Verdict, AsksForTidesAtSeaOnly) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0)});
    EXPECT_THAT(unknown_codes(planned(plain)), testing::Not(testing::Contains("tides")));
    plain.route.legs[0].spec.water = Water::sea;
    EXPECT_THAT(unknown_codes(planned(plain)), testing::Contains("tides"));
}

/// Afloat in too much wind on days 1, 3, 4 and 5, on foot on day 2.
TEST(Verdict, NamesDaysInARowByTheirFirstAndLast) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0),
                                              test::walk(2000.0),
                                              test::lake(2000.0),
                                              test::lake(2000.0),
                                              test::lake(2000.0)});
    plain.trip.weather.wind_mps = 6.0;
    plain.trip.craft[0].wind_ceiling_mps = 5.0;
    for (const auto& [name, along_m] : std::vector<std::pair<std::string, double>>{
             {"A", 2000.0}, {"B", 4000.0}, {"C", 6000.0}, {"D", 8000.0}}) {
        test::add_place(plain, PlaceKind::camp, name, along_m);
        plain.trip.days.nights.push_back(name);
    }
    const Plan plan = planned(plain);
    const auto wind = std::find_if(plan.verdict.reasons.begin(),
                                   plan.verdict.reasons.end(),
                                   [](const auto& one) { return one.code == "wind-over-ceiling"; });
    ASSERT_NE(wind, plan.verdict.reasons.end());
    EXPECT_THAT(wind->days, ElementsAre(1, 3, 4, 5));
    EXPECT_THAT(wind->line.metric, HasSubstr("days 1 and 3 to 5"));
}

} // namespace
} // namespace tumpline::planner
