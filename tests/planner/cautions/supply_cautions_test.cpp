/// What is said of vessels and supplies.

#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::cautions_of;
using testing::IsEmpty;
using testing::SizeIs;

/// A spring at the start and then 20 km: about five hours at 0.5 L/h, 2.5 L and more.
test::PlainTrip dry_way() {
    test::PlainTrip plain = test::plain_trip({test::walk(20000.0)});
    TripPlace spring;
    spring.name = "Spring";
    spring.kind = PlaceKind::water;
    plain.route.places.push_back({.name = spring.name,
                                  .kind = spring.kind,
                                  .at = plain.route.legs[0].line.points().front(),
                                  .along_m = 0.0,
                                  .off_m = 0.0,
                                  .leg = 1,
                                  .spec = 0});
    plain.trip.route.places.push_back(spring);
    plain.trip.water.walking_lps = 0.5 / 3600.0;
    return plain;
}

TEST(SupplyCautions, StopWhereTheVesselsHoldLessThanTheWayDrinks) {
    test::PlainTrip plain = dry_way();
    plain.trip.water.capacity_l = 1.0;
    EXPECT_THAT(cautions_of(plain, "water-over-capacity"), SizeIs(1));
    plain.trip.water.capacity_l = 6.0;
    EXPECT_THAT(cautions_of(plain, "water-over-capacity"), IsEmpty());
}

TEST(SupplyCautions, SayThatWaterIsAssumedWhereNoSourceIsNamed) {
    EXPECT_THAT(cautions_of(dry_way(), "water-assumed"), IsEmpty());
    EXPECT_THAT(cautions_of(test::plain_trip({test::walk(2000.0)}), "water-assumed"), SizeIs(1));
}

} // namespace
} // namespace tumpline::planner
