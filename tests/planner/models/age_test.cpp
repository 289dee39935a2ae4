#include "planner/models/age.h"

#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

#include <map>
#include <string>

namespace tumpline::planner {
namespace {

using test::PublishedValue;

constexpr double kcal_j = 4184.0;
constexpr double kcal_a_day_w = kcal_j / 86400.0;

Body person_of(const PublishedValue& row) {
    return {.mass_kg = row.input_if("mass_kg").value_or(70.0),
            .height_m = 1.7,
            .age_years = row.input("age_y"),
            .male = row.text("sex") == "male"};
}

double rest_kcal(const PublishedValue& row) {
    return schofield_1985_kcal_form_w(person_of(row)) / kcal_a_day_w;
}

double child_kcal(const PublishedValue& row) {
    static const std::map<std::string, ChildDay> days{
        {"light", ChildDay::light}, {"moderate", ChildDay::moderate}, {"heavy", ChildDay::heavy}};
    return child_day_j(person_of(row), days.at(row.text("activity"))) / kcal_j;
}

const test::Evaluators age_evaluators{
    .numbers = {{"adult_day",
                 [](const PublishedValue& row) { return row.input("pal") * rest_kcal(row); }},
                {"adult_rest_per_kg",
                 [](const PublishedValue& row) { return rest_kcal(row) / row.input("mass_kg"); }},
                {"child_day", child_kcal},
                {"gait",
                 [](const PublishedValue& row) {
                     return comfortable_gait_mps(row.input("age_y"), row.text("sex") == "male")
                         .value_or(0.0);
                 }}},
    .texts = {}};

TEST(AgeRows, AreMet) {
    for (const PublishedValue& row : test::published("age"))
        test::check_row(row, age_evaluators);
}

TEST(Age, ADayOfAChildIsThePrintedEquation) {
    // 310.2 + 63.3 x 30 - 0.263 x 900 = 1972.5; 263.4 + 65.3 x 30 - 0.454 x 900 = 1813.8.
    Body child{.mass_kg = 30.0, .height_m = 1.35, .age_years = 9.0, .male = true};
    EXPECT_NEAR(child_day_j(child, ChildDay::moderate) / kcal_j, 1972.5, 1e-9);
    EXPECT_NEAR(child_day_j(child, ChildDay::heavy) / kcal_j, 1.15 * 1972.5, 1e-9);
    EXPECT_NEAR(child_day_j(child, ChildDay::light) / kcal_j, 0.85 * 1972.5, 1e-9);
    child.male = false;
    EXPECT_NEAR(child_day_j(child, ChildDay::moderate) / kcal_j, 1813.8, 1e-9);
    child.age_years = 5.0; // no light and heavy days before school
    EXPECT_NEAR(child_day_j(child, ChildDay::heavy) / kcal_j, 1813.8, 1e-9);
}

TEST(Age, AHeavyGirlNeverSpendsLess) {
    double before_j = 0.0;
    for (int mass_kg = 15; mass_kg <= 110; ++mass_kg) {
        const Body girl{.mass_kg = static_cast<double>(mass_kg),
                        .height_m = 1.6,
                        .age_years = 16.0,
                        .male = false};
        EXPECT_GE(child_day_j(girl, ChildDay::moderate), before_j);
        before_j = child_day_j(girl, ChildDay::moderate);
    }
}

TEST(Age, WalkingSpeedFallsFromSixtyOn) {
    // (1.34 + 1.24) / 2 over (1.43 + 1.34 + 1.43 + 1.39 + 1.43 + 1.31) / 6 = 1.29 / 1.38833.
    EXPECT_EQ(gait_ratio(59.9), 1.0);
    EXPECT_EQ(gait_ratio(9.0), 1.0);
    EXPECT_NEAR(gait_ratio(65.0), 0.9292, 5e-5);
    EXPECT_NEAR(gait_ratio(75.0), 0.8607, 5e-5);
    EXPECT_NEAR(gait_ratio(85.0), 0.6879, 5e-5);
    EXPECT_FALSE(comfortable_gait_mps(19.0, true));
    EXPECT_TRUE(is_child({.mass_kg = 60.0, .height_m = 1.7, .age_years = 17.9, .male = true}));
    EXPECT_FALSE(is_child({.mass_kg = 60.0, .height_m = 1.7, .age_years = 18.0, .male = true}));
}

} // namespace
} // namespace tumpline::planner
