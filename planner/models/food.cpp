#include "planner/models/food.h"

#include <array>

namespace tumpline::planner {

namespace {

constexpr double pound_kg = 0.45359237;
constexpr double ounce_kg = 0.028349523125;

constexpr std::array<PrintedRation, 7> rations{{
    {"freeze-dried meal pack for patrol or cold, 2006",
     1.0 * pound_kg,
     1540.0 * j_per_kcal,
     "MealColdWeather2006"},
    {"older ration for cold weather, one day",
     2.75 * pound_kg,
     4500.0 * j_per_kcal,
     "RationColdWeather"},
    {"British sledging ration 1948 to 1950, one day", 27.5 * ounce_kg, std::nullopt, "Fuchs1952"},
    {"trail ration of an expedition of 1929, one day",
     36.0 * ounce_kg,
     std::nullopt,
     "TrailRation1929"},
    {"scout troop's menu page, one day", 1.5 * pound_kg, 3000.0 * j_per_kcal, "TroopMenu"},
    {"scout troop's menu page, ordinary youth trip, one day",
     1.3 * pound_kg,
     std::nullopt,
     "TroopMenu"},
    {"scout high-adventure base, one day", std::nullopt, 3000.0 * j_per_kcal, "ScoutBase"},
}};

constexpr std::array<RationClass, 4> ration_classes_table{{
    {1.5 * pound_kg,
     1.5 * pound_kg,
     2500.0 * j_per_kcal,
     3000.0 * j_per_kcal,
     "hot days and warm nights"},
    {1.75 * pound_kg,
     2.0 * pound_kg,
     3000.0 * j_per_kcal,
     3500.0 * j_per_kcal,
     "normal travel with packs"},
    {2.0 * pound_kg,
     2.25 * pound_kg,
     3500.0 * j_per_kcal,
     4500.0 * j_per_kcal,
     "cool days and cold nights"},
    {2.5 * pound_kg,
     2.5 * pound_kg,
     4000.0 * j_per_kcal,
     5000.0 * j_per_kcal,
     "winter, with sledges"},
}};

} // namespace

double food_energy_j(const Nutrients& nutrients) {
    const double kcal_per_g = 4.0 * nutrients.protein_kg + 9.0 * nutrients.fat_kg +
                              4.0 * nutrients.carbohydrate_kg + 7.0 * nutrients.alcohol_kg +
                              2.0 * nutrients.fibre_kg;
    return kcal_per_g * 1000.0 * j_per_kcal;
}

bool energy_density_covers(double j_per_kg) {
    return j_per_kg >= least_energy_density_j_per_kg && j_per_kg <= most_energy_density_j_per_kg;
}

bool fixed_ration_covers(double kg_per_day) {
    constexpr double shown_kg = 0.005; // what is not told apart when written to the hundredth
    return kg_per_day >= least_ration_kg - shown_kg && kg_per_day <= most_ration_kg + shown_kg;
}

double ration_kg(const Ration& ration) {
    if (ration.density_j_per_kg <= 0.0)
        return 0.0;
    return ration.energy_j / ration.density_j_per_kg * (1.0 + ration.packaging);
}

double ration_waste_kg(const Ration& ration) {
    if (ration.density_j_per_kg <= 0.0)
        return 0.0;
    return ration.energy_j / ration.density_j_per_kg * ration.packaging;
}

std::span<const PrintedRation> printed_rations() {
    return rations;
}

std::span<const RationClass> ration_classes() {
    return ration_classes_table;
}

std::span<const ModelEntry> food_entries() {
    static constexpr std::array<ModelEntry, 2> entries{{
        {.family = "food",
         .name = "energy-density",
         .answers = "How much food replaces the energy that a day costs?",
         .source = "FAO77",
         .covers = "1.5 to 6 kcal/g as packed, plus packaging that is carried out",
         .is_default = true,
         .why = "follows the climb and the load, day by day"},
        {.family = "food",
         .name = "fixed-ration",
         .answers = "How much food is it at a mass per person and day?",
         .source = "BulkRation",
         .covers = "0.68 to 1.13 kg per person and day (1.5 to 2.5 lb), dry bulk food",
         .why = "the party buys by weight and knows its own appetite"},
    }};
    return entries;
}

} // namespace tumpline::planner
