#include "planner/models/stove_fuel.h"
#include "planner/quantities/spelling.h"
#include "planner/trip/sections.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <cmath>

namespace tumpline::planner {

namespace {

constexpr Sensible per_hour{Dimension::drinking, 0.0, 3.0 / s_per_h};
constexpr Sensible litres{Dimension::volume, 0.0, 50.0};

/// "energy", or a mass per person and day.
void read_ration(const TripValue& value, Food& food) {
    const JsonValue& json = value.json();
    if (json.kind == JsonValue::Kind::text && json.text == "energy")
        return; // the same as leaving it out
    if (json.kind == JsonValue::Kind::text && read_quantity(json.text, Dimension::mass).value) {
        put(food.ration_kg, value.quantity({Dimension::mass, 0.05, 5.0}));
        return;
    }
    std::string advice;
    if (json.kind == JsonValue::Kind::number)
        advice = fmt::format("write \"{}\"", with_unit(json.number, Dimension::mass, {0.05, 5.0}));
    else if (json.kind == JsonValue::Kind::text && !nearest_word(json.text, {"energy"}).empty())
        advice = "write \"energy\"";
    value.add_problem("\"energy\", or a mass per person and day with a unit (g, kg, oz, lb)",
                      std::move(advice));
}

void read_shares(const TripValue& value, Food& food) {
    const bool object = value.json().kind == JsonValue::Kind::object;
    std::array<double, 3> shares{};
    read_section(value, shares_section(), shares);
    const double sum = shares[0] + shares[1] + shares[2];
    if (object && std::abs(sum - 1.0) > 1e-6)
        value.problems().add(value.place(),
                             {.found = fmt::format("shares that sum to {}", show_number(sum, 4)),
                              .expected = "breakfast, trail and dinner to sum to 1",
                              .advice = {}});
    else if (object)
        food.shares = shares;
}

} // namespace

const Section<std::array<double, 3>>& shares_section() {
    using Shares = std::array<double, 3>;
    static const Section<Shares> section{"shares",
                                         "the shares of the meals",
                                         {
                                             {"breakfast",
                                              Need::must,
                                              [](const TripValue& v, Shares& s) {
                                                  put(s[0], v.number({0.0, 1.0}));
                                              }},
                                             {"trail",
                                              Need::must,
                                              [](const TripValue& v, Shares& s) {
                                                  put(s[1], v.number({0.0, 1.0}));
                                              }},
                                             {"dinner",
                                              Need::must,
                                              [](const TripValue& v, Shares& s) {
                                                  put(s[2], v.number({0.0, 1.0}));
                                              }},
                                         }};
    return section;
}

const Section<Food>& food_section() {
    static const Section<Food> section{
        "food",
        "the food",
        {
            {"ration", Need::may, read_ration},
            {"energy_density",
             Need::may,
             [](const TripValue& v, Food& f) {
                 // fat is the densest food there is: 9 kcal/g [FAO77]
                 put(f.energy_density_j_per_kg,
                     v.quantity({Dimension::energy_density, 0.5e3 * j_per_kcal, 9e3 * j_per_kcal}));
             }},
            {"replace",
             Need::may,
             [](const TripValue& v, Food& f) {
                 put(f.replace, v.number({0.0, 1.5}));
             }},
            {"packaging",
             Need::may,
             [](const TripValue& v, Food& f) {
                 put(f.packaging, v.number({0.0, 1.0}));
             }},
            {"reserve_days",
             Need::may,
             [](const TripValue& v, Food& f) {
                 put(f.reserve_days, v.number({0.0, 30.0}));
             }},
            {"shares", Need::may, read_shares},
            {"first_meal",
             Need::may,
             [](const TripValue& v, Food& f) { put(f.first_meal, v.meaning(meal_words())); }},
            {"last_meal",
             Need::may,
             [](const TripValue& v, Food& f) { put(f.last_meal, v.meaning(meal_words())); }},
            {"in", Need::may, [](const TripValue& v, Food& f) { put(f.piece, v.name()); }},
            {"volume",
             Need::may,
             [](const TripValue& v, Food& f) {
                 put(f.volume_l_per_kg, v.quantity({Dimension::volume_per_mass, 0.5, 20.0}));
             }},
            {"container",
             Need::may,
             [](const TripValue& v, Food& f) {
                 put(f.container_l, v.quantity({Dimension::volume, 0.5, 500.0}));
             }},
        }};
    return section;
}

const Section<DrinkingWater>& water_section() {
    static const Section<DrinkingWater> section{
        "water",
        "the drinking water",
        {
            {"walking",
             Need::may,
             [](const TripValue& v, DrinkingWater& w) {
                 put(w.walking_lps, v.quantity(per_hour));
             }},
            {"paddling",
             Need::may,
             [](const TripValue& v, DrinkingWater& w) {
                 put(w.paddling_lps, v.quantity(per_hour));
             }},
            {"camp",
             Need::may,
             [](const TripValue& v, DrinkingWater& w) { put(w.camp_l, v.quantity(litres)); }},
            {"capacity",
             Need::may,
             [](const TripValue& v, DrinkingWater& w) { put(w.capacity_l, v.quantity(litres)); }},
            {"reserve",
             Need::may,
             [](const TripValue& v, DrinkingWater& w) { put(w.reserve_l, v.quantity(litres)); }},
            {"stow",
             Need::may,
             [](const TripValue& v, DrinkingWater& w) {
                 put(w.stow, v.meaning(water_stow_words()));
             }},
        }};
    return section;
}

std::vector<std::string_view> stove_words() {
    std::vector<std::string_view> words;
    for (const Stove& stove : stoves())
        words.push_back(stove.name);
    return words;
}

const Section<Fuel>& fuel_section() {
    static const Section<Fuel> section{
        "fuel",
        "the fuel",
        {
            {"boiled",
             Need::may,
             [](const TripValue& v, Fuel& f) { put(f.boiled_l, v.quantity(litres)); }},
            {"per_litre",
             Need::may,
             [](const TripValue& v, Fuel& f) {
                 put(f.kg_per_litre, v.quantity({Dimension::mass_per_volume, 0.0, 0.5}));
             }},
            {"stove",
             Need::may,
             [](const TripValue& v, Fuel& f) { put(f.stove, v.one_of(stove_words())); }},
            {"start",
             Need::may,
             [](const TripValue& v, Fuel& f) { put(f.start_c, v.quantity(sensible_temperature)); }},
            {"altitude",
             Need::may,
             [](const TripValue& v, Fuel& f) {
                 put(f.altitude_m, v.quantity({Dimension::length, -500.0, 9000.0}));
             }},
            {"container",
             Need::may,
             [](const TripValue& v, Fuel& f) {
                 put(f.container_kg, v.quantity({Dimension::mass, 0.0, 10.0}));
             }},
            {"container_holds",
             Need::may,
             [](const TripValue& v, Fuel& f) {
                 put(f.container_holds_kg, v.quantity({Dimension::mass, 0.01, 20.0}));
             }},
            {"reserve",
             Need::may,
             [](const TripValue& v, Fuel& f) {
                 put(f.reserve, v.number({0.0, 3.0}));
             }},
            {"melt_snow",
             Need::may,
             [](const TripValue& v, Fuel& f) { put(f.melt_snow, v.yes_or_no()); }},
        }};
    return section;
}

} // namespace tumpline::planner
