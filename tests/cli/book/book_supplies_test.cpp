/// What a resupply place holds against what the plan wants of it.

#include "cli/book/book.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string book_with_short(double short_kg) {
    planner::Plan plan = test::hand_built_plan();
    plan.stages[0].declared_kg = 6.0;
    plan.stages[0].declared_short_kg = short_kg;
    return book(plan, test::hand_built_route(plan), planner::UnitSystem::metric);
}

// Half a gram is the least that shows.
TEST(BookSupplies, SayWhenAPlaceHoldsTooLittle) {
    EXPECT_THAT(book_with_short(0.0004), HasSubstr("of food: enough."));
    EXPECT_THAT(book_with_short(0.0004), Not(HasSubstr("too little.")));
    for (const double short_kg : {0.0005, 0.4}) {
        EXPECT_THAT(book_with_short(short_kg), Not(HasSubstr("of food: enough.")));
        EXPECT_THAT(book_with_short(short_kg), HasSubstr("too little."));
    }
    EXPECT_THAT(book_with_short(0.4),
                HasSubstr("holds 6.0\u00A0kg of food, 400\u00A0g too little."));
}

} // namespace
} // namespace tumpline::cli
