/// Figures as people read them: rounded once, in the reader's units.

#include "planner/quantities/quantities.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

constexpr UnitSystem metric = UnitSystem::metric;
constexpr UnitSystem imperial = UnitSystem::imperial;

TEST(QuantityFormat, OfMasses) {
    EXPECT_EQ(show_mass(18.88, metric), "18.9 kg");
    EXPECT_EQ(show_mass(0.4536, metric), "455 g");   // below a kilogram to five grams
    EXPECT_EQ(show_mass(20.0, imperial), "44.1 lb"); // 20 / 0.45359237 = 44.09
}

TEST(QuantityFormat, OfWays) {
    EXPECT_EQ(show_distance(12'345.0, metric), "12.3 km");
    EXPECT_EQ(show_distance(16'093.44, imperial), "10.0 mi");
    EXPECT_EQ(show_portage(402.336, imperial), "80 rods"); // a quarter of a mile
    EXPECT_EQ(show_portage(402.336, metric), "400 m");
    EXPECT_EQ(show_height(304.8, imperial), "1000 ft");
    EXPECT_EQ(show_height(304.8, metric), "305 m");
}

TEST(QuantityFormat, OfTimesAndTheRest) {
    EXPECT_EQ(show_duration(4.0 * 3600.0 + 59.0), "4 h 01 min");
    EXPECT_EQ(show_duration(600.0), "10 min");
    EXPECT_EQ(show_speed(1.25, metric), "4.5 km/h");
    EXPECT_EQ(show_temperature(-40.0, imperial), "-40 F"); // where both scales meet
    EXPECT_EQ(show_time_of_day(std::chrono::minutes{9 * 60 + 5}), "09:05");
    EXPECT_EQ(show_date(std::chrono::year(2027) / 6 / 8), "2027-06-08");
    EXPECT_EQ(show_number(0.12, 3), "0.12");
}

} // namespace
} // namespace tumpline::planner
