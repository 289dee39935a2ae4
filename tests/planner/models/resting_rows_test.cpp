#include "planner/models/compendium.h"
#include "planner/models/resting_energy.h"
#include "tests/support/family_rows.h"

#include <vector>

namespace tumpline::planner {
namespace {

using test::PublishedValue;
using test::RowCheck;

constexpr double kcal_per_day_w = 4184.0 / 86400.0;
constexpr double mj_per_day_w = 1e6 / 86400.0;

Body body_of(const PublishedValue& row) {
    double age_years = row.input_if("age_y").value_or(20.0);
    if (row.texts.contains("age_band_y")) {
        const std::string& band = row.text("age_band_y");
        age_years = band == "18-30" ? 25.0 : band == "30-60" ? 45.0 : 65.0;
    }
    return {.mass_kg = row.input("mass_kg"),
            .height_m = row.input_if("height_cm").value_or(170.0) / 100.0,
            .age_years = age_years,
            .male = row.text("sex") == "male"};
}

double mifflin(const PublishedValue& row) {
    return resting_w(RestingModel::mifflin_st_jeor_1990, body_of(row)) / kcal_per_day_w;
}

double schofield_mj(const PublishedValue& row) {
    return resting_w(RestingModel::schofield_1985, body_of(row)) / mj_per_day_w;
}

double schofield_kcal(const PublishedValue& row) {
    return resting_w(RestingModel::schofield_1985, body_of(row)) / kcal_per_day_w;
}

const std::vector<RowCheck> resting_checks = {
    {"mifflin_", mifflin},
    {"schofield_mj", schofield_mj},
    {"schofield_kcal",
     [](const PublishedValue& row) {
         return schofield_1985_kcal_form_w(body_of(row)) / kcal_per_day_w;
     }},
    {"fao_pub_bmr_mj", schofield_mj},
    {"fao_pub_bmr_kcal", schofield_kcal},
    {"fao_pub_bmr_male", schofield_mj},
    {"fao_pub_bmr_male_kcal", schofield_kcal},
    {"who_pub_bmr_30_60", schofield_mj},
    {"who_pub_bmr_30_60_kcal", schofield_kcal},
};

TEST(RestingRows, AreMet) {
    test::expect_rows("resting", resting_checks, {});
}

Spell spell_of(const PublishedValue& row) {
    return {.met = row.input("met"),
            .body_kg = row.input("body_mass_kg"),
            .duration_s = 3600.0 * row.input("duration_h")};
}

double met_of(CompendiumEdition edition, const PublishedValue& row) {
    return met(edition, row.text("code")).value_or(0.0);
}

const std::vector<RowCheck> met_checks = {
    {"met_kcal", [](const PublishedValue& row) { return met_energy_j(spell_of(row)) / 4184.0; }},
    {"met_pub",
     [](const PublishedValue& row) { return met_oxygen_energy_j(spell_of(row)) / 4184.0; }},
    {"met2011", [](const PublishedValue& row) { return met_of(CompendiumEdition::y2011, row); }},
    {"met2024", [](const PublishedValue& row) { return met_of(CompendiumEdition::y2024, row); }},
};

TEST(CompendiumRows, AreMet) {
    test::expect_rows("compendium", met_checks, {});
}

TEST(Compendium, NamedRatesAreThoseOfTheTable) {
    using enum CompendiumEdition;
    EXPECT_EQ(met(y2024, "07030"), met_sleep);
    EXPECT_EQ(met(y2024, "07040"), met_standing);
    EXPECT_EQ(met(y2024, "07021"), met_sitting);
    EXPECT_EQ(met(y2024, "09110"), met_camp);
    EXPECT_EQ(met(y2024, "17010"), met_backpacking);
    EXPECT_EQ(met(y2024, "17080"), met_hiking);
    EXPECT_EQ(met(y2024, "18040"), met_paddling_light);
    EXPECT_EQ(met(y2024, "18070"), met_paddling_pleasure);
    EXPECT_EQ(met(y2024, "18100"), met_paddling_steady);
    EXPECT_EQ(met(y2024, "18050"), met_paddling_hard);
    EXPECT_EQ(met(y2024, "18370"), met_whitewater);
    EXPECT_EQ(met(y2011, "18030"), met_portage);
}

TEST(Compendium, CodesMeanOtherThingsInOtherEditions) {
    EXPECT_NE(met(CompendiumEdition::y2011, "17033"), met(CompendiumEdition::y2024, "17033"));
    EXPECT_FALSE(met(CompendiumEdition::y2024, "18030").has_value());
    EXPECT_FALSE(met(CompendiumEdition::y2011, "").has_value());
}

} // namespace
} // namespace tumpline::planner
