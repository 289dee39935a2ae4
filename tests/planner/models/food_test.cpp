#include "planner/models/food.h"

#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace tumpline::planner {

namespace {

using test::PublishedValue;

constexpr double pound_kg = 0.45359237;
constexpr double ounce_kg = pound_kg / 16.0;

PrintedRation printed_ration(std::string_view name) {
    const auto row = std::ranges::find(printed_rations(), name, &PrintedRation::name);
    return row == printed_rations().end() ? PrintedRation{} : *row;
}

/// The class of the schools' scheme that begins or ends at this many pounds.
double class_mass_g(const PublishedValue& row) {
    const double pounds = row.input_if("lb").value_or(row.input_if("lb_per_day").value_or(0.0));
    for (const RationClass& ration : ration_classes())
        for (const double kg : {ration.least_kg, ration.most_kg})
            if (std::abs(kg - pounds * pound_kg) < 1e-6)
                return 1000.0 * kg;
    return 0.0;
}

/// The density that makes food of the row's energy weigh what was printed.
double density_of_printed_mass(const PublishedValue& row) {
    const double energy_j = row.input("kcal") * j_per_kcal;
    const double mass_kg = ration_kg({energy_j, energy_j / (row.input("mass_g") / 1000.0), 0.0});
    return energy_j / j_per_kcal / 1000.0 / mass_kg;
}

double density_per_ounce(const PublishedValue& row) {
    const double energy_j = row.input("kcal_per_oz") * j_per_kcal;
    const double density_j_per_kg = energy_j / ounce_kg;
    EXPECT_NEAR(ration_kg({energy_j, density_j_per_kg, 0.0}), ounce_kg, 1e-12);
    return density_j_per_kg / j_per_kcal / 1000.0;
}

const test::Evaluators food_evaluators{
    .numbers = {{"energy",
                 [](const auto& row) {
                     return food_energy_j({.protein_kg = row.input("protein_g") / 1000.0,
                                           .fat_kg = row.input("fat_g") / 1000.0,
                                           .carbohydrate_kg = row.input("carb_g") / 1000.0,
                                           .alcohol_kg = row.input("alcohol_g") / 1000.0,
                                           .fibre_kg = row.input("fibre_g") / 1000.0}) /
                            j_per_kcal;
                 }},
                {"kcal", [](const auto& row) { return row.input("kcal") * j_per_kcal / 1000.0; }},
                {"ration_mass",
                 [](const auto& row) {
                     return 1000.0 * printed_ration(row.text("ration")).mass_kg.value();
                 }},
                {"ration_density", density_of_printed_mass},
                {"ration_energy",
                 [](const auto& row) {
                     return printed_ration(row.text("ration")).energy_j.value() / j_per_kcal;
                 }},
                {"density_per_ounce", density_per_ounce},
                {"party_mass",
                 [](const auto& row) {
                     const PrintedRation day =
                         printed_ration("scout troop's menu page, ordinary youth trip, one day");
                     return row.input("persons") * row.input("days") * day.mass_kg.value() /
                            pound_kg;
                 }},
                {"class_mass", class_mass_g},
                {"ration",
                 [](const auto& row) {
                     return 1000.0 *
                            ration_kg({.energy_j = row.input("kcal") * j_per_kcal,
                                       .density_j_per_kg =
                                           1000.0 * row.input("density_kcal_per_g") * j_per_kcal,
                                       .packaging = row.input("packaging_fraction")});
                 }}},
    .texts = {}};

class FoodRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(FoodRows, Agree) {
    test::check_row(GetParam(), food_evaluators);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         FoodRows,
                         testing::ValuesIn(test::published("food")),
                         test::row_name);

TEST(Food, WasteIsWhatRemainsWhenTheFoodIsEaten) {
    const Ration ration{12e6, default_energy_density_j_per_kg, default_packaging};
    EXPECT_NEAR(ration_kg(ration) - ration_waste_kg(ration),
                ration.energy_j / ration.density_j_per_kg,
                1e-12);
}

TEST(Food, DenserFoodIsLighterAndMoreEnergyHeavier) {
    for (int kcal = 1500; kcal < 7000; kcal += 100)
        EXPECT_LT(ration_kg({kcal * j_per_kcal, 17e6, 0.08}),
                  ration_kg({(kcal + 100) * j_per_kcal, 17e6, 0.08}));
    EXPECT_GT(ration_kg({12e6, 14e6, 0.08}), ration_kg({12e6, 18e6, 0.08}));
    EXPECT_EQ(ration_kg({12e6, 0.0, 0.08}), 0.0);
    EXPECT_EQ(ration_waste_kg({12e6, 0.0, 0.08}), 0.0);
}

TEST(Food, PrintedRationsLieInTheRangeOfDensities) {
    for (const PrintedRation& ration : printed_rations()) {
        const double kg = ration.mass_kg.value_or(1.0);
        const double joule = ration.energy_j.value_or(kg * default_energy_density_j_per_kg);
        EXPECT_TRUE(energy_density_covers(joule / kg) || !ration.mass_kg) << ration.name;
    }
    EXPECT_TRUE(energy_density_covers(default_energy_density_j_per_kg));
    EXPECT_FALSE(energy_density_covers(9.0e3 * j_per_kcal)) << "nobody lives on oil";
    EXPECT_FALSE(energy_density_covers(0.0));
}

TEST(Food, TheDefaultDensityLiesInTheSchoolsScheme) {
    for (const RationClass& ration : ration_classes()) {
        EXPECT_LT(ration.least_j / ration.most_kg, default_energy_density_j_per_kg);
        EXPECT_GT(ration.most_j / ration.least_kg, default_energy_density_j_per_kg);
    }
}

} // namespace

} // namespace tumpline::planner
