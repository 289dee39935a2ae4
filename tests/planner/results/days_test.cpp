#include "planner/make_plan.h"
#include "planner/models/walking_speed.h"
#include "planner/plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <chrono>

namespace tumpline::planner {
namespace {

using test::in_seconds;

TEST(Days, ArriveLateWithEveryLegAtTheSlowEndOfItsBand) {
    const test::RandomTrip made = test::level_trip({{.length_m = 10e3}}, {});
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.bands.size(), 1U);
    const BandUsed& band = plan.bands[0];
    ASSERT_LT(band.low, 1.0);
    ASSERT_GT(band.high, 1.0);
    // 10 km at 1 m/s: 10 000 s.
    EXPECT_NEAR(plan.legs[0].moving_low_s, 10e3 * band.low, 1.0);
    EXPECT_NEAR(plan.legs[0].moving_high_s, 10e3 * band.high, 1.0);
    const PlanDay& day = plan.days[0];
    EXPECT_NEAR(in_seconds(day.arrive_late - day.arrive), 10e3 * (band.high - 1.0), 2.0);
    EXPECT_NEAR(in_seconds(day.arrive - day.arrive_early), 10e3 * (1.0 - band.low), 2.0);
}

TEST(Days, TellTheTimeFromArrivingToDusk) {
    const test::RandomTrip made = test::level_trip({{.length_m = 10e3}}, {});
    const PlanDay day = make_plan(made.trip, made.route).days[0];
    ASSERT_TRUE(day.light.twilight.set);
    ASSERT_TRUE(day.before_dusk_s);
    EXPECT_DOUBLE_EQ(*day.before_dusk_s, in_seconds(*day.light.twilight.set - day.arrive));
    test::RandomTrip late = test::level_trip({{.length_m = 60e3}}, {}); // 16 h 40 min from 06:00
    EXPECT_LT(make_plan(late.trip, late.route).days[0].before_dusk_s.value(), 0.0);
}

TEST(Days, SetOffWithWhatTheFirstLegBeginsWith) {
    test::PlainTrip plain = test::plain_trip({test::walk(15'000.0), test::walk(15'000.0)});
    plain.trip.kit = {test::thing("tent", 2.0)};
    plain.trip.days.hours = 4.0;
    plain.trip.days.rest_days_after = {1};
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_GE(plan.days.size(), 3U);
    EXPECT_EQ(plan.days[0].members[0].set_off_kg, plan.legs[0].loads[0].pack_start_kg);
    EXPECT_EQ(plan.days[0].members[0].set_off_kg, plan.start_loads[0].pack_kg);
    EXPECT_FALSE(plan.days[1].members[0].set_off_kg); // a day of rest
    EXPECT_LT(plan.days[2].members[0].set_off_kg.value(),
              plan.days[0].members[0].set_off_kg.value()); // food has been eaten
}

TEST(Days, DoNotKnowTheirClimbWhereALegOnFootHasNoHeights) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0, 0.1), test::lake(1000.0)});
    const Plan known = make_plan(plain.trip, plain.route);
    EXPECT_TRUE(known.legs[0].heights_known);
    EXPECT_TRUE(known.days[0].heights_known);
    EXPECT_TRUE(known.totals.heights_known);
    EXPECT_NEAR(known.totals.ascent_m, 300.0, 5.0);
    plain.route.legs[1].profile = {}; // of the lake: nobody asks
    EXPECT_TRUE(make_plan(plain.trip, plain.route).totals.heights_known);
    plain.route.legs[0].profile = {};
    const Plan unknown = make_plan(plain.trip, plain.route);
    EXPECT_FALSE(unknown.legs[0].heights_known);
    EXPECT_FALSE(unknown.days[0].heights_known);
    EXPECT_FALSE(unknown.totals.heights_known);
}

/// Water is filled at a spring 5 km on, for 15 km more: 0.5 L/h at 1 m/s are 2.08 L from there and
/// 0.69 L from the start, so that the pack is heaviest behind the spring, by 1.39 kg less some
/// food.
TEST(Days, HaveTheirWorstPackWhereItIsHeaviest) {
    test::RandomTrip made = test::level_trip(
        {{.length_m = 20e3}}, {{.name = "spring", .kind = PlaceKind::water, .along_m = 5e3}});
    made.trip.days.hours = 24.0;
    made.trip.water.walking_lps = 0.5 / 3600.0;
    const MemberDay member = make_plan(made.trip, made.route).days.at(0).members.at(0);
    EXPECT_GT(member.heaviest_kg, *member.set_off_kg + 1.39 - 0.25);
    EXPECT_LT(member.heaviest_kg, *member.set_off_kg + 1.40);
    EXPECT_EQ(member.heaviest_leg, PlanLegNumber{1});
}

} // namespace
} // namespace tumpline::planner
