/// What the book says of the weather that was entered: each figure beside its own word.

#include "cli/book/book.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/html_tables.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string about_of(const planner::Weather& weather) {
    planner::Plan plan = test::hand_built_plan();
    plan.trip.weather = weather;
    const std::string html = book(plan, test::hand_built_route(plan), planner::UnitSystem::metric);
    return test::text_of_html(html);
}

TEST(BookAbout, SaysTheNightsCold) {
    planner::Weather weather;
    weather.low_c = 3.0;
    EXPECT_THAT(about_of(weather), HasSubstr("coldest of the night 3"));
    EXPECT_THAT(about_of(weather), Not(HasSubstr("warmest of the day")));
}

TEST(BookAbout, SaysTheDaysWarmth) {
    planner::Weather weather;
    weather.high_c = 17.0;
    EXPECT_THAT(about_of(weather), HasSubstr("warmest of the day 17"));
    EXPECT_THAT(about_of(weather), Not(HasSubstr("coldest of the night")));
}

} // namespace
} // namespace tumpline::cli
