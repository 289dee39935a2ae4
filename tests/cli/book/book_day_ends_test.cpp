#include "cli/book/book.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string book_of(const planner::Plan& plan) {
    return book(plan, test::hand_built_route(plan), planner::UnitSystem::metric);
}

/// The page of a day.
std::string day_of(const std::string& html, int day) {
    const std::size_t from = html.find("id=\"day-" + std::to_string(day) + "\"");
    return html.substr(from, html.find("</section>", from) - from);
}

/// The bus of the hand-built plan: leave Birch spit on day 2 by 20:07 (planned 08:00), 12 h 7 min
/// later, to be at Gravel bar before midnight.
TEST(BookDayEnds, SayByWhenToLeaveAndWhyNotLater) {
    const std::string html = book_of(test::hand_built_plan());
    const std::string day = day_of(html, 2);
    EXPECT_THAT(day, HasSubstr("<strong><bdi>Birch spit</bdi> by 20:07</strong>"));
    EXPECT_THAT(day, HasSubstr("to be at Gravel bar before midnight"));
    EXPECT_THAT(day,
                HasSubstr("(12\u00A0h\u00A0"
                          "07\u00A0min after the plan, 08:00)"));
    EXPECT_THAT(day, HasSubstr("leave at the latest:"));
    EXPECT_THAT(day, Not(HasSubstr("too late as planned")));
    EXPECT_THAT(day_of(html, 1), Not(HasSubstr("leave at the latest:")));
}

TEST(BookDayEnds, SayWhereThePlanIsTooLate) {
    planner::Plan plan = test::hand_built_plan();
    planner::LeaveBy& leave = plan.appointments[0].leave_by[0];
    leave.at = leave.planned - std::chrono::minutes{30};
    leave.spare_s = -1800.0;
    EXPECT_THAT(day_of(book_of(plan), 2), HasSubstr("<strong>too late as planned</strong>"));
}

/// Every way out stands once, with its day, after the days; the point of no return on its day too.
TEST(BookDayEnds, ListTheWaysOutOfTheWholeRouteOnce) {
    planner::Plan plan = test::hand_built_plan();
    ASSERT_FALSE(plan.exits.empty());
    for (planner::ExitPoint& point : plan.exits)
        point.no_return = false;
    const auto turn = std::ranges::find_if(plan.exits, [&](const planner::ExitPoint& point) {
        return point.forward_s && point.along_m > plan.days[0].from_m &&
               point.along_m < plan.days[0].to_m;
    });
    ASSERT_NE(turn, plan.exits.end());
    turn->no_return = true;
    const std::string html = book_of(plan);
    const std::size_t list = html.find("<section class=\"flow\" id=\"exits\"");
    ASSERT_NE(list, std::string::npos);
    EXPECT_GT(list, html.find("id=\"day-3\""));
    EXPECT_THAT(html.substr(list), HasSubstr("from here on forward is quicker"));
    EXPECT_THAT(day_of(html, 1),
                HasSubstr("the shorter way out is forward: <bdi>" + turn->forward));
    EXPECT_THAT(day_of(html, 2), Not(HasSubstr("the shorter way out is forward")));
}

TEST(BookDayEnds, SayByWhenToLeaveForAConnection) {
    planner::Plan plan = test::hand_built_plan();
    planner::PlanConnection bus;
    bus.what = "boat taxi";
    bus.place = "Gravel bar";
    bus.taken = plan.appointments[0].by;
    bus.used = true;
    bus.leave_by = plan.appointments[0].leave_by;
    plan.appointments.clear();
    EXPECT_THAT(day_of(book_of(plan), 2), Not(HasSubstr("leave at the latest:")));
    plan.connections = {bus};
    const std::string day = day_of(book_of(plan), 2);
    EXPECT_THAT(day, HasSubstr("For <bdi>boat taxi at Gravel bar, "));
    EXPECT_THAT(day, HasSubstr("<strong><bdi>Birch spit</bdi> by 20:07</strong>"));
    plan.connections[0].used = false; // another one is taken
    EXPECT_THAT(day_of(book_of(plan), 2), Not(HasSubstr("leave at the latest:")));
}

} // namespace
} // namespace tumpline::cli
