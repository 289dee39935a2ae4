#include "planner/conditions/releases.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

constexpr double an_hour_s = 3600.0;

/// 1 m/s, from 22:00 to 02:00 2 m/s.
RouteLeg below_a_dam() {
    RouteLeg leg{.name = "River",
                 .travel = Travel::paddle,
                 .spec = {},
                 .line = geo::Polyline(
                     {{.lat_deg = 61.5, .lon_deg = 13.1}, {.lat_deg = 61.6, .lon_deg = 13.1}}),
                 .profile = {}};
    RiverFlow& flow = leg.spec.flow.emplace();
    flow.columns[1] = FlowColumn{.current_mps = 1.0, .reading = {}, .river_class = {}};
    flow.columns[2] = FlowColumn{.current_mps = 2.0, .reading = {}, .river_class = {}};
    flow.times.push_back({.hours = HoursOfDay{22.0 * an_hour_s, 2.0 * an_hour_s},
                          .now = {.column = FlowLevel::high, .reading = {}}});
    return leg;
}

TEST(Releases, HoldAtTheirHoursEveryDay) {
    const RouteLeg leg = below_a_dam();
    EXPECT_EQ(released_at(leg, 21.9 * an_hour_s)->current_mps, 1.0);
    EXPECT_EQ(released_at(leg, 22.0 * an_hour_s)->current_mps, 2.0);
    EXPECT_EQ(released_at(leg, 25.0 * an_hour_s)->current_mps, 2.0); // 01:00 of the next day
    EXPECT_EQ(released_at(leg, 26.0 * an_hour_s)->current_mps, 1.0);
}

TEST(Releases, ChangeAtTheirEnds) {
    EXPECT_THAT(release_changes(below_a_dam()),
                testing::ElementsAre(
                    2.0 * an_hour_s, 22.0 * an_hour_s, 26.0 * an_hour_s, 46.0 * an_hour_s));
    RouteLeg without = below_a_dam();
    without.spec.flow->times.clear();
    EXPECT_THAT(release_changes(without), testing::IsEmpty());
    EXPECT_FALSE(released_at(without, 0.0));
}

} // namespace
} // namespace tumpline::planner
