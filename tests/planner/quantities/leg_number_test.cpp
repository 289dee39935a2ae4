#include "planner/quantities/leg_number.h"

#include <gtest/gtest.h>

#include <optional>
#include <type_traits>

namespace tumpline::planner {
namespace {

TEST(LegNumber, IsPrintedFromOneAndStandsFromZero) {
    const LegNumber third = LegNumber::of_index(2);
    EXPECT_EQ(third.printed(), 3U);
    EXPECT_EQ(third.index(), 2U);
    EXPECT_EQ(third, LegNumber{3});
    EXPECT_EQ(fmt::format("leg {:>3}", third), "leg   3");
    EXPECT_TRUE(LegNumber{2} < third);
    EXPECT_FALSE(third < third);
}

TEST(LegNumber, OfNothingIsNone) {
    EXPECT_TRUE(PlanLegNumber().none());
    EXPECT_EQ(PlanLegNumber().printed(), 0U);
    EXPECT_FALSE(PlanLegNumber::of_index(0).none());
}

// Legs of the route and of the plan are not taken for each other, nor for a place in a list.
static_assert(!std::is_convertible_v<LegNumber, PlanLegNumber>);
static_assert(!std::is_constructible_v<LegNumber, PlanLegNumber>);
static_assert(!std::is_convertible_v<LegNumber, std::size_t>);
static_assert(!std::is_constructible_v<std::size_t, LegNumber>);
static_assert(!std::is_constructible_v<LegNumber, std::size_t>);

} // namespace
} // namespace tumpline::planner
