#include "planner/quantities/quantity_units.h"

#include <array>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr double us_cup_l = l_per_us_gallon / 16.0;
constexpr double imperial_gallon_l = 4.54609; // exact, [NISTSP811, appendix B]
constexpr double m3_per_cubic_foot = m_per_foot * m_per_foot * m_per_foot;

Measure masses() {
    return {.noun = "a mass",
            .fitting = "g, kg, oz, lb",
            .example = "1.9 kg",
            .units = {{{"kg", "kilogram", "kilograms", "kilo", "kilos"}, 1.0},
                      {{"g", "gram", "grams", "gramme", "grammes"}, 1e-3, 0.0, false, true},
                      {{"lb", "lbs", "pound", "pounds"}, kg_per_pound, 0.0, false, true},
                      {{"oz", "ounce", "ounces"}, kg_per_ounce, 0.0, false, true},
                      {{"st", "stone", "stones"}, 14.0 * kg_per_pound}, // [NISTHB44]
                      {{"mg"}, 1e-6},
                      {{"t", "tonne", "tonnes"}, 1e3}}};
}

Measure lengths() {
    return {.noun = "a length",
            .fitting = "m, km, ft, yd, mi, rods, nmi",
            .example = "12.5 km",
            .units = {{{"m", "metre", "metres", "meter", "meters"}, 1.0, 0.0, false, true},
                      {{"km", "kilometre", "kilometres", "kilometer", "kilometers"}, 1e3},
                      {{"cm", "centimetre", "centimetres", "centimeter", "centimeters"},
                       1e-2,
                       0.0,
                       false,
                       true},
                      {{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}, 1e-3},
                      {{"ft", "foot", "feet"}, m_per_foot, 0.0, false, true},
                      {{"in", "inch", "inches"}, m_per_inch, 0.0, false, true},
                      {{"yd", "yds", "yard", "yards"}, m_per_yard, 0.0, false, true},
                      {{"rods", "rod", "rd"}, m_per_rod, 0.0, false, true},
                      // a river mile is a statute mile measured along the channel
                      {{"mi", "mile", "miles", "river mile", "river miles"}, m_per_mile},
                      {{"nmi", "NM", "nautical mile", "nautical miles"}, m_per_nautical_mile}}};
}

Measure areas() {
    return {.noun = "an area",
            .fitting = "m2, ft2",
            .example = "1.2 m2",
            .units = {{{"m2", "sq m"}, 1.0},
                      {{"cm2"}, 1e-4},
                      {{"ft2", "sq ft"}, m_per_foot * m_per_foot}}};
}

Measure speeds() {
    return {.noun = "a speed",
            .fitting = "km/h, m/s, mph, kn, min/km",
            .example = "4.5 km/h",
            .units = {{{"km/h", "kmh", "kph"}, mps_per_kmh},
                      {{"m/s", "mps"}, 1.0},
                      {{"m/min"}, 1.0 / s_per_min},
                      {{"mph", "mi/h"}, m_per_mile / s_per_h},
                      {{"kn", "kt", "kts", "knot", "knots"}, m_per_nautical_mile / s_per_h},
                      {{"ft/s", "fps"}, m_per_foot},
                      {{"min/km"}, 1000.0 / s_per_min, 0.0, true},
                      {{"min/mi", "min/mile"}, m_per_mile / s_per_min, 0.0, true}}};
}

Measure volumes() {
    return {.noun = "a volume",
            .fitting = "L, ml, fl oz, qt, gal",
            .example = "1.5 L",
            .units = {{{"L", "litre", "litres", "liter", "liters"}, 1.0},
                      {{"ml", "millilitre", "millilitres", "milliliter", "milliliters"}, 1e-3},
                      {{"cl"}, 1e-2},
                      {{"dl"}, 1e-1},
                      {{"fl oz", "floz", "fluid ounce", "fluid ounces"}, l_per_us_fluid_ounce},
                      {{"cup", "cups"}, us_cup_l},
                      {{"pt", "pint", "pints"}, l_per_us_gallon / 8.0},
                      {{"qt", "quart", "quarts"}, l_per_us_gallon / 4.0},
                      {{"gal", "gallon", "gallons", "US gal"}, l_per_us_gallon},
                      {{"imp gal"}, imperial_gallon_l},
                      {{"m3"}, 1e3}}};
}

