#include "planner/results/decision_cards.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// A walk of two kilometres to "Landing" and six of river, runnable from 8 to 40 m3/s, class I at
/// 10 m3/s and III at 30.
test::PlainTrip walk_and_river() {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0), test::lake(6000.0)});
    test::add_place(plain, PlaceKind::put_in, "Landing", 2000.0);
    TripLeg& leg = plain.route.legs[1].spec;
    leg.water = Water::river;
    RiverFlow& flow = leg.flow.emplace();
    flow.gauge = "bridge";
    flow.columns[1] =
        FlowColumn{.current_mps = 1.0, .reading = GaugeReading{10.0, false}, .river_class = 1};
    flow.columns[2] =
        FlowColumn{.current_mps = 2.0, .reading = GaugeReading{30.0, false}, .river_class = 3};
    flow.runnable = std::array{GaugeReading{8.0, false}, GaugeReading{40.0, false}};
    set_flow(leg);
    return plain;
}

TEST(DecisionCards, AreOfWhatIsPaddledWhereARiverHasLevels) {
    const test::PlainTrip plain = walk_and_river();
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_THAT(plan.decisions, testing::SizeIs(1));
    const DecisionCard& card = plan.decisions[0];
    EXPECT_EQ(card.leg, LegNumber{2});
    EXPECT_EQ(card.at, "Landing");
    EXPECT_EQ(card.wait_at, "Landing");
    EXPECT_EQ(card.gauge, "bridge");
    ASSERT_TRUE(card.below && card.above && card.wind_mps);
    EXPECT_EQ(card.below->value, 8.0);
    EXPECT_EQ(card.above->value, 40.0); // nobody says what class they paddle
    test::PlainTrip without = walk_and_river();
    without.route.legs[1].spec.flow.reset();
    EXPECT_THAT(make_plan(without.trip, without.route).decisions, testing::IsEmpty());
}

TEST(DecisionCards, DrawTheLineWhereTheClassBecomesTooHard) {
    test::PlainTrip plain = walk_and_river();
    plain.trip.party[0].river_class = 2;
    const DecisionCard card = make_plan(plain.trip, plain.route).decisions.at(0);
    ASSERT_TRUE(card.above);
    EXPECT_EQ(card.above->value, 10.0); // between 10 and 30 the harder class is taken
    EXPECT_THAT(card.above_why, testing::HasSubstr("class III is harder than Ada takes"));
    plain.route.legs[1].spec.flow->columns[2]->reading.reset();
    const DecisionCard unread = make_plan(plain.trip, plain.route).decisions.at(0);
    EXPECT_EQ(unread.not_at, FlowLevel::high);
}

TEST(DecisionCards, LeaveAsMuchTimeAsTheDayHasBeforeDusk) {
    const test::PlainTrip plain = walk_and_river();
    const Plan plan = make_plan(plain.trip, plain.route);
    const DecisionCard& card = plan.decisions.at(0);
    ASSERT_TRUE(card.latest && plan.days[0].before_dusk_s);
    EXPECT_EQ(card.latest->keeps, "dusk");
    EXPECT_NEAR(std::chrono::duration<double>(card.latest->at - plan.legs[1].start).count(),
                *plan.days[0].before_dusk_s,
                1.0);
    EXPECT_FALSE(card.latest->passed);
}

} // namespace
} // namespace tumpline::planner
