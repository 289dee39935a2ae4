#include "planner/quantities/quantities.h"

#include "planner/quantities/quantity_units.h"
#include "planner/quantities/spelling.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>
#include <span>

namespace tumpline::planner {

namespace {

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
    std::vector<std::string_view> usual;
    for (const Unit& one : measure.units)
        usual.push_back(one.names.front());
    std::vector<std::string_view> longer; // "5 km" for a speed
    std::copy_if(usual.begin(), usual.end(), std::back_inserter(longer), [&](auto name) {
        return name.starts_with(unit);
    });
    std::string nearest = longer.size() == 1 ? std::string(longer.front()) : std::string();
    if (nearest.empty())
        nearest = nearest_word(unit, usual);
    if (nearest.empty())
        nearest = nearest_word(unit, names_of(measure));
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
                return wrong(last == nullptr ? unit_advice(digits)
                                             : "each number with its unit, larger units first, as "
                                               "in \"7 lb 4 oz\" or \"1 h 30 min\"");
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
        const bool plus = !follows && start != end && *start == '+';
        if (plus)
            ++start;
        const bool minus = !follows && !plus && start != end && *start == '-';
        if (start == end || !(is_digit(*start) || *start == '.' || minus))
            return std::nullopt;
        double number = 0.0;
        const auto [stop, error] = std::from_chars(start, end, number);
        if (error != std::errc() || !std::isfinite(number))
            return std::nullopt;
        if (stop != end && (*stop == ',' || *stop == '.'))
            return std::nullopt;
        if (!follows)
            negative_ = minus;
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
