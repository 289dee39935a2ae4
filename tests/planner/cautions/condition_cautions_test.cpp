#include "planner/cautions/condition_cautions.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::cautions_of;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

TEST(ConditionCautions, SayOnceWhatIsNotKnownWhereItMatters) {
    test::PlainTrip plain =
        test::plain_trip({test::walk(1000.0), test::lake(2000.0), test::lake(2000.0)});
    plain.trip.weather.wind_mps = {};
    EXPECT_THAT(cautions_of(plain, "water-temperature-unknown"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "wind-unknown"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "payload-unknown"), SizeIs(1));
    plain.trip.weather.wind_mps = 0.0;
    plain.trip.weather.water_c = 20.0;
    plain.trip.craft[0].payload_kg = 150.0;
    EXPECT_THAT(cautions_of(plain, "water-temperature-unknown"), IsEmpty());
    EXPECT_THAT(cautions_of(plain, "wind-unknown"), IsEmpty());
    EXPECT_THAT(cautions_of(plain, "payload-unknown"), IsEmpty());
}

TEST(ConditionCautions, AskForNoWindOnARiverAndNothingOnFoot) {
    test::PlainTrip plain = test::plain_trip({test::river(2000.0, 0.001)});
    plain.trip.weather.wind_mps = {};
    EXPECT_THAT(cautions_of(plain, "wind-unknown"), IsEmpty());
    EXPECT_THAT(cautions_of(plain, "water-temperature-unknown"), SizeIs(1));
    plain = test::plain_trip({test::walk(2000.0)});
    plain.trip.weather.wind_mps = {};
    EXPECT_THAT(cautions_of(plain, "wind-unknown"), IsEmpty());
    EXPECT_THAT(cautions_of(plain, "water-temperature-unknown"), IsEmpty());
}

TEST(ConditionCautions, AskForIceWhereItFreezesAndOneIsAfloat) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0), test::lake(2000.0)});
    plain.trip.weather.low_c = -4.0;
    ASSERT_THAT(cautions_of(plain, "ice-on-water"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "ice-on-water")[0], HasSubstr("Air down to -4 C"));
    plain.trip.weather.low_c = 0.0;
    EXPECT_THAT(cautions_of(plain, "ice-on-water"), IsEmpty());
    plain.trip.weather.low_c = {};
    plain.trip.weather.high_c = -1.0;
    EXPECT_THAT(cautions_of(plain, "ice-on-water"), SizeIs(1));
    plain = test::plain_trip({test::walk(1000.0)});
    plain.trip.weather.low_c = -4.0;
    EXPECT_THAT(cautions_of(plain, "ice-on-water"), IsEmpty());
}

TEST(ConditionCautions, SpeakOfHeatFromThirtyDegrees) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    plain.trip.weather.high_c = 29.9;
    EXPECT_THAT(cautions_of(plain, "heat"), IsEmpty());
    plain.trip.weather.high_c = 30.0;
    EXPECT_THAT(cautions_of(plain, "heat"), SizeIs(1));
}

TEST(ConditionCautions, TellOfConditionsThatAreNarrowlyMissed) {
    test::PlainTrip plain = test::plain_trip({test::lake(1000.0)});
    KitItem jacket = test::thing("warm jacket", 0.5);
    jacket.when.resize(1);
    jacket.when[0].night_below_c = 8.0;
    plain.trip.kit = {jacket};
    plain.trip.weather.low_c = 9.0;
    ASSERT_THAT(cautions_of(plain, "near-miss"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "near-miss")[0],
                HasSubstr("Ada's warm jacket stays at home: night of 9 C where below 8 C"));
    plain.trip.weather.low_c = 10.1;
    EXPECT_THAT(cautions_of(plain, "near-miss"), IsEmpty());
    plain.trip.weather.low_c = 7.9; // it comes
    EXPECT_THAT(cautions_of(plain, "near-miss"), IsEmpty());
    plain.trip.weather.low_c = 9.0;
    plain.trip.kit[0].bring = false; // somebody has looked at it
    EXPECT_THAT(cautions_of(plain, "near-miss"), IsEmpty());
}

} // namespace
} // namespace tumpline::planner
