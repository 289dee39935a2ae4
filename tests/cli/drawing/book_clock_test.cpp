/// The hours of a day hold what is done on that day, and nothing else.

#include "cli/drawing/load_band.h"
#include "tests/support/hand_built_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string clock_of(std::size_t day) {
    const planner::Plan plan = test::hand_built_plan();
    return day_drawing(plan,
                       plan.days.at(day),
                       {.width = 340.0, .text = 12.0, .id = "c"},
                       {planner::UnitSystem::metric, "Europe/Oslo", Blank::kept});
}

TEST(BookClock, ShowsTheLegsOfItsDayOnly) {
    const std::string first = clock_of(0);
    EXPECT_THAT(first, HasSubstr("<title>Road end over the saddle</title>"));
    EXPECT_THAT(first, HasSubstr("<title>Across Long Tarn</title>"));
    EXPECT_THAT(first, Not(HasSubstr("<title>Fall carry</title>")));
    const std::string second = clock_of(1);
    EXPECT_THAT(second, HasSubstr("<title>Fall carry</title>"));
    EXPECT_THAT(second, Not(HasSubstr("<title>Across Long Tarn</title>")));
}

} // namespace
} // namespace tumpline::cli
