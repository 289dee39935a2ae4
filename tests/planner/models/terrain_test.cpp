#include "planner/models/terrain.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace tumpline::planner {
namespace {

TEST(Ground, EveryKindIsSlowerAndHarderThanAPath) {
    const Ground& path = ground("path");
    EXPECT_EQ(path.time_factor, 1.0);
    for (const Ground& kind : grounds()) {
        EXPECT_EQ(&ground(kind.name), &kind);
        EXPECT_GE(kind.time_factor, path.time_factor) << kind.name;
        EXPECT_GE(kind.eta, path.eta) << kind.name;
    }
    EXPECT_THROW(static_cast<void>(ground("scree")), std::out_of_range);
}

// Where no study of time was found, the time is that of equal effort, to the digit given.
TEST(Ground, TimesOfBogSandAndSnowAreThoseOfEqualEffort) {
    for (const std::string_view name : {"bog", "sand", "snow"})
        EXPECT_NEAR(ground(name).time_factor, equal_effort_time_factor(ground(name).eta), 0.05)
            << name;
}

TEST(Ground, HarderGroundIsNeverQuicker) {
    EXPECT_NEAR(equal_effort_time_factor(1.0), 1.0, 1e-12);
    EXPECT_NEAR(equal_effort_time_factor(1.1), 1.0, 1e-12);
    double before = 1.0;
    for (int tenths = 11; tenths <= 100; ++tenths) {
        EXPECT_GE(equal_effort_time_factor(tenths / 10.0), before);
        before = equal_effort_time_factor(tenths / 10.0);
    }
}

// 1 - 0.3/1.186 = 0.7470
TEST(Snow, LetsOneSinkTheDeeperTheLighterItIs) {
    EXPECT_NEAR(sinking_m({0.2, 300.0}), 0.1494, 1e-4);
    EXPECT_NEAR(sinking_m({0.2, 100.0}), 0.1831, 1e-4); // 1 - 0.1/1.186 = 0.9157
    EXPECT_EQ(sinking_m({0.2, 1200.0}), 0.0);           // ice
    EXPECT_EQ(sinking_m({0.0, 300.0}), 0.0);
}

TEST(Snow, DeeperFootprintsAreHarderDownToWading) {
    double before = 0.0;
    for (int cm = 0; cm <= 45; ++cm) {
        EXPECT_GT(snow_eta(cm / 100.0), before);
        before = snow_eta(cm / 100.0);
    }
    EXPECT_EQ(snow_eta(2.0), snow_eta(0.45));
    EXPECT_EQ(snow_eta(-1.0), snow_eta(0.0));
}

TEST(Night, IsSlowerOffThePathThanOnIt) {
    EXPECT_DOUBLE_EQ(night_time_factor(ground("path")), 1.25);
    EXPECT_DOUBLE_EQ(night_time_factor(ground("rough-path")), 1.25);
    for (const Ground& kind : grounds())
        EXPECT_GE(night_time_factor(kind), 1.25) << kind.name;
    EXPECT_GT(night_time_factor(ground("forest")), 1.5);
}

} // namespace
} // namespace tumpline::planner
