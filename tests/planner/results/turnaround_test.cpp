/// Turning round: by hand on level ground, by planning the way there and back, by properties.

#include "geo/lines/geodesic.h"
#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace tumpline::planner {
namespace {

using test::in_seconds;

using namespace std::chrono_literals;
using std::chrono::sys_days;

TurnRound first_turn(const Plan& plan) {
    return plan.turn_rounds.at(0);
}

TEST(TurnRound, OnLevelGroundIsHalfWayBetweenSettingOffAndDusk) {
    const test::RandomTrip made = test::level_trip({{.length_m = 60e3}}, {});
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.turn_rounds.size(), 1U);
    const TurnRound turn = first_turn(plan);
    ASSERT_TRUE(turn.dusk && turn.at);
    const sys_seconds set_off = sys_days{made.trip.start} + 6h;
    EXPECT_NEAR(in_seconds(*turn.at - set_off), 0.5 * in_seconds(*turn.dusk - set_off), 1.0);
    EXPECT_NEAR(turn.along_m, in_seconds(*turn.at - set_off), 2.0);
    EXPECT_EQ(turn.limit, TurnLimit::dusk);
    EXPECT_FALSE(turn.whole_day);
    EXPECT_EQ(turn.back_to_m, 0.0);
}

TEST(TurnRound, WithRestsBothWaysIsStillHalfWay) {
    test::RandomTrip made = test::level_trip({{.length_m = 60e3}}, {});
    made.trip.days.rest_per_hour = 10min;
    const Plan plan = make_plan(made.trip, made.route);
    const TurnRound turn = first_turn(plan);
    const sys_seconds set_off = sys_days{made.trip.start} + 6h;
    // The same full hours there and back; a rest that falls due just then is taken or not.
    EXPECT_NEAR(in_seconds(*turn.at - set_off), 0.5 * in_seconds(*turn.dusk - set_off), 600.0);
    EXPECT_NEAR(turn.back_s, turn.along_m + 600.0 * std::floor(turn.along_m / 3600.0), 1.0);
}

TEST(TurnRound, OfAShortDayHoldsUntilLateInTheCamp) {
    const test::RandomTrip made = test::level_trip({{.length_m = 10e3}}, {});
    const TurnRound turn = first_turn(make_plan(made.trip, made.route));
    EXPECT_TRUE(turn.whole_day);
    EXPECT_NEAR(turn.along_m, 10e3, 1.0);
    EXPECT_NEAR(in_seconds(*turn.dusk - *turn.at), 10000.0, 2.0);
}

TEST(TurnRound, AfterAWayOutThatIsPassedGoesBackToIt) {
    const test::RandomTrip made =
        test::level_trip({{.length_m = 60e3}}, {{"Road", PlaceKind::exit, 25e3}});
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.turn_rounds.size(), 2U);
    const TurnRound& turn = plan.turn_rounds[1];
    EXPECT_TRUE(turn.exit);
    EXPECT_EQ(turn.back_to, "Road");
    // 25 km to the road, then x on and x back by dusk.
    const sys_seconds set_off = sys_days{made.trip.start} + 6h;
    const double light_s = in_seconds(*turn.dusk - set_off);
    EXPECT_NEAR(turn.along_m, 25e3 + 0.5 * (light_s - 25e3), 2.0);
}

/// The boat's own speed on a leg of `length_m` with this current, planned by itself.
double paddled_mps(double current_mps) {
    const test::RandomTrip made = test::level_trip(
        {{.travel = Travel::paddle, .length_m = 10e3, .current_mps = current_mps}}, {});
    return 10e3 / make_plan(made.trip, made.route).legs.at(0).moving_s;
}

TEST(TurnRound, OnARiverGoesBackAgainstTheCurrent) {
    const test::RandomTrip made =
        test::level_trip({{.travel = Travel::paddle, .length_m = 80e3, .current_mps = 0.5}}, {});
    const TurnRound turn = first_turn(make_plan(made.trip, made.route));
    const sys_seconds set_off = sys_days{made.trip.start} + 6h;
    const double light_s = in_seconds(*turn.dusk - set_off);
    const double down_mps = paddled_mps(0.5);
    const double up_mps = paddled_mps(-0.5);
    ASSERT_GT(down_mps, up_mps + 0.9);
    // The food eaten on the way makes the boat a little quicker in a long leg than in a short one.
    EXPECT_NEAR(turn.along_m, light_s / (1.0 / down_mps + 1.0 / up_mps), 0.01 * turn.along_m);
}

TEST(TurnRound, AboveACurrentThatLetsNobodyBackIsTheLastPlaceToDoSo) {
    const test::RandomTrip made = test::level_trip(
        {{.length_m = 5e3}, {.travel = Travel::paddle, .length_m = 9e3, .current_mps = 2.0}}, {});
    const TurnRound turn = first_turn(make_plan(made.trip, made.route));
    EXPECT_EQ(turn.limit, TurnLimit::no_way_back);
    EXPECT_NEAR(turn.along_m, 5e3, 1.0);
    EXPECT_NEAR(in_seconds(*turn.at - sys_days{made.trip.start}), 6 * 3600 + 5000, 2);
}

TEST(TurnRound, IsNoQuestionWhereThereIsNoDuskOrNoLight) {
    test::RandomTrip made = test::level_trip({{.length_m = 10e3}}, {});
    for (RouteLeg& leg : made.route.legs) {
        std::vector<geo::Position> points = leg.line.points();
        for (geo::Position& point : points)
            point.lat_deg = 75.0;
        leg.line = geo::Polyline(std::move(points));
    }
    const TurnRound summer = first_turn(make_plan(made.trip, made.route));
    EXPECT_EQ(summer.limit, TurnLimit::none);
    EXPECT_FALSE(summer.at);
    EXPECT_TRUE(summer.whole_day);
    made.trip.start = std::chrono::year{2027} / std::chrono::December / 21;
    EXPECT_EQ(first_turn(make_plan(made.trip, made.route)).limit, TurnLimit::dark);
}

