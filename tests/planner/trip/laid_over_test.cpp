#include "planner/trip/laid_over.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(LaidOver, GustsBelowAStrongerLaterWindAreForgotten) {
    Weather under;
    under.wind_mps = 4.0;
    under.gusts_mps = 6.0;
    Weather over;
    over.wind_mps = 9.0;
    EXPECT_FALSE(laid_over(under, over).gusts_mps);
    over.wind_mps = 5.0;
    EXPECT_EQ(laid_over(under, over).gusts_mps, 6.0);
}

} // namespace
} // namespace tumpline::planner
