#include "planner/models/stove_fuel.h"

#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

namespace tumpline::planner {

namespace {

using test::PublishedValue;

HeatingValue printed(std::string_view fuel, std::string_view source) {
    const auto row = std::ranges::find_if(heating_values(), [&](const HeatingValue& value) {
        return value.fuel == fuel && value.source == source;
    });
    return row == heating_values().end() ? HeatingValue{} : *row;
}

double per_litre_g(const PublishedValue& row) {
    const Stove burner{.name = "row",
                       .burns = "row",
                       .efficiency = row.input("efficiency"),
                       .heating_value_j_per_kg = 1000.0 * row.input("lhv_kJpkg")};
    return 1000.0 * fuel_kg_per_litre(burner,
                                      {.start_c = row.input("start_C"),
                                       .boil_c = row.input("boil_C"),
                                       .from_snow = false});
}

double boiling_point(const PublishedValue& row) {
    return boiling_point_c(row.input("altitude_m"));
}

const test::Evaluators stove_fuel_evaluators{
    .numbers =
        {{"boil_heat",
          [](const auto& row) {
              return row.input("water_kg") / 1000.0 *
                     heat_j_per_kg({row.input("start_C"), row.input("boil_C"), false});
          }},
         {"snow_heat",
          [](const auto& row) {
              return row.input("snow_kg") / 1000.0 *
                     heat_j_per_kg({row.input("snow_C"), row.input("boil_C"), true});
          }},
         {"lower_table",
          [](const auto& row) {
              return printed(row.text("fuel"), "CengelBoles").lower_j_per_kg / 1e3;
          }},
         {"higher_table",
          [](const auto& row) {
              return printed(row.text("fuel"), "CengelBoles").higher_j_per_kg / 1e3;
          }},
         {"lower_survey",
          [](const auto& row) { return printed(row.text("fuel"), "GREET").lower_j_per_kg / 1e6; }},
         {"higher_survey",
          [](const auto& row) { return printed(row.text("fuel"), "GREET").higher_j_per_kg / 1e6; }},
         {"per_litre", per_litre_g},
         {"per_litre_printed",
          [](const auto& row) {
              return 1000.0 * fuel_kg_per_litre(stove(row.text("stove")).value(),
                                                {default_start_c, sea_level_boil_c, false});
          }},
         {"day",
          [](const auto& row) {
              return 1000.0 * fuel_day_kg({.boiled_l = row.input("litres"),
                                           .kg_per_litre = per_litre_g(row) / 1000.0,
                                           .reserve = row.input("reserve")});
          }},
         {"pressure", [](const auto& row) { return pressure_pa(row.input("altitude_m")); }},
         {"boiling_point", boiling_point},
         {"boiling_point_printed", boiling_point},
         {"polar_rule", [](const auto&) { return polar_liquid_l_per_day; }},
         {"rolling_boil",
          [](const auto& row) { return rolling_boil_s(row.input("altitude_m")) / 60.0; }}},
    .texts = {}};

const test::Misses stove_misses{
    {"boil_printed_4000m", "kitchen tables run 0.5 C above the standard atmosphere at 4 km"},
    {"boil_printed_14000ft", "the same, another page"},
    {"boil_printed_6000m", "the first page again, 1.4 C: nobody plans a boil there with it"},
};

class StoveFuelRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(StoveFuelRows, AgreeOrAreNamedMisses) {
    test::check_row(GetParam(), stove_fuel_evaluators, stove_misses);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         StoveFuelRows,
                         testing::ValuesIn(test::published("stove_fuel")),
                         test::row_name);

TEST(StoveFuel, MissesAreRowsOfTheTable) {
    test::check_misses("stove_fuel", stove_misses);
}

TEST(StoveFuel, ColderWaterTakesMoreAndSnowMoreStill) {
    for (const Stove& burner : stoves())
        for (int start_c = -40; start_c < 90; ++start_c) {
            const Boil colder{static_cast<double>(start_c), sea_level_boil_c, start_c < 0};
            const Boil warmer{start_c + 1.0, sea_level_boil_c, start_c + 1 < 0};
            EXPECT_GT(fuel_kg_per_litre(burner, colder), fuel_kg_per_litre(burner, warmer));
        }
    // melting and boiling takes about twice as much as boiling from 10 C
    EXPECT_NEAR(heat_j_per_kg({0.0, 100.0, true}) / heat_j_per_kg({10.0, 100.0, false}), 2.0, 0.05);
}

TEST(StoveFuel, WaterBoilsCoolerHigherUp) {
    double before_c = 110.0;
    for (int altitude_m = -500; altitude_m <= 9000; altitude_m += 100) {
        EXPECT_LT(boiling_point_c(altitude_m), before_c);
        before_c = boiling_point_c(altitude_m);
    }
    EXPECT_EQ(boiling_point_c(50000.0), boiling_point_c(11000.0));
    EXPECT_EQ(boiling_point_c(-9000.0), boiling_point_c(-500.0));
}

TEST(StoveFuel, ASnowCampAgreesWithThePolarRule) {
    // Half a litre of white fuel (0.71 kg/L, from memory) melts and boils what one person drinks
    // and eats in the cold: some litres, neither one nor twenty.
    const double kg_per_litre = fuel_kg_per_litre(stove("white-gas").value(), {-15.0, 95.0, true});
    const double litres = polar_liquid_l_per_day * 0.71 / kg_per_litre;
    EXPECT_GT(litres, 3.0);
    EXPECT_LT(litres, 10.0);
}

TEST(StoveFuel, WaterThatIsHotEnoughTakesNoFuel) {
    EXPECT_EQ(heat_j_per_kg({95.0, 90.0, false}), 0.0);
}

TEST(StoveFuel, BothTablesAgreeOnTheFuelsTheyShare) {
    for (const char* fuel : {"ethanol", "methanol"})
        EXPECT_NEAR(printed(fuel, "CengelBoles").lower_j_per_kg /
                        printed(fuel, "GREET").lower_j_per_kg,
                    1.0,
                    0.01);
}

TEST(StoveFuel, GasIsFourPartsButaneAndOnePropane) {
    EXPECT_NEAR(stove(default_stove).value().heating_value_j_per_kg,
                0.8 * printed("butane", "CengelBoles").lower_j_per_kg +
                    0.2 * printed("propane", "CengelBoles").lower_j_per_kg,
                1.0);
}

TEST(StoveFuel, UnknownStovesAreNotGuessed) {
    EXPECT_FALSE(stove("coal"));
    for (const Stove& burner : stoves())
        EXPECT_EQ(stove(burner.name).value().burns, burner.burns);
}

TEST(StoveFuel, DoubtfulWaterBoilsLongerHighUp) {
    EXPECT_EQ(rolling_boil_s(2500.0), 180.0);
}

} // namespace

} // namespace tumpline::planner
