#include "planner/cautions/intake_cautions.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::cautions_of;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr double l_per_h = 1.0 / 3600.0;

/// At 15 C the model drinks 0.45 L/h on foot and 0.30 L/h afloat; a tenth less is no difference:
/// 0.405 and 0.27 L/h.
TEST(IntakeCautions, CompareWhatIsDrunkWithTheModel) {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0), test::lake(4000.0)});
    plain.trip.water.walking_lps = 0.41 * l_per_h;
    plain.trip.water.paddling_lps = 0.28 * l_per_h;
    EXPECT_THAT(cautions_of(plain, "drinking-too-little"), IsEmpty());
    plain.trip.water.walking_lps = 0.40 * l_per_h;
    ASSERT_THAT(cautions_of(plain, "drinking-too-little"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "drinking-too-little")[0],
                HasSubstr("0.40 L an hour are planned on foot and the model asks for 0.45 L"));
    plain.trip.water.paddling_lps = 0.26 * l_per_h;
    EXPECT_THAT(cautions_of(plain, "drinking-too-little"), SizeIs(2));
}

TEST(IntakeCautions, WantALitreAndAHalfInCamp) {
    test::PlainTrip plain = test::plain_trip({test::walk(20000.0), test::walk(20000.0)});
    plain.trip.days.hours = 6.0;
    plain.trip.water.camp_l = 1.5;
    EXPECT_THAT(cautions_of(plain, "drinking-too-little"), IsEmpty());
    plain.trip.water.camp_l = 1.4;
    EXPECT_THAT(cautions_of(plain, "drinking-too-little"), SizeIs(1));
}

/// 300 g at 4 kcal/g are 1200 kcal; no day on foot costs less than 10 MJ or 2390 kcal here.
TEST(IntakeCautions, SayWhoGetsFarLessThanIsSpent) {
    test::PlainTrip plain = test::plain_trip({test::walk(15000.0)});
    plain.trip.food.ration_kg = 0.3;
    ASSERT_THAT(cautions_of(plain, "ration-low"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "ration-low")[0], HasSubstr("about 1200 kcal a day; Ada"));
    plain.trip.food.ration_kg = 1.0; // 4000 kcal
    EXPECT_THAT(cautions_of(plain, "ration-low"), IsEmpty());
}

TEST(IntakeCautions, SpeakOfARationByEnergyThatReplacesLittle) {
    test::PlainTrip plain = test::plain_trip({test::walk(15000.0)});
    plain.trip.food.replace = 0.7;
    EXPECT_THAT(cautions_of(plain, "ration-low"), IsEmpty());
    plain.trip.food.replace = 0.6;
    EXPECT_THAT(cautions_of(plain, "ration-low"), SizeIs(1));
}

} // namespace
} // namespace tumpline::planner
