#include "planner/route/traced_line.h"

#include "geo/lines/geodesic.h"

#include <gtest/gtest.h>

#include <optional>

namespace tumpline::planner {
namespace {

geo::TrackPoint point(double lat_deg, double height_m) {
    geo::TrackPoint made;
    made.at = {lat_deg, 10.0};
    made.height_m = height_m;
    return made;
}

/// Due north from 60 N: two parts of one track, with a gap of 0.01 degrees between them.
geo::Track northwards() {
    geo::Track track;
    track.name = "north";
    track.parts = {{point(60.00, 100.0), point(60.01, 110.0)}, {point(60.02, 140.0)}};
    return track;
}

double north_m(double from_deg, double to_deg) {
    return geo::geodesic({from_deg, 10.0}, {to_deg, 10.0}).length_m;
}

TEST(TracedLine, JoinsThePartsOfATrack) {
    const TracedLine whole = traced(northwards());
    EXPECT_EQ(whole.line.points().size(), 3U);
    EXPECT_NEAR(whole.line.length_m(), north_m(60.0, 60.02), 1e-6);
    EXPECT_NEAR(traced_length_m(northwards()), north_m(60.0, 60.02), 1e-6);
}

TEST(TracedLine, CutBeginsBetweenTwoPoints) {
    const TracedLine whole = traced(northwards());
    // From half way between the last two points.
    const double from_m = north_m(60.0, 60.015);
    const TracedLine part = cut(whole, from_m, whole.line.length_m());
    EXPECT_NEAR(part.line.length_m(), north_m(60.015, 60.02), 1e-3);
    EXPECT_NEAR(part.line.points().front().lat_deg, 60.015, 1e-7);
    EXPECT_NEAR(part.line.points().back().lat_deg, 60.02, 1e-9);
}

TEST(TracedLine, ReversedBeginsWhereItEnded) {
    const TracedLine back = reversed(traced(northwards()));
    EXPECT_EQ(back.line.points().front().lat_deg, 60.02);
    EXPECT_EQ(back.line.points().back().lat_deg, 60.0);
    EXPECT_NEAR(back.line.length_m(), north_m(60.0, 60.02), 1e-6);
}

TEST(TracedLine, AShelfFindsATrackByItsOwnName) {
    TrackShelf shelf;
    shelf.files.resize(2);
    shelf.files[1].tracks = {northwards()};
    ASSERT_NE(shelf.find("north"), nullptr);
    EXPECT_EQ(shelf.find("south"), nullptr);
    EXPECT_EQ(shelf.tracks().size(), 1U);
}

} // namespace
} // namespace tumpline::planner
