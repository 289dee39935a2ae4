/// What names and types in track files tell; the words are our own choice (docs/new.md).

#include "planner/route/place_words.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

geo::Waypoint waypoint(const char* name, const char* type = "") {
    geo::Waypoint made;
    made.name = name;
    made.type = type;
    return made;
}

TEST(PlaceWords, TypeComesBeforeName) {
    EXPECT_EQ(kind_of(waypoint("Shelf camp")), PlaceKind::camp);
    EXPECT_EQ(kind_of(waypoint("Cold spring")), PlaceKind::water);
    EXPECT_EQ(kind_of(waypoint("Spring camp", "camp")), PlaceKind::camp);
    EXPECT_EQ(kind_of(waypoint("Ledge rapid")), PlaceKind::hazard);
    EXPECT_FALSE(kind_of(waypoint("Tor 812")));
}

TEST(PlaceWords, NamesTellTheWayOfTravel) {
    EXPECT_EQ(travel_from_name("Fall portage"), Travel::portage);
    EXPECT_EQ(travel_from_name("Across the lake"), Travel::paddle);
    EXPECT_NE(travel_from_name("Lake trail"), Travel::paddle) << "a way beside it";
    EXPECT_NE(travel_from_name("to the river"), Travel::paddle) << "a way to it";
    EXPECT_FALSE(travel_from_name("Day 3"));
}

TEST(PlaceWords, NamesTellTheWater) {
    EXPECT_EQ(water_from_name("Upper river"), Water::river);
    EXPECT_EQ(water_from_name("Long lake"), Water::lake);
    EXPECT_FALSE(water_from_name("Over the saddle"));
}

TEST(PlaceWords, TypesTellWhatIsNoWalk) {
    geo::Track track;
    track.type = "cycling";
    EXPECT_EQ(other_than_walking(track), "a ride");
    track.type = "running";
    EXPECT_EQ(other_than_walking(track), "a run");
    track.type = "hiking";
    EXPECT_EQ(other_than_walking(track), "");
}

} // namespace
} // namespace tumpline::planner