Measure durations() {
    return {.noun = "a duration",
            .fitting = "min, h, s",
            .example = "25 min",
            .units = {{{"min", "mins", "minute", "minutes"}, s_per_min, 0.0, false, true},
                      {{"h", "hr", "hrs", "hour", "hours"}, s_per_h, 0.0, false, true},
                      {{"s", "sec", "secs", "second", "seconds"}, 1.0, 0.0, false, true},
                      {{"d", "day", "days"}, s_per_day}}};
}

Measure temperatures() {
    // 0 C = 273.15 K and t/F = 1.8 t/C + 32, exact [NISTSP811, appendix B]
    return {.noun = "a temperature",
            .fitting = "C, F",
            .example = "18 C",
            .units = {{{"C", "deg C", "degC"}, 1.0, 0.0},
                      {{"F", "deg F", "degF"}, 5.0 / 9.0, -32.0 * 5.0 / 9.0},
                      {{"K"}, 1.0, -273.15}}};
}

Measure energies() {
    return {.noun = "an energy",
            .fitting = "kcal, kJ, MJ",
            .example = "3200 kcal",
            .units = {{{"kcal"}, j_per_kcal}, {{"kJ"}, 1e3}, {{"MJ"}, 1e6}}};
}

Measure energy_densities() {
    return {.noun = "an energy per mass",
            .fitting = "kcal/g, kcal/100g, kcal/oz, kJ/g, kJ/100g",
            .example = "4.4 kcal/g",
            .units = {{{"kcal/g"}, j_per_kcal / 1e-3},
                      {{"kcal/100g", "kcal/100 g"}, j_per_kcal / 0.1},
                      {{"kcal/kg"}, j_per_kcal},
                      {{"kcal/oz"}, j_per_kcal / kg_per_ounce},
                      {{"kcal/lb"}, j_per_kcal / kg_per_pound},
                      {{"kJ/g"}, 1e6},
                      {{"kJ/100g", "kJ/100 g"}, 1e4},
                      {{"kJ/kg"}, 1e3},
                      {{"MJ/kg"}, 1e6}}};
}

Measure masses_per_volume() {
    return {.noun = "a mass per litre",
            .fitting = "g, g/L, oz, oz/qt",
            .example = "12 g",
            .units = {{{"g", "g/L", "gram", "grams"}, 1e-3},
                      {{"kg", "kg/L"}, 1.0},
                      {{"oz", "oz/L"}, kg_per_ounce},
                      {{"oz/qt"}, kg_per_ounce / (l_per_us_gallon / 4.0)},
                      {{"oz/gal"}, kg_per_ounce / l_per_us_gallon}}};
}

Measure volumes_per_mass() {
    return {.noun = "a volume per mass",
            .fitting = "L/kg, ml/g, qt/lb",
            .example = "2.5 L/kg",
            .units = {{{"L/kg"}, 1.0},
                      {{"ml/g"}, 1.0},
                      {{"L/lb"}, 1.0 / kg_per_pound},
                      {{"qt/lb"}, l_per_us_gallon / 4.0 / kg_per_pound}}};
}

Measure drinkings() {
    return {.noun = "a volume per hour",
            .fitting = "L/h, ml/h, qt/h, fl oz/h",
            .example = "0.5 L/h",
            .units = {{{"L/h", "L/hr", "L/hour"}, 1.0 / s_per_h},
                      {{"ml/h"}, 1e-3 / s_per_h},
                      {{"qt/h"}, l_per_us_gallon / 4.0 / s_per_h},
                      {{"pt/h"}, l_per_us_gallon / 8.0 / s_per_h},
                      {{"cup/h", "cups/h"}, us_cup_l / s_per_h},
                      {{"fl oz/h", "oz/h"}, l_per_us_fluid_ounce / s_per_h}}};
}

Measure flows() {
    return {.noun = "a flow",
            .fitting = "m3/s, L/s, cfs",
            .example = "10 m3/s",
            .units = {{{"m3/s", "cumec", "cumecs"}, 1.0},
                      {{"L/s"}, 1e-3},
                      {{"cfs", "ft3/s"}, m3_per_cubic_foot}}};
}

} // namespace

const Measure& measure(Dimension dimension) {
    // in the order of the enumeration
    static const std::array<Measure, 13> all{masses(),
                                             lengths(),
                                             areas(),
                                             speeds(),
                                             volumes(),
                                             durations(),
                                             temperatures(),
                                             energies(),
                                             energy_densities(),
                                             masses_per_volume(),
                                             volumes_per_mass(),
                                             drinkings(),
                                             flows()};
    return all.at(static_cast<std::size_t>(dimension));
}

} // namespace tumpline::planner