TEST(TurnRound, OfADayThatBeginsAfterDuskIsTooLate) {
    test::RandomTrip made = test::level_trip({{.length_m = 10e3}}, {});
    made.trip.days.set_off = 22h + 30min;
    EXPECT_EQ(first_turn(make_plan(made.trip, made.route)).limit, TurnLimit::dark);
}

geo::Profile ramp(double length_m, const std::vector<double>& heights_m) {
    geo::Profile profile;
    profile.length_m = length_m;
    profile.step_m = length_m / static_cast<double>(heights_m.size() - 1);
    profile.heights_m = heights_m;
    return profile;
}

TEST(TurnRound, OverHillsIsWhereTheWayThereAndBackEndsAtDusk) {
    // Up 1500 m, down 600 m, up 300 m over 30 km, at steps of 50 m.
    constexpr double length_m = 30e3;
    std::vector<double> heights_m;
    for (int k = 0; k <= 600; ++k) {
        const double x = k / 600.0;
        heights_m.push_back(x < 0.5   ? 3000.0 * x
                            : x < 0.7 ? 1500.0 - 3000.0 * (x - 0.5)
                                      : 900.0 + 1000.0 * (x - 0.7));
    }
    test::RandomTrip made = test::level_trip({{.length_m = length_m}}, {});
    made.trip.models.walking = "swiss-signpost";
    made.trip.days.set_off = 9h;
    made.route.legs[0].profile = ramp(length_m, heights_m);
    const TurnRound turn = first_turn(make_plan(made.trip, made.route));
    ASSERT_EQ(turn.limit, TurnLimit::dusk);
    ASSERT_FALSE(turn.whole_day);
    ASSERT_GT(turn.along_m, 1e3);

    test::RandomTrip both = made;
    RouteLeg& there = both.route.legs[0];
    const RouteLeg whole = there;
    there.line = whole.line.cut(0.0, turn.along_m);
    there.profile = geo::cut(whole.profile, 0.0, turn.along_m);
    there.to_m = there.line.length_m();
    RouteLeg back = there;
    std::vector<geo::Position> points = there.line.points();
    std::reverse(points.begin(), points.end());
    back.line = geo::Polyline(std::move(points));
    std::reverse(back.profile.heights_m.begin(), back.profile.heights_m.end());
    back.from_m = there.to_m;
    back.to_m = back.from_m + back.line.length_m();
    both.route.legs.push_back(back);
    both.route.length_m = back.to_m;
    both.trip.route.legs.push_back(both.trip.route.legs[0]);
    both.trip.days.nights_auto = true; // no camp on the way: one day
    const Plan plan = make_plan(both.trip, both.route);
    ASSERT_EQ(plan.days.size(), 1U);
    // A cut profile is laid out anew at even steps, so that slopes beside the cut differ a little.
    EXPECT_NEAR(in_seconds(plan.days[0].arrive - *turn.dusk), 0.0, 30.0);
}

TEST(TurnRound, OfRandomTripsEndsAtDuskOrWithTheDay) {
    int by_dusk = 0, whole = 0, no_way = 0;
    for (std::uint64_t seed = 1; seed <= 120; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = test::random_trip(seed);
        const Plan plan = make_plan(random.trip, random.route);
        for (const TurnRound& turn : plan.turn_rounds) {
            const PlanDay& day = plan.days[static_cast<std::size_t>(turn.day) - 1];
            EXPECT_GE(turn.along_m, turn.back_to_m - 1e-6);
            EXPECT_LE(turn.along_m, day.to_m + 1e-6);
            if (turn.limit == TurnLimit::dusk) {
                ASSERT_TRUE(turn.at && turn.dusk);
                EXPECT_NEAR(in_seconds(*turn.dusk - *turn.at), turn.back_s, 2.0);
                // Later on the day's way the hour has passed; before it, it has not.
                EXPECT_GE(*turn.at, day.set_off - 1s);
                if (turn.whole_day) {
                    EXPECT_NEAR(turn.along_m, day.to_m, 1e-6);
                    EXPECT_GE(*turn.at, day.arrive - 90min - 2s); // the landing at the end apart
                }
            }
            by_dusk += turn.limit == TurnLimit::dusk && !turn.whole_day ? 1 : 0;
            whole += turn.whole_day ? 1 : 0;
            no_way += turn.limit == TurnLimit::no_way_back ? 1 : 0;
        }
    }
    EXPECT_GT(by_dusk, 20);
    EXPECT_GT(whole, 20);
    EXPECT_GT(no_way, 10);
}

/// 58 km at 1 m/s from 06:00 end at 22:07, long after dusk.
TEST(TurnRound, AtAWayOutReachedAfterDuskIsTooLate) {
    const test::RandomTrip made =
        test::level_trip({{.length_m = 60e3}}, {{"Road", PlaceKind::exit, 58e3}});
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.turn_rounds.size(), 2U);
    EXPECT_EQ(plan.turn_rounds[0].limit, TurnLimit::dusk);
    const TurnRound& turn = plan.turn_rounds[1];
    EXPECT_EQ(turn.back_to, "Road");
    EXPECT_EQ(turn.limit, TurnLimit::dark);
    EXPECT_FALSE(turn.at);
    EXPECT_NEAR(turn.along_m, 58e3, 1.0);
}

} // namespace
} // namespace tumpline::planner
