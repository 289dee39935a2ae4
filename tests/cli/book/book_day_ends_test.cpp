#include "cli/book/book.h"
#include "cli/words/figures.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/html_tables.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

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

/// Each day has its own ways out, where they are looked for; and its point of no return.
TEST(BookDayEnds, HaveTheirWaysOutOnTheDay) {
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
    EXPECT_THAT(html, Not(HasSubstr("id=\"exits\"")));
    const Figures shown(planner::UnitSystem::metric, "UTC", Blank::kept);
    std::size_t there = 0;
    for (const planner::PlanDay& day : plan.days) {
        const std::string page = day_of(html, day.day);
        const std::size_t table = page.find("To the next way out");
        for (const planner::ExitPoint& point : plan.exits) {
            if (point.along_m <= day.from_m || point.along_m > day.to_m || !point.forward_s)
                continue;
            const std::string row =
                fmt::format("<th scope=\"row\">{}</th><td data-label=\"Forward\">{}",
                            shown.distance(point.along_m),
                            shown.duration(*point.forward_s));
            const std::size_t at = page.find(row);
            if (at == std::string::npos)
                continue; // of many points a third is shown
            EXPECT_GT(at, table);
            ++there;
        }
    }
    EXPECT_EQ(day_of(html, 1).find("<small>to <bdi>" + turn->forward) == std::string::npos, false)
        << "the way out is named, in the first row that leads there";
    EXPECT_GE(there, plan.days.size()) << "each day has one at least";
    EXPECT_THAT(
        day_of(html, 1),
        HasSubstr("<tr class=\"chosen\"><th scope=\"row\">" + shown.distance(turn->along_m)));
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

// Seven exits on day 1, at 1 to 7 km: (7 + 2) / 3 = 3, so the first, the fourth and the last of
// them.
TEST(BookDayEnds, ListEveryThirdOfTheExitsOfADay) {
    planner::Plan plan = test::hand_built_plan();
    const planner::ExitPoint like = plan.exits[0];
    plan.exits.clear();
    for (int km = 1; km <= 7; ++km) {
        planner::ExitPoint& point = plan.exits.emplace_back(like);
        point.along_m = 1000.0 * km;
        point.no_return = false;
        point.back_s = 1100.0 * km;
        point.forward_s = 800.0 * (46 - km);
    }
    const test::HtmlTable table =
        test::table_with(day_of(book_of(plan), 1), {"At", "Forward", "Back"});
    std::vector<std::string> at;
    for (const std::vector<std::string>& row : table.rows)
        at.push_back(row.at(0));
    EXPECT_EQ(at, (std::vector<std::string>{"1.0 km", "4.0 km", "7.0 km"}));
}

} // namespace
} // namespace tumpline::cli
