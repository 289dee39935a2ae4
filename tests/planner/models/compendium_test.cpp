#include "planner/models/compendium.h"

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <utility>

namespace tumpline::planner {
namespace {

/// The rows that the planner's own constants say they are.
TEST(Compendium, HasTheRowsOfItsConstants) {
    EXPECT_EQ(met(CompendiumEdition::y2024, "07030"), met_sleep);
    EXPECT_EQ(met(CompendiumEdition::y2024, "07040"), met_standing);
    EXPECT_EQ(met(CompendiumEdition::y2024, "17010"), met_backpacking);
    EXPECT_EQ(met(CompendiumEdition::y2024, "18070"), met_paddling_pleasure);
    EXPECT_EQ(met(CompendiumEdition::y2011, "18030"), met_portage);
    EXPECT_FALSE(met(CompendiumEdition::y2024, "99999"));
}

TEST(Compendium, NamesEachActivityOncePerEdition) {
    std::set<std::pair<int, std::string>> seen;
    for (const Activity& row : compendium()) {
        EXPECT_TRUE(seen.emplace(static_cast<int>(row.edition), std::string(row.code)).second)
            << row.code;
        EXPECT_GE(row.met, 0.9) << row.code; // sleep is 0.95 in one edition, nothing is below
        EXPECT_LE(row.met, 23.0) << row.code;
    }
}

/// 5 MET for 70 kg and two hours: 700 kcal of 4184 J.
TEST(Compendium, EnergyIsKilocaloriesPerKilogramAndHour) {
    const Spell spell{.met = 5.0, .body_kg = 70.0, .duration_s = 7200.0};
    EXPECT_NEAR(met_energy_j(spell), 700.0 * 4184.0, 1.0);
    // 3.5 mL of oxygen per kg and minute at 5 kcal a litre: 1.05 kcal per kg and hour.
    EXPECT_NEAR(met_oxygen_energy_j(spell), 735.0 * 4184.0, 1.0);
    EXPECT_NEAR(met_w(5.0, 70.0) * 7200.0, met_energy_j(spell), 1.0);
}

} // namespace
} // namespace tumpline::planner
