#include "planner/results/hazards.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// Places of a plain trip, `along_m` from the start on the leg of that number.
void put(test::PlainTrip& plain, const TripPlace& spec, LegNumber leg, double along_m) {
    plain.route.places.push_back({.name = spec.name,
                                  .kind = spec.kind,
                                  .at = {},
                                  .along_m = along_m,
                                  .off_m = 0.0,
                                  .leg = leg,
                                  .spec = plain.trip.route.places.size()});
    plain.trip.route.places.push_back(spec);
}

TEST(Hazards, ComeInTheOrderOfTheWayWithTheirNotes) {
    test::PlainTrip plain =
        test::plain_trip({test::walk(3000.0), test::river(4000.0, 0.001), test::walk(2000.0)});
    plain.route.legs[1].spec.note = "ask the keeper";
    TripPlace weir;
    weir.name = "Old weir";
    weir.kind = PlaceKind::hazard;
    put(plain, weir, 2, 5500.0);
    TripPlace camp;
    camp.name = "Flat";
    camp.kind = PlaceKind::camp;
    put(plain, camp, 1, 1000.0); // says nothing: not listed
    TripPlace spring;
    spring.name = "Spring";
    spring.kind = PlaceKind::water;
    spring.note = "under the birch";
    put(plain, spring, 1, 2000.0);
    const std::vector<PlanHazard> all = make_plan(plain.trip, plain.route).hazards;
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[0].name, "Spring");
    EXPECT_FALSE(all[0].hazard);
    EXPECT_EQ(all[0].note, "under the birch");
    EXPECT_EQ(all[0].leg, LegNumber{1});
    EXPECT_EQ(all[1].name, "leg 2");
    EXPECT_FALSE(all[1].place);
    EXPECT_EQ(all[1].note, "ask the keeper");
    EXPECT_EQ(all[2].name, "Old weir");
    EXPECT_TRUE(all[2].hazard);
    EXPECT_EQ(all[2].leg, LegNumber{2});
    EXPECT_EQ(all[2].along_m, 5500.0);
    EXPECT_EQ(all[2].day, 1);
}

/// 40 km at six hours a day: the rapid at 39 km is not reached on the first one.
TEST(Hazards, StandOnTheDayOnWhichTheyAreReached) {
    test::PlainTrip plain = test::plain_trip({test::walk(40000.0)});
    plain.trip.days.hours = 6.0;
    TripPlace scree;
    scree.name = "Scree";
    scree.kind = PlaceKind::hazard;
    put(plain, scree, 1, 39000.0);
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_GE(plan.days.size(), 2U);
    ASSERT_EQ(plan.hazards.size(), 1U);
    EXPECT_EQ(plan.hazards[0].day, plan.days.back().day);
}

} // namespace
} // namespace tumpline::planner
