#include "cli/live/live_beside.h"
#include "planner/decisions/odds.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {

namespace {

using std::chrono::hours;
using std::chrono::minutes;

/// A day of 18 June 2027 in UTC that is planned to arrive at 16:00.
planner::Odds one_day_odds() {
    planner::Odds odds;
    odds.options = {.draws = 400, .seed = 1, .threads = 1};
    planner::PlanDay day;
    day.day = 1;
    day.date = std::chrono::year{2027} / 6 / 18;
    const planner::sys_seconds midnight = std::chrono::sys_days(day.date);
    day.arrive = midnight + hours(16);
    odds.plan.days.push_back(day);
    planner::OddsDay one;
    one.arrive = {midnight + hours(12),
                  midnight + hours(13),
                  midnight + hours(15),
                  midnight + hours(18),
                  midnight + hours(18) + minutes(30)};
    one.after_dusk = 0.25;
    one.leading = planner::Assumption::wind;
    odds.days.push_back(one);
    odds.under_way_s.q50 = 7200.0;
    odds.under_way_s.q90 = 9000.0;
    return odds;
}

TEST(LiveBesideView, ADaysOddsAreABandAndASentence) {
    const Figures shown(planner::UnitSystem::metric, "UTC", Blank::plain);
    const Json view = odds_view(one_day_odds(), shown);
    EXPECT_EQ(view.at("words"),
              "400 draws of what one does not know; under way, all days together: half take up to "
              "2 h 00 min, nine of ten up to 2 h 30 min.");
    const Json& day = view.at("days").at(0);
    EXPECT_EQ(day.at("text"), "Half of the draws by 15:00, nine of ten by 18:00");
    EXPECT_EQ(day.at("also"), "after dusk: 25 %; hangs most on wind");
    // 340 wide and 24 h: an hour is 338/24 = 14.0833, and the first stands at 1.
    const std::string drawing = day.at("drawing").get<std::string>();
    EXPECT_THAT(drawing, testing::HasSubstr("viewBox=\"0 0 340"));
    EXPECT_THAT(drawing, testing::HasSubstr(R"(class="most" x="170")")) << drawing; // 12:00
    EXPECT_THAT(drawing, testing::HasSubstr(R"(class="many" x="184.1")"));          // 13:00
    EXPECT_THAT(drawing, testing::HasSubstr(R"(class="half" d="M212.3 0)"));        // 15:00
    EXPECT_THAT(drawing, testing::HasSubstr(R"(class="planned" d="M226.3 0)"));     // 16:00
}

} // namespace

} // namespace tumpline::cli
