#include "planner/units.h"

#include "planner/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <span>

namespace tumpline::planner {

namespace {

/// One unit with all its spellings; the first is the one that messages use.
struct Unit {
    std::vector<std::string_view> names;
    double si;                 ///< SI value of one unit
    double zero = 0.0;         ///< SI value of none of it (temperatures)
    bool time_per_way = false; ///< a pace: the SI value is `si` over the number
    bool may_follow = false;   ///< in "7 lb 4 oz" the ounces
};

/// What messages call a dimension, the units they name, and the units there are.
struct Measure {
    std::string_view noun;
    std::string_view fitting;
    std::string_view example;
    std::vector<Unit> units; ///< the first ones are offered for a bare number
};

constexpr double us_cup_l = l_per_us_gallon / 16.0;
constexpr double imperial_gallon_l = 4.54609; // exact, [NIST-SP811, appendix B]
constexpr double m3_per_cubic_foot = m_per_foot * m_per_foot * m_per_foot;

Measure masses() {
    return {.noun = "a mass",
            .fitting = "g, kg, oz, lb",
            .example = "1.9 kg",
            .units = {{{"kg", "kilogram", "kilograms", "kilo", "kilos"}, 1.0},
                      {{"g", "gram", "grams", "gramme", "grammes"}, 1e-3, 0.0, false, true},
                      {{"lb", "lbs", "pound", "pounds"}, kg_per_pound, 0.0, false, true},
                      {{"oz", "ounce", "ounces"}, kg_per_ounce, 0.0, false, true},
                      {{"st", "stone", "stones"}, 14.0 * kg_per_pound}, // [NIST-HB44]
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
                      {{"in", "inch", "inches"}, m_per_foot / 12.0, 0.0, false, true},
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
    // 0 C = 273.15 K and t/F = 1.8 t/C + 32, exact [NIST-SP811, appendix B]
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

bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}

bool is_space(char letter) {
    return letter == ' ' || letter == '\t';
}

void replace_all(std::string& text, std::string_view from, std::string_view to) {
    for (std::size_t at = text.find(from); at != std::string::npos;
         at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
}

/// Signs that editors put in, in plain letters: hard spaces, the real minus, raised 2 and 3, the
/// degree sign; spaces single, none at the ends.
std::string plain_letters(std::string_view text) {
    std::string plain(text);
    replace_all(plain, "\u00a0", " ");
    replace_all(plain, "\u202f", " ");
    replace_all(plain, "\u2212", "-");
    replace_all(plain, "\u00b2", "2");
    replace_all(plain, "\u00b3", "3");
    replace_all(plain, "\u00b0", "");
    replace_all(plain, "\t", " ");
    const auto twice = [](char one, char other) { return is_space(one) && is_space(other); };
    plain.erase(std::unique(plain.begin(), plain.end(), twice), plain.end());
    if (!plain.empty() && is_space(plain.back()))
        plain.pop_back();
    if (!plain.empty() && is_space(plain.front()))
        plain.erase(plain.begin());
    return plain;
}

bool same_letters(std::string_view one, std::string_view other) {
    const auto lower = [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    };
    return std::equal(one.begin(), one.end(), other.begin(), other.end(), [&](char a, char b) {
        return lower(a) == lower(b);
    });
}

struct Found {
    const Unit* unit = nullptr;
    std::size_t letters = 0;
};

/// The longest spelling that stands at the start of `text` and ends there; exact case wins.
Found find_unit(std::string_view text, const Measure& measure) {
    Found found;
    bool exact = false;
    for (const Unit& unit : measure.units) {
        for (const std::string_view name : unit.names) {
            const std::string_view head = text.substr(0, name.size());
            if (!same_letters(head, name))
                continue;
            const bool ends = text.size() == name.size() || is_space(text[name.size()]) ||
                              is_digit(text[name.size()]);
            const bool better = name.size() > found.letters ||
                                (name.size() == found.letters && head == name && !exact);
            if (ends && better) {
                found = {.unit = &unit, .letters = name.size()};
                exact = head == name;
            }
        }
    }
    return found;
}

std::vector<std::string_view> names_of(const Measure& measure) {
    std::vector<std::string_view> names;
    for (const Unit& unit : measure.units)
        names.insert(names.end(), unit.names.begin(), unit.names.end());
    return names;
}

/// "25 m" for a duration: the number with the unit that was probably meant.
std::string
with_nearest_unit(std::string_view number, std::string_view unit, const Measure& measure) {
    const std::string nearest = nearest_word(unit, names_of(measure));
    if (nearest.empty())
        return fmt::format("for instance \"{}\"", measure.example);
    return fmt::format("write \"{} {}\"", number, nearest);
}

double to_si(double number, const Unit& unit) {
    return unit.time_per_way ? unit.si / number : number * unit.si + unit.zero;
}

double from_si(double si, const Unit& unit) {
    return unit.time_per_way ? unit.si / si : (si - unit.zero) / unit.si;
}

/// Reads one text from left to right.
class QuantityText {
  public:
    QuantityText(std::string_view text, Dimension dimension)
        : text_(plain_letters(text)), measure_(measure(dimension)),
          expected_(expected_quantity(dimension)) {}

    Reading read() {
        double sum = 0.0;
        const Unit* last = nullptr;
        while (at_ < text_.size() || last == nullptr) {
            skip_space();
            const std::size_t start = at_;
            const std::optional<double> number = read_number(last != nullptr);
            if (!number)
                return wrong(number_advice(start));
            const std::string_view digits = std::string_view(text_).substr(start, at_ - start);
            skip_space();
            const Found found = find_unit(std::string_view(text_).substr(at_), measure_);
            if (found.unit == nullptr)
                return wrong(unit_advice(digits));
            if (last != nullptr && !(found.unit->may_follow && found.unit->si < last->si))
                return wrong(
                    "larger units first, each once, as in \"7 lb 4 oz\" or \"1 h 30 min\"");
            if (found.unit->time_per_way && !(*number > 0.0))
                return wrong("a pace is more than 0");
            const double part = to_si(*number, *found.unit);
            sum += last != nullptr && negative_ ? -part : part;
            at_ += found.letters;
            last = found.unit;
        }
        if (!std::isfinite(sum))
            return wrong("a smaller number");
        return {.value = sum, .expected = {}, .advice = {}};
    }

  private:
    void skip_space() {
        while (at_ < text_.size() && is_space(text_[at_]))
            ++at_;
    }

    /// Digits with at most one point and perhaps an exponent; a sign only before the first.
    std::optional<double> read_number(bool follows) {
        const char* const end = text_.data() + text_.size();
        const char* start = text_.data() + at_;
        if (!follows && start != end && *start == '+')
            ++start;
        if (start == end || !(is_digit(*start) || *start == '.' || (*start == '-' && !follows)))
            return std::nullopt;
        double number = 0.0;
        const auto [stop, error] = std::from_chars(start, end, number);
        if (error != std::errc() || !std::isfinite(number))
            return std::nullopt;
        if (stop != end && (*stop == ',' || *stop == '.'))
            return std::nullopt;
        if (!follows)
            negative_ = *start == '-';
        at_ = static_cast<std::size_t>(stop - text_.data());
        return number;
    }

    std::string number_advice(std::size_t start) const {
        const bool comma = text_.find(',', start) != std::string::npos;
        if (comma)
            return "write decimals with a point, and thousands without a separator";
        return fmt::format("for instance \"{}\"", measure_.example);
    }

    std::string unit_advice(std::string_view digits) const {
        const std::string_view unit = std::string_view(text_).substr(at_);
        if (unit.empty())
            return fmt::format("write \"{} {}\"", digits, measure_.units.front().names.front());
        return with_nearest_unit(digits, unit, measure_);
    }

    Reading wrong(std::string advice) const {
        return {.value = std::nullopt, .expected = expected_, .advice = std::move(advice)};
    }

    std::string text_;
    const Measure& measure_;
    std::string expected_;
    std::size_t at_ = 0;
    bool negative_ = false;
};

std::optional<int> read_digits(std::string_view text) {
    int number = 0;
    const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool whole = error == std::errc() && stop == text.data() + text.size();
    return whole && std::all_of(text.begin(), text.end(), is_digit) ? std::optional(number)
                                                                    : std::nullopt;
}

} // namespace

Reading read_quantity(std::string_view text, Dimension dimension) {
    return QuantityText(text, dimension).read();
}

std::string expected_quantity(Dimension dimension) {
    const Measure& wanted = measure(dimension);
    return fmt::format("{} with a unit ({})", wanted.noun, wanted.fitting);
}

std::string_view noun_of(Dimension dimension) {
    return measure(dimension).noun;
}

std::string with_unit(double bare, Dimension dimension, const SensibleRange& range) {
    const std::vector<Unit>& units = measure(dimension).units;
    const Unit* chosen = &units.front();
    for (const Unit& unit : std::span(units).first(std::min<std::size_t>(units.size(), 3))) {
        const double si = to_si(bare, unit);
        if (si >= range.lowest && si <= range.highest) {
            chosen = &unit;
            break;
        }
    }
    return fmt::format("{} {}", show_number(bare, 6), chosen->names.front());
}

std::string plain_quantity(double si, Dimension dimension) {
    const std::vector<Unit>& units = measure(dimension).units;
    const Unit* chosen = &units.front();
    for (const Unit& unit : std::span(units).first(std::min<std::size_t>(units.size(), 3))) {
        const double size = std::abs(from_si(si, unit));
        if (size >= 1.0 && size <= 1000.0) {
            chosen = &unit;
            break;
        }
    }
    return fmt::format("{} {}", show_number(from_si(si, *chosen), 3), chosen->names.front());
}

std::vector<std::string> unit_names(Dimension dimension) {
    const std::vector<std::string_view> names = names_of(measure(dimension));
    return {names.begin(), names.end()};
}

std::optional<std::chrono::seconds> read_time_of_day(std::string_view text) {
    const std::size_t colon = text.find(':');
    if (colon == 0 || colon == std::string_view::npos || colon > 2 || text.size() != colon + 3)
        return std::nullopt;
    const std::optional<int> hours = read_digits(text.substr(0, colon));
    const std::optional<int> minutes = read_digits(text.substr(colon + 1));
    if (!hours || !minutes || *hours > 23 || *minutes > 59)
        return std::nullopt;
    return std::chrono::hours(*hours) + std::chrono::minutes(*minutes);
}

std::optional<std::chrono::year_month_day> read_date(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return std::nullopt;
    const std::optional<int> year = read_digits(text.substr(0, 4));
    const std::optional<int> month = read_digits(text.substr(5, 2));
    const std::optional<int> day = read_digits(text.substr(8, 2));
    if (!year || !month || !day || *year < 1900 || *year > 2199)
        return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(*year),
                                           std::chrono::month(static_cast<unsigned>(*month)),
                                           std::chrono::day(static_cast<unsigned>(*day))};
    return date.ok() ? std::optional(date) : std::nullopt;
}

} // namespace tumpline::planner
