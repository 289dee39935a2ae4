#include "planner/cautions/ride_cautions.h"

#include <gtest/gtest.h>

#include <chrono>
#include <vector>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;

/// A day that ends with a ride, and the next, which sets off at 08:00.
std::vector<Caution> cautions_of(std::chrono::seconds arrive_after_midnight, double ride_s) {
    const sys_seconds midnight = std::chrono::sys_days{std::chrono::year{2027} / 6 / 18};
    Plan plan;
    plan.days.resize(2);
    plan.days[0].ride_s = ride_s;
    plan.days[0].arrive = midnight + arrive_after_midnight;
    plan.days[1].day = 2;
    plan.days[1].set_off = midnight + 32h;
    return ride_cautions(plan);
}

TEST(RideCautions, ARideLeavesANightBeforeTheNextDay) {
    EXPECT_TRUE(cautions_of(24h, 3600.0).empty()); // eight hours until 08:00
    const std::vector<Caution> late = cautions_of(25h, 7200.0);
    ASSERT_EQ(late.size(), 1U);
    EXPECT_EQ(late[0].level, Level::caution);
    EXPECT_EQ(late[0].day, 1);
    EXPECT_NE(late[0].text.find("7 h 00 min are left"), std::string::npos) << late[0].text;
}

TEST(RideCautions, ADayThatEndsAfterTheNextBeginsCannotBe) {
    const std::vector<Caution> stop = cautions_of(33h + 30min, 7200.0);
    ASSERT_EQ(stop.size(), 1U);
    EXPECT_EQ(stop[0].level, Level::stop);
    EXPECT_NE(stop[0].text.find("1 h 30 min after"), std::string::npos) << stop[0].text;
}

TEST(RideCautions, WithoutARideOthersSpeakOfTheHour) {
    EXPECT_TRUE(cautions_of(25h, 0.0).empty());
}

} // namespace
} // namespace tumpline::planner
