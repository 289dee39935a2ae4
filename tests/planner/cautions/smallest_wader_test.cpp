#include "planner/cautions/smallest_wader.h"

#include <gtest/gtest.h>

#include <optional>

namespace tumpline::planner {
namespace {

Member person(const char* name, double body_kg, std::optional<double> height_m) {
    Member member;
    member.name = name;
    member.body_kg = body_kg;
    member.height_m = height_m;
    return member;
}

TEST(SmallestWader, IsWhoeverHasTheLeastHeightTimesMass) {
    Trip trip;
    // 1.9 x 60 = 114, 1.5 x 70 = 105, 1.6 (not given) x 66 = 105.6
    trip.party = {person("Ada", 60.0, 1.9), person("Bo", 70.0, 1.5), person("Cy", 66.0, {})};
    EXPECT_EQ(smallest_wader(trip).name, "Bo");
    EXPECT_DOUBLE_EQ(smallest_wader(trip).wader.height_m, 1.5);
    trip.party[1].body_kg = 71.0; // 106.5
    EXPECT_EQ(smallest_wader(trip).name, "Cy");
    EXPECT_DOUBLE_EQ(smallest_wader(trip).wader.height_m, 1.6);
    EXPECT_DOUBLE_EQ(smallest_wader(trip).wader.body_kg, 66.0);
}

} // namespace
} // namespace tumpline::planner
