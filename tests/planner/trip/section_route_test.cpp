#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::problems_with;
using test::small_trip_with;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(SectionRoute, ReadsEveryKeyOfALegAfloat) {
    const TripLeg leg = small_trip_with("/route/legs/0", R"({"name": "lake", "travel": "paddle",
        "track": "all", "water": "river", "current": "-3.6 km/h", "class": "II", "drinkable": false,
        "shelter": 0.4, "open_crossing": true, "scouts": 2, "fetch": "4 km", "source": "a sheet",
        "note": "keep left", "river_bed": {"depth": "60 cm", "roughness": 0.05}})")
                            .route.legs.at(0);
    EXPECT_EQ(leg.name, "lake");
    EXPECT_EQ(leg.travel, Travel::paddle);
    EXPECT_EQ(leg.track, "all");
    EXPECT_EQ(leg.water, Water::river);
    EXPECT_DOUBLE_EQ(leg.current_mps.value(), -1.0); // against it
    EXPECT_EQ(leg.river_class, 2);
    EXPECT_EQ(leg.drinkable, false);
    EXPECT_EQ(leg.shelter, 0.4);
    EXPECT_EQ(leg.open_crossing, true);
    EXPECT_EQ(leg.scouts, 2);
    EXPECT_DOUBLE_EQ(leg.fetch_m.value(), 4000.0);
    EXPECT_EQ(leg.source, "a sheet");
    EXPECT_EQ(leg.note, "keep left");
    ASSERT_TRUE(leg.bed);
    EXPECT_DOUBLE_EQ(leg.bed->depth_m.value(), 0.6);
    EXPECT_EQ(leg.bed->roughness, 0.05);
}

TEST(SectionRoute, ReadsEveryKeyOfACarry) {
    const TripLeg leg = small_trip_with("/route/legs/1", R"({"name": "carry", "travel": "portage",
        "length": "1.2 km", "ascent": "40 m", "descent": "15 m", "from": "Birch spit",
        "to": "Birch spit", "terrain": "rough-path", "carries": 1.5, "boat_on_carry": "rolled",
        "carry_by": "hands", "footprint": "12 cm", "night": true})")
                            .route.legs.at(1);
    EXPECT_DOUBLE_EQ(leg.length_m.value(), 1200.0);
    EXPECT_DOUBLE_EQ(leg.ascent_m.value(), 40.0);
    EXPECT_DOUBLE_EQ(leg.descent_m.value(), 15.0);
    EXPECT_EQ(leg.from, "Birch spit");
    EXPECT_EQ(leg.terrain, Terrain::rough_path);
    EXPECT_EQ(leg.carries, 1.5);
    EXPECT_EQ(leg.boat_on_carry, BoatOnCarry::rolled);
    EXPECT_EQ(leg.carry_by, CarryBy::hands);
    EXPECT_DOUBLE_EQ(leg.footprint_m.value(), 0.12);
    EXPECT_EQ(leg.night, true);
}

TEST(SectionRoute, CarriesAreOneOfFourOrChosen) {
    EXPECT_FALSE(small_trip_with("/route/legs/1/carry_by", R"("auto")").route.legs.at(1).carry_by);
    EXPECT_FALSE(small_trip_with("/route/legs/1/carries", R"("auto")").route.legs.at(1).carries);
    EXPECT_THAT(problems_with("/route/legs/1/carries", "4"),
                ElementsAre(HasSubstr("expected 1, 1.5, 2, 3 or \"auto\"")));
}

TEST(SectionRoute, APositionIsLongitudeFirst) {
    const TripPlace place = small_trip_with("/route/places/0", R"({"name": "Birch spit",
        "kind": "camp", "at": [13.1, 61.5], "water": false, "closed": ["2027-06-19"],
        "closed_weekdays": ["monday", "sunday"], "holds": 6, "note": "sandy"})")
                                .route.places.at(0);
    ASSERT_TRUE(place.at);
    EXPECT_EQ(place.at->lon_deg, 13.1);
    EXPECT_EQ(place.at->lat_deg, 61.5);
    EXPECT_EQ(place.water, false);
    EXPECT_THAT(place.closed, ElementsAre(Date{std::chrono::year{2027} / 6 / 19}));
    EXPECT_THAT(place.closed_weekdays, ElementsAre(1, 7));
    EXPECT_EQ(place.holds, 6);
    EXPECT_EQ(place.note, "sandy");
    EXPECT_THAT(problems_with("/route/places/0/at", "[61.5, 131.1]"),
                ElementsAre(HasSubstr("write [131.1, 61.5]")));
}

TEST(SectionRoute, APlaceMayStandAtADistance) {
    const TripPlace place =
        small_trip_with("/route/places/0/at", R"("km 41.5")").route.places.at(0);
    EXPECT_FALSE(place.at);
    ASSERT_TRUE(place.along);
    EXPECT_DOUBLE_EQ(place.along->distance_m, 41'500.0);
}

TEST(SectionRoute, AFordMayBeKneeOrThighDeep) {
    const auto depth_m = [](const std::string& depth) {
        return small_trip_with("/route/places/0", R"({"name": "Braids", "kind": "ford", "speed":
            "0.8 m/s", "depth": )" + depth + "}")
            .route.places.at(0)
            .depth_m;
    };
    EXPECT_EQ(depth_m(R"("knee")"), 0.5);  // common practice, no source
    EXPECT_EQ(depth_m(R"("thigh")"), 0.8); // common practice, no source
    EXPECT_DOUBLE_EQ(depth_m(R"("35 cm")").value(), 0.35);
}

TEST(SectionRoute, StepThresholdAndRecorderAreTheRoutes) {
    const TripRoute route = small_trip_with("/route/step", R"("25 m")").route;
    EXPECT_DOUBLE_EQ(route.step_m.value(), 25.0);
    EXPECT_FALSE(route.ascent_threshold_m);
    EXPECT_DOUBLE_EQ(
        small_trip_with("/route/ascent_threshold", R"("4 m")").route.ascent_threshold_m.value(),
        4.0);
    EXPECT_EQ(small_trip_with("/route/recorder", R"("barometer")").route.recorder,
              HeightRecorder::barometer);
}

TEST(SectionRoute, ARouteNeedsATrackOrLengths) {
    EXPECT_THAT(problems_with("/route", R"({"legs": [{"name": "a", "travel": "walk"}]})"),
                ElementsAre(HasSubstr("at least one file with a track, or nothing but legs")));
    EXPECT_THAT(problems_with("/route", R"({"tracks": []})"),
                ElementsAre(HasSubstr("/route/tracks: found an empty list")));
}

} // namespace
} // namespace tumpline::planner
