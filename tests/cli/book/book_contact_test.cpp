/// What the contact sheet says is carried.

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

std::string plain_spaces(std::string text) {
    for (std::size_t at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0"))
        text.replace(at, 2, " ");
    return text;
}

// The sign of a leg that is lined has the class "line": a line to write on must not be one.
TEST(BookContact, HasLinesToWriteOnThatAreNoSignOfAWay) {
    planner::Plan plan = test::hand_built_plan();
    const std::string html = book(plan, test::hand_built_route(plan), planner::UnitSystem::metric);
    EXPECT_THAT(html, HasSubstr("Leader: <span class=\"blank-line\">"));
    EXPECT_THAT(html, HasSubstr("\n.blank-line {"));
    EXPECT_THAT(html, testing::Not(HasSubstr("\n.line {")));
}

TEST(BookContact, TellsFoodFromReserveAndFuel) {
    planner::Plan plan = test::hand_built_plan();
    plan.totals.food_kg = 8.7;
    plan.totals.fuel_kg = 0.31;
    for (planner::Stage& stage : plan.stages)
        stage.reserve_kg = 1.4;
    const std::string text = plain_spaces(
        test::text_of_html(book(plan, test::hand_built_route(plan), planner::UnitSystem::metric)));
    EXPECT_THAT(
        text, HasSubstr("Food for 3 days, 8.7 kg in all, of it a reserve of 1.4 kg; fuel 310 g."));
}

} // namespace
} // namespace tumpline::cli
