/// What is drunk on the way, at rests and in camp.

#include "planner/journey/provisions.h"
#include "planner/make_plan.h"
#include "planner/models/drinking.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

constexpr double hour_s = 3600.0;

AssumedWater rates() {
    AssumedWater water{};
    water.walking_lps = 0.4 / hour_s;
    water.climbing_lps = 0.8 / hour_s;
    water.carrying_lps = 0.9 / hour_s;
    water.paddling_lps = 0.1 / hour_s;
    water.halting_lps = 0.2 / hour_s;
    water.kitchen_l = 1.2;
    water.camp_lps = 0.1 / hour_s;
    return water;
}

double drunk_l(Travel travel, double steep_share) {
    Stretch stretch{};
    stretch.travel = travel;
    stretch.steep_share = steep_share;
    return drunk_under_way_l(rates(), stretch, {.moving_s = 2.0 * hour_s, .halts_s = 0.5 * hour_s});
}

TEST(Water, IsDrunkByWhatOneDoesAndHowLong) {
    EXPECT_NEAR(drunk_l(Travel::walk, 0.0), 2.0 * 0.4 + 0.5 * 0.2, 1e-12);    // 0.9
    EXPECT_NEAR(drunk_l(Travel::walk, 0.25), 2.0 * 0.5 + 0.5 * 0.2, 1e-12);   // 0.4 + 0.25 x 0.4
    EXPECT_NEAR(drunk_l(Travel::portage, 0.0), 2.0 * 0.9 + 0.5 * 0.2, 1e-12); // 1.9
    EXPECT_NEAR(drunk_l(Travel::paddle, 0.0), 2.0 * 0.1 + 0.5 * 0.1, 1e-12);  // never more at rest
}

TEST(Water, OfACampGoesByItsHoursUnlessItIsGiven) {
    AssumedWater water = rates();
    EXPECT_NEAR(used_in_camp_l(water, 10.0 * hour_s), 2.2, 1e-12);
    EXPECT_NEAR(used_in_camp_l(water, 19.0 * hour_s), 3.1, 1e-12);
    EXPECT_NEAR(used_in_camp_l(water, -1.0), 1.2, 1e-12);
    water.camp_l = 3.0;
    EXPECT_EQ(used_in_camp_l(water, 19.0 * hour_s), 3.0);
}

/// Two days, a dry camp between them.
Plan with_dry_camp(double high_c, double camp_km) {
    test::RandomTrip made =
        test::level_trip({{.length_m = 40e3}}, {{"Camp", PlaceKind::camp, camp_km * 1000.0}});
    made.trip.route.places[0].water = false;
    made.trip.days.nights = {"Camp"};
    made.trip.weather.high_c = high_c;
    return make_plan(made.trip, made.route);
}

TEST(Water, OfADryCampIsMoreInTheHeatAndOverALongNight) {
    // 20 km at 1 m/s from 06:00: in camp from 11:33:20 to 06:00, 18.444 h. At 15 C
    // 1.2 + 18.444 x 1.75/24 = 2.545 L; at 35 C twice the hourly share, 3.890 L.
    const WaterStretch cool = with_dry_camp(15.0, 20.0).water.at(0);
    EXPECT_NEAR(cool.camps_l, 2.545, 0.001);
    EXPECT_NEAR(cool.dry_nights.at(0).litres, 2.545, 0.001);
    EXPECT_NEAR(with_dry_camp(35.0, 20.0).water.at(0).camps_l, 3.890, 0.001);
    // 36 km: from 16:00, 14 h.
    EXPECT_NEAR(with_dry_camp(15.0, 36.0).water.at(0).camps_l, 1.2 + 14.0 * 1.75 / 24.0, 0.001);
}

TEST(Water, IsCarriedFromTheLastSourceAndNoFarther) {
    // 0.36 L/h at 1 m/s is a litre in 10 km. From the spring at 10 km: 1 L to the camp at 20 km,
    // 3 L there, 2 L to the end; from the start 1 L, and the reserve.
    test::RandomTrip made =
        test::level_trip({{.length_m = 40e3}},
                         {{"Spring", PlaceKind::water, 10e3}, {"Camp", PlaceKind::camp, 20e3}});
    made.trip.days.nights = {"Camp"};
    made.trip.water.walking_lps = 1e-4;
    made.trip.water.camp_l = 3.0;
    made.trip.water.reserve_l = 0.5;
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.water.size(), 2U);
    EXPECT_NEAR(plan.water[0].fill_l.at(0), 1.5, 1e-4);
    EXPECT_NEAR(plan.water[1].fill_l.at(0), 6.5, 1e-4);
    EXPECT_NEAR(plan.water[1].way_l, 3.0, 1e-4);
}

TEST(Water, OfEachDryCampGoesByItsOwnHours) {
    // As above 20 km and then 36 km at 1 m/s: from 11:33:20 and from 16:00 to 06:00.
    test::RandomTrip made = test::level_trip(
        {{.length_m = 60e3}}, {{"Near", PlaceKind::camp, 20e3}, {"Far", PlaceKind::camp, 56e3}});
    made.trip.route.places[0].water = false;
    made.trip.route.places[1].water = false;
    made.trip.days.nights = {"Near", "Far"};
    made.trip.weather.high_c = 15.0;
    const WaterStretch water = make_plan(made.trip, made.route).water.at(0);
    ASSERT_EQ(water.dry_nights.size(), 2U);
    EXPECT_NEAR(water.dry_nights[0].litres, 2.545, 0.001);
    EXPECT_NEAR(water.dry_nights[1].litres, 1.2 + 14.0 * 1.75 / 24.0, 0.001);
}

} // namespace
} // namespace tumpline::planner
