#include "planner/models/resting_energy.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace tumpline::planner {
namespace {

constexpr std::array both_models = {RestingModel::mifflin_st_jeor_1990,
                                    RestingModel::schofield_1985};

TEST(Resting, HeavierNeverSpendsLess) {
    for (const RestingModel model : both_models)
        for (const bool male : {false, true})
            for (const double age_years : {18.0, 25.0, 45.0, 75.0}) {
                double before_w = 0.0;
                for (int mass_kg = 40; mass_kg <= 140; ++mass_kg) {
                    const Body body{.mass_kg = static_cast<double>(mass_kg),
                                    .height_m = 1.72,
                                    .age_years = age_years,
                                    .male = male};
                    EXPECT_GT(resting_w(model, body), before_w);
                    before_w = resting_w(model, body);
                }
            }
}

TEST(Resting, IsFiniteAndNotNegativeForAnyBody) {
    for (const RestingModel model : both_models)
        for (const double age_years : {0.0, 29.999, 30.0, 60.0, 500.0}) {
            const Body body{.mass_kg = 1.0, .height_m = 0.1, .age_years = age_years, .male = false};
            EXPECT_TRUE(std::isfinite(resting_w(model, body)));
            EXPECT_GE(resting_w(model, body), 0.0);
        }
}

TEST(Resting, TheTwoFormsOfSchofieldAgreeToTheirRounding) {
    for (const bool male : {false, true})
        for (const double age_years : {25.0, 45.0, 70.0})
            for (const double mass_kg : {50.0, 70.0, 90.0}) {
                const Body body{
                    .mass_kg = mass_kg, .height_m = 1.7, .age_years = age_years, .male = male};
                EXPECT_NEAR(schofield_1985_w(body) / schofield_1985_kcal_form_w(body), 1.0, 0.005);
            }
}

TEST(Resting, OfAChildIsOfItsOwnBand) {
    constexpr double kcal_per_day_w = 4184.0 / 86400.0;
    Body child{.mass_kg = 30.0, .height_m = 1.35, .age_years = 9.0, .male = true};
    const auto kcal = [&] {
        return resting_w(RestingModel::mifflin_st_jeor_1990, child) / kcal_per_day_w;
    };
    EXPECT_NEAR(kcal(), 22.706 * 30.0 + 504.3, 1e-9); // 1185.48
    child.age_years = 10.0;
    EXPECT_NEAR(kcal(), 17.686 * 30.0 + 658.2, 1e-9); // 1188.78
    child.male = false;
    EXPECT_NEAR(kcal(), 13.384 * 30.0 + 692.6, 1e-9); // 1094.12
    child.age_years = 2.0;
    EXPECT_NEAR(kcal(), 58.317 * 30.0 - 31.1, 1e-9);
}

TEST(Resting, KnowsNamesAndAges) {
    for (const RestingModel model : both_models)
        EXPECT_EQ(resting_model(resting_model_name(model)), model);
    EXPECT_FALSE(resting_model("mifflin").has_value());
    using enum RestingModel;
    EXPECT_EQ(resting_model_for(mifflin_st_jeor_1990, 18.0), schofield_1985);
    EXPECT_EQ(resting_model_for(mifflin_st_jeor_1990, 19.0), mifflin_st_jeor_1990);
    EXPECT_EQ(resting_model_for(mifflin_st_jeor_1990, 78.0), mifflin_st_jeor_1990);
    EXPECT_EQ(resting_model_for(mifflin_st_jeor_1990, 79.0), schofield_1985);
    EXPECT_EQ(resting_model_for(schofield_1985, 5.0), schofield_1985);
}

} // namespace
} // namespace tumpline::planner
