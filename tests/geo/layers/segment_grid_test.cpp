#include "geo/layers/segment_grid.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

TEST(SegmentGrid, FindsTheNearestPieceWithinReach) {
    SegmentGrid grid;
    grid.add({{-5000.0, 0.0}, {5000.0, 0.0}, 7}); // longer than many cells
    grid.add({{0.0, 100.0}, {0.0, 900.0}, 8});
    EXPECT_NEAR(grid.nearest_m({4321.0, 30.0}, 40.0), 30.0, 1e-9);
    EXPECT_NEAR(grid.nearest_m({25.0, 500.0}, 40.0), 25.0, 1e-9);
    EXPECT_EQ(grid.nearest_m({300.0, 500.0}, 40.0), 40.0);
    EXPECT_NEAR(grid.nearest_m({0.0, 930.0}, 40.0), 30.0, 1e-9) << "past its end";
    EXPECT_NEAR(grid.nearest_m({-199.0, -3.0}, 40.0), 3.0, 1e-9) << "at the edge of a cell";
}

TEST(SegmentGrid, GivesThePiecesThatAStepMayMeet) {
    SegmentGrid grid;
    grid.add({{100.0, -50.0}, {100.0, 50.0}, 3});
    grid.add({{900.0, -50.0}, {900.0, 50.0}, 4});
    std::vector<std::size_t> met;
    const MapSegment step{{0.0, 0.0}, {160.0, 0.0}, 0};
    grid.near(step, 0.0, [&](const MapSegment& piece) {
        if (crossing_share(step, piece) >= 0.0)
            met.push_back(piece.owner);
        return true;
    });
    ASSERT_FALSE(met.empty());
    EXPECT_EQ(met.front(), 3U);
    EXPECT_EQ(met.back(), 3U);
}

TEST(SegmentGrid, TellsWhereTwoPiecesCross) {
    const MapSegment east{{0.0, 0.0}, {200.0, 0.0}, 0};
    EXPECT_NEAR(crossing_share(east, {{50.0, -10.0}, {50.0, 30.0}, 0}), 0.25, 1e-12);
    EXPECT_LT(crossing_share(east, {{50.0, 10.0}, {50.0, 30.0}, 0}), 0.0);
    EXPECT_LT(crossing_share(east, {{0.0, 5.0}, {200.0, 5.0}, 0}), 0.0) << "beside each other";
}

} // namespace
} // namespace tumpline::geo
