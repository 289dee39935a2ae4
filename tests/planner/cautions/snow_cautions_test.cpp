#include "planner/cautions/snow_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using test::cautions_of;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

/// Two days' walk, 12 km and 8 km, under a slope of 41 degrees from km 11 to km 12.2.
test::PlainTrip under_a_slope() {
    test::PlainTrip plain = test::plain_trip({test::walk(12'000.0), test::walk(8000.0)});
    test::add_place(plain, PlaceKind::camp, "Lee camp", 12'000.0);
    plain.trip.days.nights = {"Lee camp"};
    plain.route.steep = SteepGround{
        .cell_m = 30.0,
        .parts =
            {{.leg = 1, .from_m = 2000.0, .to_m = 2300.0, .on_line = true, .steepest_deg = 36.0},
             {.leg = 1,
              .from_m = 11'000.0,
              .to_m = 12'000.0,
              .steepest_deg = 41.0,
              .nearest_m = 250.0}},
        .known = {true, true}};
    return plain;
}

std::vector<std::string> unknown_of(const test::PlainTrip& plain) {
    std::vector<std::string> codes;
    for (const NotJudged& one : make_plan(plain.trip, plain.route).verdict.unknown)
        codes.push_back(one.code);
    return codes;
}

TEST(SnowCautions, SayNothingWithoutSnow) {
    const test::PlainTrip plain = under_a_slope();
    EXPECT_THAT(cautions_of(plain, "avalanche-ground"), IsEmpty());
    EXPECT_THAT(unknown_of(plain), Not(Contains("snow-depth")));
    EXPECT_THAT(unknown_of(plain), Not(Contains("avalanche-ground")));
}

TEST(SnowCautions, SayWhereAvalanchesMayComeDown) {
    test::PlainTrip plain = under_a_slope();
    plain.trip.weather.snow = true;
    const std::vector<std::string> all = cautions_of(plain, "avalanche-ground");
    ASSERT_THAT(all, SizeIs(1)); // none on the second leg
    EXPECT_THAT(all[0], HasSubstr("from 2.0 km to 2.3 km of the route on the line (36 degrees)"));
    EXPECT_THAT(
        all[0],
        HasSubstr("11.0 km to 12.0 km of the route above it (41 degrees, from 250 m away)"));
    EXPECT_THAT(all[0], HasSubstr("The night at Lee camp lies there."));
    EXPECT_THAT(all[0], HasSubstr("local avalanche warning service"));
}

TEST(SnowCautions, KeepToTheDaysOnWhichSnowLies) {
    test::PlainTrip plain = under_a_slope();
    WeatherEntry snow;
    snow.says.snow_depth_m = 0.1;
    snow.days = {2};
    plain.trip.forecast = {snow};
    EXPECT_THAT(cautions_of(plain, "avalanche-ground"), IsEmpty());
    plain.trip.forecast[0].days = {1};
    EXPECT_THAT(cautions_of(plain, "avalanche-ground"), SizeIs(1));
}

// 40 cm * 0.747 = 29.9 cm
TEST(SnowCautions, SayHowDeepOneSinks) {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0)});
    plain.trip.weather.snow_depth_m = 0.4;
    ASSERT_THAT(cautions_of(plain, "snow-sinking"), SizeIs(1));
    EXPECT_THAT(cautions_of(plain, "snow-sinking")[0], HasSubstr("sinks about 30 cm,"));
    plain.trip.weather.snow_depth_m = 0.8;
    EXPECT_THAT(cautions_of(plain, "snow-sinking")[0], HasSubstr("about 60 cm (counted as 45 cm"));
    plain.route.legs[0].spec.terrain = Terrain::snow;
    plain.route.legs[0].spec.footprint_m = 0.1; // typed
    EXPECT_THAT(cautions_of(plain, "snow-sinking"), IsEmpty());
}

TEST(SnowCautions, NameWhatIsNotKnown) {
    test::PlainTrip plain = test::plain_trip({test::walk(2000.0)});
    plain.trip.weather.snow = true;
    EXPECT_THAT(unknown_of(plain), Contains("snow-depth"));
    EXPECT_THAT(unknown_of(plain), Contains("avalanche-ground"));
    plain.trip.weather.snow_depth_m = 0.1;
    plain.route.steep = SteepGround{.cell_m = 30.0, .parts = {}, .known = {true}};
    EXPECT_THAT(unknown_of(plain), Not(Contains("snow-depth")));
    EXPECT_THAT(unknown_of(plain), Not(Contains("avalanche-ground")));
    plain.route.steep->known = {false}; // beyond the raster
    EXPECT_THAT(unknown_of(plain), Contains("avalanche-ground"));
}

} // namespace
} // namespace tumpline::planner
