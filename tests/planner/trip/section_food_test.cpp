#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::problems_with;
using test::small_trip_with;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(SectionFood, ReadsEveryKeyInSi) {
    const Food food =
        small_trip_with("/food", R"({"ration": "720 g", "energy_density": "4.2 kcal/g",
        "replace": 0.85, "packaging": 0.06, "reserve_days": 1.5,
        "shares": {"breakfast": 0.2, "trail": 0.45, "dinner": 0.35}, "first_meal": "trail",
        "last_meal": "breakfast", "in": "barrel", "volume": "2.4 L/kg", "container": "30 L"})")
            .food;
    EXPECT_DOUBLE_EQ(food.ration_kg.value(), 0.72);
    EXPECT_NEAR(food.energy_density_j_per_kg.value(), 4200.0 * 4184.0, 1.0); // 1 kcal = 4184 J
    EXPECT_EQ(food.replace, 0.85);
    EXPECT_EQ(food.packaging, 0.06);
    EXPECT_EQ(food.reserve_days, 1.5);
    EXPECT_EQ(food.shares, (std::array<double, 3>{0.2, 0.45, 0.35}));
    EXPECT_EQ(food.first_meal, Meal::trail);
    EXPECT_EQ(food.last_meal, Meal::breakfast);
    EXPECT_EQ(food.piece, "barrel");
    EXPECT_DOUBLE_EQ(food.volume_l_per_kg.value(), 2.4);
    EXPECT_DOUBLE_EQ(food.container_l.value(), 30.0);
}

TEST(SectionFood, ARationByEnergyIsTheSameAsNone) {
    EXPECT_FALSE(small_trip_with("/food/ration", R"("energy")").food.ration_kg);
    EXPECT_THAT(problems_with("/food/ration", "700"), ElementsAre(HasSubstr("write \"700 g\"")));
    EXPECT_THAT(problems_with("/food/ration", R"("enery")"),
                ElementsAre(HasSubstr("write \"energy\"")));
}

TEST(SectionFood, SharesSumToOne) {
    EXPECT_THAT(problems_with("/food/shares", R"({"breakfast": 0.2, "trail": 0.4, "dinner": 0.3})"),
                ElementsAre(testing::AllOf(HasSubstr("/food/shares: found shares that sum to 0.9"),
                                           HasSubstr("breakfast, trail and dinner to sum to 1"))));
}

TEST(SectionFood, DrinkingWaterIsReadPerSecondAndInLitres) {
    const DrinkingWater water = small_trip_with("/water", R"({"walking": "0.72 L/h",
        "paddling": "0.36 L/h", "camp": "2.5 L", "capacity": "4 L", "reserve": "0.5 L",
        "stow": "bags"})")
                                    .water;
    EXPECT_DOUBLE_EQ(water.walking_lps.value(), 0.72 / 3600.0);
    EXPECT_DOUBLE_EQ(water.paddling_lps.value(), 0.36 / 3600.0);
    EXPECT_DOUBLE_EQ(water.camp_l.value(), 2.5);
    EXPECT_DOUBLE_EQ(water.capacity_l.value(), 4.0);
    EXPECT_DOUBLE_EQ(water.reserve_l.value(), 0.5);
    EXPECT_EQ(water.stow, WaterStow::bags);
}

TEST(SectionFood, FuelIsReadWithItsContainers) {
    const Fuel fuel = small_trip_with("/fuel", R"({"boiled": "2.2 L", "per_litre": "14 g/L",
        "start": "3 C", "altitude": "1800 m", "container": "150 g", "container_holds": "230 g",
        "reserve": 0.25, "melt_snow": true})")
                          .fuel;
    EXPECT_DOUBLE_EQ(fuel.boiled_l.value(), 2.2);
    EXPECT_DOUBLE_EQ(fuel.kg_per_litre.value(), 0.014);
    EXPECT_DOUBLE_EQ(fuel.start_c.value(), 3.0);
    EXPECT_DOUBLE_EQ(fuel.altitude_m.value(), 1800.0);
    EXPECT_DOUBLE_EQ(fuel.container_kg.value(), 0.15);
    EXPECT_DOUBLE_EQ(fuel.container_holds_kg.value(), 0.23);
    EXPECT_EQ(fuel.reserve, 0.25);
    EXPECT_EQ(fuel.melt_snow, true);
}

TEST(SectionFood, AStoveIsOneOfTheTable) {
    const std::vector<std::string> problems = problems_with("/fuel/stove", R"("candle")");
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_THAT(problems.front(), HasSubstr("/fuel/stove: found \"candle\""));
    EXPECT_EQ(small_trip_with("/fuel/stove", R"("gas")").fuel.stove, "gas");
}

// Three litres an hour are the most that is taken for a slip of the pen.
TEST(SectionFood, WaterDrunkAnHourIsThreeLitresAtMost) {
    EXPECT_THAT(problems_with("/water", R"({"walking": "2.9 L/h"})"), testing::IsEmpty());
    EXPECT_THAT(problems_with("/water", R"({"walking": "3.1 L/h"})"),
                ElementsAre(HasSubstr("to 3 L/h")));
}

} // namespace
} // namespace tumpline::planner
