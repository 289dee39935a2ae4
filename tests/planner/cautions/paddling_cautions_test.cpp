/// What is said of boats, wind and rivers.

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <vector>

namespace tumpline::planner {
namespace {

using test::cautions_of;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

std::vector<Caution> of(const test::PlainTrip& plain, const std::string& code) {
    std::vector<Caution> all;
    for (const Caution& caution : make_plan(plain.trip, plain.route).cautions)
        if (caution.code == code)
            all.push_back(caution);
    return all;
}

TEST(PaddlingCautions, WindCeilingHoldsOnLakesAndTheSeaNotOnRivers) {
    test::PlainTrip plain =
        test::plain_trip({test::lake(2000.0), test::river(2000.0, 0.001), test::lake(1000.0)});
    plain.route.legs[2].spec.water = Water::sea;
    plain.trip.weather.wind_mps = 6.0;
    plain.trip.craft[0].wind_ceiling_mps = 5.0;
    const std::vector<Caution> cautions = of(plain, "wind-over-ceiling");
    ASSERT_THAT(cautions, SizeIs(2));
    EXPECT_EQ(cautions[0].leg, LegNumber{1});
    EXPECT_EQ(cautions[1].leg, LegNumber{3});
    EXPECT_EQ(cautions[0].subject, "boat");
    // 6 m/s are 21.6 km/h and 13.4 mph, force 4; 5 m/s are 18 km/h and 11.2 mph.
    EXPECT_EQ(cautions[0].figure, "force 4, 22 km/h of wind, ceiling 18 km/h");
    EXPECT_EQ(cautions[0].figure_imperial, "force 4, 13 mph of wind, ceiling 11 mph");
}

TEST(PaddlingCautions, ShelterHelpsOnALakeAndNotFarFromShore) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0)});
    plain.trip.weather.wind_mps = 6.0;
    plain.trip.craft[0].wind_ceiling_mps = 5.0;
    plain.route.legs[0].spec.shelter = 0.5; // leaves 3 m/s
    EXPECT_THAT(of(plain, "wind-over-ceiling"), IsEmpty());
    plain.route.legs[0].spec.open_crossing = true;
    const std::vector<Caution> cautions = of(plain, "exposed-crossing");
    ASSERT_THAT(cautions, SizeIs(2));
    EXPECT_EQ(cautions[0].level, Level::stop);
    EXPECT_EQ(cautions[1].level, Level::caution);
}

TEST(PaddlingCautions, PayloadIsAStopWithItsFigure) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0)});
    plain.trip.craft[0].payload_kg = 60.0; // Ada alone has 70 kg
    const std::vector<Caution> cautions = of(plain, "craft-over-payload");
    ASSERT_THAT(cautions, SizeIs(1));
    EXPECT_EQ(cautions[0].level, Level::stop);
    EXPECT_THAT(cautions[0].figure, HasSubstr(" of 60.0 kg"));
    EXPECT_GT(cautions[0].excess, 10.0);
}

TEST(PaddlingCautions, ARiverWithoutAClassWantsADecision) {
    test::PlainTrip plain = test::plain_trip({test::river(2000.0, 0.001)});
    plain.route.legs[0].spec.river_class = {};
    ASSERT_THAT(of(plain, "class-unknown"), SizeIs(1));
    EXPECT_EQ(of(plain, "class-unknown")[0].level, Level::caution);
}

// 2 m on 1000 m, all along.
TEST(PaddlingCautions, AGradientIsGivenOverItsSteepestHalfKilometre) {
    const std::vector<Caution> cautions =
        of(test::plain_trip({test::river(3000.0, 0.002)}), "gradient-hint");
    ASSERT_THAT(cautions, SizeIs(1));
    EXPECT_THAT(cautions[0].text, HasSubstr("falls 2.0 m/km (11 ft/mile), in its steepest 500 m"));
    EXPECT_THAT(cautions[0].text, HasSubstr("2.0 m/km (11 ft/mile): "));
}

} // namespace
} // namespace tumpline::planner
