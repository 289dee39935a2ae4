#include "planner/models/stove_fuel.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr double water_j_per_kg_k = 4186.0;
constexpr double ice_j_per_kg_k = 2090.0;
constexpr double melting_j_per_kg = 334000.0;

constexpr std::array<HeatingValue, 11> values{{
    {"propane", 46.340e6, 50.330e6, "CengelBoles"},
    {"butane", 45.370e6, 49.150e6, "CengelBoles"},
    {"ethanol", 26.810e6, 29.670e6, "CengelBoles"},
    {"methanol", 19.920e6, 22.660e6, "CengelBoles"},
    {"hexane", 44.740e6, 48.310e6, "CengelBoles"},
    {"heptane", 44.600e6, 48.100e6, "CengelBoles"},
    {"gasoline", 44.000e6, 47.300e6, "CengelBoles"},
    {"petroleum naphtha", 44.927e6, 48.063e6, "GREET"},
    {"LPG", 46.596e6, 50.140e6, "GREET"},
    {"ethanol", 26.945e6, 29.840e6, "GREET"},
    {"methanol", 20.089e6, 22.878e6, "GREET"},
}};

// Efficiencies from memory: no peer-reviewed test of small stoves was found.
constexpr std::array<Stove, 6> stove_rows{{
    {"gas", "canister gas, 80 % butane and 20 % propane", 0.50, 45.564e6},
    {"gas-exchanger", "canister gas under a pot with a heat exchanger", 0.65, 45.564e6},
    {"white-gas", "light naphtha, as heptane", 0.45, 44.600e6},
    {"ethanol", "ethanol", 0.45, 26.810e6},
    {"methanol", "methanol", 0.45, 19.920e6},
    {"hexamine", "solid hexamine, heating value from memory", 0.35, 28.100e6},
}};

} // namespace

std::span<const HeatingValue> heating_values() {
    return values;
}

std::span<const Stove> stoves() {
    return stove_rows;
}

std::optional<Stove> stove(std::string_view name) {
    const auto* const row = std::ranges::find(stove_rows, name, &Stove::name);
    if (row == stove_rows.end())
        return std::nullopt;
    return *row;
}

double heat_j_per_kg(const Boil& boil) {
    if (boil.from_snow)
        return ice_j_per_kg_k * std::max(0.0, -boil.start_c) + melting_j_per_kg +
               water_j_per_kg_k * std::max(0.0, boil.boil_c);
    return water_j_per_kg_k * std::max(0.0, boil.boil_c - boil.start_c);
}

double fuel_kg_per_litre(const Stove& stove, const Boil& boil) {
    return heat_j_per_kg(boil) / (stove.efficiency * stove.heating_value_j_per_kg);
}

double fuel_day_kg(const FuelDay& day) {
    return day.boiled_l * day.kg_per_litre * (1.0 + day.reserve);
}

double pressure_pa(double altitude_m) {
    const double h = std::clamp(altitude_m, -500.0, 11000.0);
    return 101325.0 * std::pow(1.0 - 2.25577e-5 * h, 5.25588);
}

double boiling_point_c(double altitude_m) {
    constexpr double pascal_per_mmhg = 133.322;
    return 1730.63 / (8.07131 - std::log10(pressure_pa(altitude_m) / pascal_per_mmhg)) - 233.426;
}

double rolling_boil_s(double altitude_m) {
    return altitude_m > 2000.0 ? 180.0 : 60.0;
}

std::span<const ModelEntry> stove_fuel_entries() {
    static constexpr std::array<ModelEntry, 1> entries{{
        {.family = "stove_fuel",
         .name = "heat-balance",
         .answers = "How much fuel boils a litre, by stove, start temperature, altitude and snow?",
         .source = "CengelBoles",
         .covers = "sheltered stoves with a lid; heating values as printed, efficiencies from "
                   "memory; wind without a screen can double it",
         .is_default = true,
         .why = "heat and heating value are physics; weigh your own canister for the efficiency"},
    }};
    return entries;
}

} // namespace tumpline::planner
