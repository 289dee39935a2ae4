/// The lines of a new trip file that say where a place lies.

#include "cli/text/new_trip_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string trip_with_place(double off_m) {
    planner::FirstTrip trip;
    trip.time_zone = "UTC";
    planner::FirstLeg leg;
    leg.name = "way";
    leg.track = "way";
    trip.legs = {leg};
    planner::FirstPlace place;
    place.name = "Spring";
    place.kind = planner::PlaceKind::water;
    place.at = {.lat_deg = 61.98765432, .lon_deg = 13.12345678};
    place.along_m = 4321.0;
    place.off_m = off_m;
    trip.places = {place};
    return first_trip_text(trip, {.name = "A way", .tracks = {"way.gpx"}, .elevation = {}});
}

// Seven decimals of a degree are a centimetre.
TEST(NewTripText, PutsAPlaceToTheCentimetre) {
    EXPECT_THAT(trip_with_place(0.0), HasSubstr("\"at\": [13.1234568, 61.9876543]"));
}

TEST(NewTripText, SaysHowFarOffTheRouteAPlaceLies) {
    EXPECT_THAT(trip_with_place(0.4), HasSubstr("// km 4.3\n"));
    EXPECT_THAT(trip_with_place(0.4), Not(HasSubstr(" m off")));
    EXPECT_THAT(trip_with_place(1.0), HasSubstr("// km 4.3, 1 m off\n"));
    EXPECT_THAT(trip_with_place(37.6), HasSubstr("// km 4.3, 38 m off\n"));
}

} // namespace
} // namespace tumpline::cli
