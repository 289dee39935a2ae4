#include "planner/make_plan.h"
#include "planner/models/river.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

/// The current that a plan takes where nobody gave one.
namespace tumpline::planner {
namespace {

using test::PlainLeg;
using test::PlainTrip;
using test::river;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

PlainTrip on(const PlainLeg& leg) {
    return test::plain_trip({leg});
}

PlainLeg described(double fall) {
    PlainLeg leg = river(8000.0, fall);
    leg.spec.bed = RiverBed{"clean-straight-full", 0.8, std::nullopt};
    return leg;
}

std::vector<std::string> said(const Plan& plan, const std::string& code) {
    std::vector<std::string> texts;
    for (const Caution& caution : plan.cautions)
        if (caution.code == code)
            texts.push_back(caution.text);
    return texts;
}

Plan planned(const PlainTrip& plain) {
    return make_plan(plain.trip, plain.route);
}

// R^(2/3) S^(1/2) / n = 0.8^(2/3) x 0.001^(1/2) / 0.030 = 0.908 m/s by hand.
TEST(EstimatedCurrent, FollowsManningAndSaysSo) {
    const Plan plan = planned(on(described(0.001)));
    EXPECT_NEAR(plan.legs[0].current_mps, 0.908, 0.001);
    ASSERT_TRUE(plan.legs[0].current_estimate);
    EXPECT_NEAR(plan.legs[0].current_estimate->slow_mps, 0.908 * 30.0 / 33.0, 0.001);
    EXPECT_NEAR(plan.legs[0].current_estimate->fast_mps, 0.908 * 30.0 / 25.0, 0.002);
    EXPECT_EQ(plan.legs[0].current_estimate->bed, "clean-straight-full");
    EXPECT_FALSE(plan.legs[0].current_estimate->limited);
    EXPECT_THAT(said(plan, "current-estimated"),
                ElementsAre(AllOf(HasSubstr("3.3 km/h is Manning's estimate"),
                                  HasSubstr("1.0 m/km"),
                                  HasSubstr("between 3.0 km/h and 3.9 km/h"))));
    EXPECT_THAT(said(plan, "no-current"), IsEmpty());
}

TEST(EstimatedCurrent, IsLeftOutWhereACurrentIsGivenOrTheBedIsNot) {
    PlainLeg given = described(0.001);
    given.spec.current_mps = 0.5;
    const Plan plan = planned(on(given));
    EXPECT_EQ(plan.legs[0].current_mps, 0.5);
    EXPECT_FALSE(plan.legs[0].current_estimate);
    EXPECT_THAT(said(plan, "current-estimated"), IsEmpty());
    const Plan bare = planned(on(river(8000.0, 0.001)));
    EXPECT_EQ(bare.legs[0].current_mps, 0.0);
    EXPECT_THAT(said(bare, "no-current"), testing::SizeIs(1));
}

TEST(EstimatedCurrent, OfARiverTravelledUpwardsIsAgainstTheBoat) {
    const Plan up = planned(on(described(-0.001)));
    EXPECT_NEAR(up.legs[0].current_mps, -0.908, 0.001);
    EXPECT_THAT(said(up, "current-estimated"), ElementsAre(HasSubstr("3.3 km/h against")));
    const Plan down = planned(on(described(0.001)));
    EXPECT_GT(up.legs[0].moving_s, down.legs[0].moving_s);
}

TEST(EstimatedCurrent, IsHeldAtCriticalFlowAndSaysSo) {
    PlainLeg steep = described(0.02);
    steep.spec.bed->roughness = 0.012; // a flume, not a river
    steep.spec.bed->depth_m = 3.0;     // beyond Jarrett's streams
    const Plan plan = planned(on(steep));
    EXPECT_NEAR(plan.legs[0].current_mps, std::sqrt(9.80665 * 3.0), 1e-6); // Froude number 1
    EXPECT_TRUE(plan.legs[0].current_estimate->limited);
    EXPECT_THAT(said(plan, "current-estimated"), ElementsAre(HasSubstr("critical flow")));
}

TEST(EstimatedCurrent, OfASteepStreamIsAsRoughAsSuchStreamsAre) {
    PlainLeg stream = described(0.01);
    const Plan plan = planned(on(stream));
    EXPECT_TRUE(plan.legs[0].current_estimate->steep);
    EXPECT_NEAR(
        plan.legs[0].current_mps,
        manning_mps(
            {.hydraulic_radius_m = 0.8, .slope = 0.01, .roughness = jarrett_roughness(0.01, 0.8)}),
        1e-9);
    EXPECT_EQ(said(plan, "current-estimated").size(), 1U);
}

TEST(EstimatedCurrent, ListsTheDepthAndBedItTookForGranted) {
    PlainLeg leg = described(0.001);
    leg.spec.bed = RiverBed{};
    const Plan plan = planned(on(leg));
    std::vector<std::string> keys;
    for (const DefaultUsed& used : plan.defaults)
        if (used.key.find("river_bed") != std::string::npos)
            keys.push_back(used.key);
    EXPECT_THAT(keys,
                testing::UnorderedElementsAre("/route/legs/0/river_bed/type",
                                              "/route/legs/0/river_bed/depth"));
}

} // namespace
} // namespace tumpline::planner
