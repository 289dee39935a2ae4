#include "geo/tracks/gpx_element.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

TEST(GpxElement, MeansWhatItMeansInsideItsParent) {
    EXPECT_EQ(gpx_child(GpxNode::document, "trk"), GpxNode::track);
    EXPECT_EQ(gpx_child(GpxNode::document, "rte"), GpxNode::route);
    EXPECT_EQ(gpx_child(GpxNode::document, "wpt"), GpxNode::waypoint);
    EXPECT_EQ(gpx_child(GpxNode::track, "trkseg"), GpxNode::segment);
    EXPECT_EQ(gpx_child(GpxNode::segment, "trkpt"), GpxNode::point);
    EXPECT_EQ(gpx_child(GpxNode::route, "rtept"), GpxNode::point);
    EXPECT_EQ(gpx_child(GpxNode::point, "ele"), GpxNode::height);
    EXPECT_EQ(gpx_child(GpxNode::point, "time"), GpxNode::time);
    EXPECT_EQ(gpx_child(GpxNode::waypoint, "name"), GpxNode::name);
    EXPECT_EQ(gpx_child(GpxNode::track, "type"), GpxNode::type);
}

TEST(GpxElement, IsNothingElsewhere) {
    EXPECT_EQ(gpx_child(GpxNode::document, "trkpt"), GpxNode::ignored);
    EXPECT_EQ(gpx_child(GpxNode::track, "trkpt"), GpxNode::ignored); // only in a trkseg
    EXPECT_EQ(gpx_child(GpxNode::segment, "rtept"), GpxNode::ignored);
    EXPECT_EQ(gpx_child(GpxNode::point, "name"), GpxNode::ignored);
    EXPECT_EQ(gpx_child(GpxNode::waypoint, "time"), GpxNode::ignored);
    EXPECT_EQ(gpx_child(GpxNode::ignored, "trk"), GpxNode::ignored);
    EXPECT_EQ(gpx_child(GpxNode::name, "name"), GpxNode::ignored);
    EXPECT_EQ(gpx_child(GpxNode::document, "TRK"), GpxNode::ignored);
}

TEST(GpxTag, IsAPrefixAndALocalName) {
    EXPECT_EQ(gpx_tag("trk").prefix, "");
    EXPECT_EQ(gpx_tag("trk").local, "trk");
    EXPECT_EQ(gpx_tag("gpx:trk").prefix, "gpx");
    EXPECT_EQ(gpx_tag("gpx:trk").local, "trk");
    EXPECT_EQ(gpx_tag(":trk").local, "trk");
}

} // namespace
} // namespace tumpline::geo
