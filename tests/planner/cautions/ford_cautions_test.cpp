#include "planner/cautions/ford_cautions.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::cautions_of;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

test::PlainTrip with_ford() {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0)});
    test::add_place(plain, PlaceKind::ford, "Braids", 1000.0);
    return plain;
}

TEST(FordCautions, SayThatAFordIsNotKnown) {
    test::PlainTrip plain = with_ford();
    ASSERT_THAT(cautions_of(plain, "ford-unknown"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "ford-unknown")[0], Not(HasSubstr("afternoon"))); // about 08:15
    plain.trip.route.places.back().depth_m = 0.3;
    EXPECT_THAT(cautions_of(plain, "ford-unknown"), SizeIs(1)); // its speed is not
}

TEST(FordCautions, NameTheHourOfAnAfternoon) {
    test::PlainTrip plain = with_ford();
    plain.trip.days.set_off = seconds{13 * 3600};
    EXPECT_THAT(cautions_of(plain, "ford-unknown")[0], HasSubstr("afternoon"));
}

TEST(FordCautions, JudgeDepthAndSpeedForTheSmallest) {
    test::PlainTrip plain = with_ford();
    plain.trip.route.places.back().depth_m = 0.5;
    plain.trip.route.places.back().speed_mps = 0.8;
    EXPECT_THAT(cautions_of(plain, "ford-deep"), IsEmpty());
    EXPECT_THAT(cautions_of(plain, "ford-unknown"), IsEmpty());
    plain.trip.route.places.back().speed_mps = 1.0; // 0.5 m2/s
    ASSERT_THAT(cautions_of(plain, "ford-deep"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "ford-deep")[0], HasSubstr("0.50 m2/s"));
    EXPECT_THAT(cautions_of(plain, "ford-deep")[0], HasSubstr("Ada"));
    test::add_member(plain, "Mo", 5.0);
    plain.trip.party.back().body_kg = 20.0;
    plain.trip.party.back().height_m = 1.2; // 24 m kg
    plain.trip.route.places.back().speed_mps = 0.1;
    ASSERT_THAT(cautions_of(plain, "ford-deep"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "ford-deep")[0], HasSubstr("Mo"));
}

} // namespace
} // namespace tumpline::planner
