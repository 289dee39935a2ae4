#include "planner/trip/route_distance.h"

#include <gtest/gtest.h>

#include <string_view>

namespace tumpline::planner {
namespace {

TEST(RouteDistance, IsReadAsGuidebooksWriteIt) {
    const std::optional<RouteDistance> plain = read_route_distance("km 41");
    ASSERT_TRUE(plain);
    EXPECT_DOUBLE_EQ(plain->distance_m, 41'000.0);
    EXPECT_TRUE(plain->leg.empty());
    EXPECT_FALSE(plain->before_end);
    EXPECT_NEAR(read_route_distance("mi 30.5").value().distance_m, 30.5 * 1609.344, 1e-6);
    const RouteDistance of = read_route_distance("km 3.2 of Lower river").value();
    EXPECT_DOUBLE_EQ(of.distance_m, 3200.0);
    EXPECT_EQ(of.leg, "Lower river");
    const RouteDistance back = read_route_distance("mi 2 before the end of Lower river").value();
    EXPECT_TRUE(back.before_end);
    EXPECT_EQ(back.leg, "Lower river");
    EXPECT_TRUE(read_route_distance("km 2 before the end").value().before_end);
    EXPECT_EQ(show_route_distance(back), "km 3.2 before the end of Lower river");
}

TEST(RouteDistance, IsNothingElse) {
    for (const std::string_view text : {"",
                                        "km",
                                        "km ",
                                        "41 km",
                                        "km -3",
                                        "km nan",
                                        "km inf",
                                        "km 1e3",
                                        "km 4x",
                                        "km 4 of ",
                                        "km 99999999",
                                        "rods 3",
                                        "km 3 after the end"})
        EXPECT_FALSE(read_route_distance(text)) << text;
}

} // namespace
} // namespace tumpline::planner
