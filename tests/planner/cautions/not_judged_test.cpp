#include "planner/cautions/not_judged.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::Not;

/// Code and title.
std::vector<std::pair<std::string, std::string>> missing(const test::PlainTrip& plain) {
    std::vector<std::pair<std::string, std::string>> all;
    for (const NotJudged& one : make_plan(plain.trip, plain.route).verdict.unknown)
        all.emplace_back(one.code, one.title);
    return all;
}

TEST(NotJudged, NamesThoseWhoseClassIsNotKnownWhereARiverHasOne) {
    test::PlainTrip plain = test::plain_trip({test::river(3000.0, 0.001)});
    EXPECT_THAT(missing(plain), Contains(std::pair("party-class", "river class of Ada")));
    EXPECT_THAT(missing(plain), Contains(std::pair("craft-class", "river class of boat")));
    plain.trip.party[0].river_class = 2;
    plain.trip.craft[0].river_class = 2;
    for (const auto& [code, title] : missing(plain))
        EXPECT_TRUE(code != "party-class" && code != "craft-class") << title;
    plain.route.legs[0].spec.river_class = {};
    plain.trip.party[0].river_class = {};
    EXPECT_THAT(missing(plain), Contains(std::pair("river-class", "class of the river")));
    EXPECT_THAT(missing(plain), Not(Contains(std::pair("party-class", "river class of Ada"))));
}

TEST(NotJudged, AsksForHeightsByTheirLegs) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0), test::walk(1000.0)});
    plain.route.legs[1].profile.heights_m.clear();
    const std::vector<NotJudged> all = make_plan(plain.trip, plain.route).verdict.unknown;
    const auto heights = std::find_if(
        all.begin(), all.end(), [](const NotJudged& one) { return one.code == "heights"; });
    ASSERT_NE(heights, all.end());
    EXPECT_THAT(heights->legs, ElementsAre(LegNumber{2}));
    EXPECT_EQ(heights->key, "/route/elevation");
    // Nobody climbs on a ride.
    plain.route.legs[1].travel = Travel::ride;
    plain.route.legs[1].spec.travel = Travel::ride;
    plain.route.legs[1].spec.lasts_s = 3000.0;
    for (const NotJudged& one : make_plan(plain.trip, plain.route).verdict.unknown)
        EXPECT_NE(one.code, "heights");
}

TEST(NotJudged, AsksForTheFlowOfRiversOfWhichNobodyReadsIt) {
    test::PlainTrip plain = test::plain_trip({test::river(3000.0, 0.001)});
    const auto flow = std::pair<std::string, std::string>("flow", "flow of the river on the day");
    EXPECT_THAT(missing(plain), Contains(flow));
    RiverFlow levels;
    levels.columns[static_cast<std::size_t>(FlowLevel::normal)] =
        FlowColumn{.current_mps = 1.0, .reading = {}, .river_class = {}};
    plain.route.legs[0].spec.flow = levels; // "normal", because nothing is said
    EXPECT_THAT(missing(plain), Contains(flow));
    plain.route.legs[0].spec.flow->now_given = true;
    EXPECT_THAT(missing(plain), Not(Contains(flow)));
}

TEST(NotJudged, HasNoBoatsOnFoot) {
    for (const auto& [code, title] : missing(test::plain_trip({test::walk(1000.0)})))
        EXPECT_EQ(code, "safety-gear") << title;
}

} // namespace
} // namespace tumpline::planner
