/// Water that rises along a leg: a stop where the plan counts a current with the boat.

#include "planner/cautions/upstream_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>

namespace tumpline::planner {
namespace {

using testing::HasSubstr;

std::optional<Caution> told(double current_mps, std::optional<double> rises_m) {
    test::PlainTrip plain = test::plain_trip({test::walk(1'000.0), test::river(5'000.0, 0.0)});
    plain.trip.route.legs[1].current_mps = current_mps;
    plain.route.legs[1].spec.current_mps = current_mps;
    plain.route.legs[1].water_rises_m = rises_m;
    const Plan plan = make_plan(plain.trip, plain.route);
    const auto found = std::find_if(plan.cautions.begin(),
                                    plan.cautions.end(),
                                    [](const auto& one) { return one.code == "water-rises"; });
    return found == plan.cautions.end() ? std::nullopt : std::optional(*found);
}

TEST(UpstreamCautions, StopWhereTheCurrentIsCountedWithTheBoat) {
    const std::optional<Caution> stop = told(0.5, 12.0);
    ASSERT_TRUE(stop);
    EXPECT_EQ(stop->level, Level::stop);
    EXPECT_EQ(stop->leg, LegNumber{2});
    EXPECT_THAT(stop->text, HasSubstr("the water rises 12 m"));
    EXPECT_THAT(stop->text, HasSubstr("1.8 km/h of current")); // half a metre a second
}

TEST(UpstreamCautions, AskWhereNoCurrentHelps) {
    const std::optional<Caution> caution = told(-0.3, 12.0);
    ASSERT_TRUE(caution);
    EXPECT_EQ(caution->level, Level::caution);
    EXPECT_FALSE(told(0.5, std::nullopt));
}

} // namespace
} // namespace tumpline::planner
