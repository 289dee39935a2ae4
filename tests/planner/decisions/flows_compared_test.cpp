#include "planner/decisions/flows_compared.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// Two rivers of six kilometres; the first has two levels, the second none.
test::PlainTrip two_rivers() {
    test::PlainTrip plain = test::plain_trip({test::lake(6000.0), test::lake(6000.0)});
    for (RouteLeg& leg : plain.route.legs)
        leg.spec.water = Water::river;
    plain.route.legs[1].spec.current_mps = 0.5;
    RiverFlow& flow = plain.route.legs[0].spec.flow.emplace();
    flow.columns[1] =
        FlowColumn{.current_mps = 1.0, .reading = GaugeReading{10.0, false}, .river_class = 1};
    flow.columns[2] =
        FlowColumn{.current_mps = 2.0, .reading = GaugeReading{30.0, false}, .river_class = 1};
    flow.runnable = std::array{GaugeReading{8.0, false}, GaugeReading{20.0, false}};
    set_flow(plain.route.legs[0].spec);
    return plain;
}

TEST(FlowsCompared, PlansTheTripAtEachLevelThatIsGiven) {
    const test::PlainTrip plain = two_rivers();
    const std::vector<FlowPlan> flows = flows_compared(plain.trip, plain.route);
    ASSERT_THAT(flows, testing::SizeIs(2));
    const Plan now = make_plan(plain.trip, plain.route);
    EXPECT_EQ(flows[0].level, FlowLevel::normal);
    EXPECT_NEAR(flows[0].moving_s, now.totals.moving_s, 0.5);
    EXPECT_EQ(flows[1].level, FlowLevel::high);
    EXPECT_LT(flows[1].moving_s, flows[0].moving_s);
    ASSERT_THAT(flows[1].legs, testing::SizeIs(1)); // the other river has no levels
    EXPECT_EQ(flows[1].legs[0].current_mps, 2.0);
    EXPECT_EQ(flows[1].legs[0].runnable, false);
    EXPECT_EQ(flows[1].verdict, VerdictLevel::cannot);
    EXPECT_THAT(flows[1].titles, testing::Contains("River outside its runnable range"));
    EXPECT_GT(flows[1].before_dusk_s.at(0).value_or(0.0),
              flows[0].before_dusk_s.at(0).value_or(0.0));
}

TEST(FlowsCompared, IsEmptyWithoutLevels) {
    const test::PlainTrip plain = test::plain_trip({test::river(6000.0, 5.0)});
    EXPECT_THAT(flows_compared(plain.trip, plain.route), testing::IsEmpty());
}

TEST(FlowsCompared, NamesRiversWithoutTheLevelThatIsAskedFor) {
    test::PlainTrip plain = two_rivers();
    plain.trip.flow_asked = FlowLevel::high;
    for (RouteLeg& leg : plain.route.legs)
        ask_flow(leg.spec, FlowLevel::high);
    const Plan plan = make_plan(plain.trip, plain.route);
    const auto asked = std::find_if(plan.verdict.unknown.begin(),
                                    plan.verdict.unknown.end(),
                                    [](const NotJudged& one) { return one.code == "flow-level"; });
    ASSERT_NE(asked, plan.verdict.unknown.end());
    EXPECT_THAT(asked->legs, testing::ElementsAre(LegNumber{2}));
    EXPECT_THAT(asked->title, testing::HasSubstr(plain.route.legs[1].name));
}

} // namespace
} // namespace tumpline::planner
