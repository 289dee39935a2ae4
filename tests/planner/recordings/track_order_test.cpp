#include "planner/recordings/track_order.h"

#include "geo/lines/geodesic.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using Order = std::vector<std::size_t>;
using Turned = std::vector<bool>;

/// A place so many km north.
geo::Position km(double north) {
    return geo::destination({61.0, 1.0}, 0.0, 1000.0 * north);
}

TEST(TrackOrder, TracksThatMeetStayAsTheyStandEvenUpstream) {
    const TrackOrder laid = track_order({{km(0), km(5), {}}, {km(5.1), km(9), 40.0}});
    EXPECT_EQ(laid.order, (Order{0, 1}));
    EXPECT_EQ(laid.turned, Turned(laid.order.size(), false));
}

TEST(TrackOrder, TwoFilesInTheWrongOrderAreSwappedAndNotTurned) {
    const TrackOrder laid = track_order({{km(5), km(24), -30.0}, {km(0), km(5), {}}});
    EXPECT_EQ(laid.order, (Order{1, 0}));
    EXPECT_EQ(laid.turned, Turned(laid.order.size(), false));
}

TEST(TrackOrder, WhereOrderAloneWouldGoUpARiverTheTracksAreTurned) {
    // Drawn upwards and given in the wrong order as well: turned, the river falls.
    const TrackOrder laid = track_order({{km(5), km(24), 30.0}, {km(0), km(5), {}}});
    EXPECT_EQ(laid.order, (Order{0, 1}));
    EXPECT_EQ(laid.turned, (Turned{true, true}));
}

TEST(TrackOrder, ARiverDrawnUpToTheEndOfAWalkIsTravelledDownFromThere) {
    // As they stand the way would lead up 19 km of river and out on foot.
    const TrackOrder laid = track_order({{km(24), km(5), 30.0}, {km(0), km(5), {}}});
    EXPECT_EQ(laid.order, (Order{1, 0}));
    EXPECT_EQ(laid.turned, (Turned{false, true}));
}

TEST(TrackOrder, HeightsOfAWaterThatDifferByChanceDecideNothing) {
    const TrackOrder laid = track_order({{km(5), km(24), 2.0}, {km(0), km(5), {}}});
    EXPECT_EQ(laid.order, (Order{1, 0}));
    EXPECT_EQ(laid.turned, Turned(laid.order.size(), false));
}

TEST(TrackOrder, ThreeInAnyOrderAreChained) {
    const TrackOrder laid =
        track_order({{km(9), km(12), {}}, {km(0), km(4), {}}, {km(4), km(9.1), {}}});
    EXPECT_EQ(laid.order, (Order{1, 2, 0}));
    EXPECT_EQ(laid.turned, Turned(laid.order.size(), false));
}

TEST(TrackOrder, TracksThatNeverMeetStayAsTheyStand) {
    const TrackOrder laid = track_order({{km(50), km(60), {}}, {km(0), km(5), {}}});
    EXPECT_EQ(laid.order, (Order{0, 1}));
    EXPECT_EQ(laid.turned, Turned(laid.order.size(), false));
}

TEST(TrackOrder, OneThatFitsOnlyBackwardsIsTurned) {
    const TrackOrder laid = track_order({{km(0), km(5), {}}, {km(9), km(5), {}}});
    EXPECT_EQ(laid.order, (Order{0, 1}));
    EXPECT_EQ(laid.turned, (Turned{false, true}));
}

} // namespace
} // namespace tumpline::planner
