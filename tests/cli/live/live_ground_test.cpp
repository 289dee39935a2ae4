#include "cli/live/live_ground.h"

#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <memory>

namespace tumpline::cli {

namespace {

using planner::Edit;
using planner::UnitSystem;
using ::testing::ElementsAre;
using ::testing::HasSubstr;

class LiveGroundOfTheSaddle : public ::testing::Test {
  protected:
    LiveTrip trip_{test::root / "sample-routes" / "saddle" / "trip.json"};
    LiveGrounds grounds_;
};

TEST_F(LiveGroundOfTheSaddle, IsDrawnOnceForAllPlansOfARoute) {
    const LivePlan first = trip_.planned({});
    const LivePlan early = trip_.planned({{Edit::Way::add, "/days/set_off", "\"06:00\""}});
    const std::shared_ptr<const LiveGround> ground = grounds_.of(first, UnitSystem::metric);
    EXPECT_EQ(grounds_.of(early, UnitSystem::metric), ground);
    EXPECT_THAT(ground->markup(), HasSubstr("id=\"relief\""));
    EXPECT_THAT(ground->markup(), HasSubstr("class=\"land\""));
    EXPECT_THAT(ground->credits(), ElementsAre("an invented ground"));
}

TEST_F(LiveGroundOfTheSaddle, IsAnotherWhereTheTripDrawsAnother) {
    const LivePlan first = trip_.planned({});
    const LivePlan bare = trip_.planned({{Edit::Way::remove, "/map", {}}});
    const auto shaded = grounds_.of(first, UnitSystem::metric);
    EXPECT_NE(grounds_.of(first, UnitSystem::imperial)->id(), shaded->id()); // contours in feet
    EXPECT_NE(grounds_.of(bare, UnitSystem::metric)->id(), shaded->id());
    EXPECT_TRUE(grounds_.of(bare, UnitSystem::metric)->credits().empty());
    EXPECT_EQ(grounds_.of(first, UnitSystem::metric)->id(), shaded->id());
}

TEST_F(LiveGroundOfTheSaddle, LiesUnderTheMapOfEveryPlan) {
    const LivePlan live = trip_.planned({});
    const auto ground = grounds_.of(live, UnitSystem::metric);
    const Figures shown(UnitSystem::metric, live.plan.trip.time_zone, Blank::kept);
    const Drawing drawing{.width = wide_drawing, .text = 12.0, .id = "map"};
    RouteMap map(live.plan, *live.route);
    EXPECT_THAT(map.draw(drawing, shown), ::testing::Not(HasSubstr("href=\"#g\"")));
    map.lay_ground_of(ground->map());
    EXPECT_THAT(map.draw(drawing, shown), HasSubstr("href=\"#g\""));
}

} // namespace

} // namespace tumpline::cli
