#include "planner/trip/value_reader.h"

#include "planner/quantities/spelling.h"
#include "planner/trip/json_document.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

using Kind = JsonValue::Kind;

constexpr std::size_t most_problems = 100;
constexpr std::size_t longest_name = 200;
constexpr std::size_t longest_text = 20'000;

bool is_control(char letter, bool line_ends_too) {
    const auto code = static_cast<unsigned char>(letter);
    return code == 0x7F ||
           (code < 0x20 && (line_ends_too || (letter != '\n' && letter != '\t' && letter != '\r')));
}

bool has_control(std::string_view text, bool line_ends_too) {
    return std::any_of(
        text.begin(), text.end(), [&](char letter) { return is_control(letter, line_ends_too); });
}

/// "found 4, expected a text": the advice writes the value as a text.
std::string quoted(const JsonValue& value) {
    return value.kind == Kind::number ? fmt::format("write \"{}\"", value.text) : std::string();
}

std::string between_text(const Between& between) {
    return fmt::format(
        "from {} to {}", show_number(between.lowest, 3), show_number(between.highest, 3));
}

} // namespace

void Problems::add(std::string place, What what) {
    if (problems_.size() >= most_problems) {
        ++left_out_;
        return;
    }
    problems_.push_back({.file = file_,
                         .place = std::move(place),
                         .found = std::move(what.found),
                         .expected = std::move(what.expected),
                         .advice = std::move(what.advice)});
}

bool Problems::told_of(std::string_view place) const {
    return std::any_of(problems_.begin(), problems_.end(), [&](const geo::Problem& problem) {
        return problem.place == place;
    });
}

std::vector<geo::Problem> Problems::take() {
    if (left_out_ > 0)
        problems_.push_back({.file = file_,
                             .place = {},
                             .found = fmt::format("{} more problems", left_out_),
                             .expected = "the ones above put right first",
                             .advice = {}});
    return std::move(problems_);
}

void TripValue::add_problem(std::string expected, std::string advice) const {
    problems_->add(
        place_,
        {.found = shown(*json_), .expected = std::move(expected), .advice = std::move(advice)});
}

std::optional<double> TripValue::quantity(const Sensible& sensible) const {
    const SensibleRange range{.lowest = sensible.lowest, .highest = sensible.highest};
    if (json_->kind == Kind::number) {
        const std::string with = with_unit(json_->number, sensible.dimension, range);
        add_problem(expected_quantity(sensible.dimension), fmt::format("write \"{}\"", with));
        return std::nullopt;
    }
    if (json_->kind != Kind::text) {
        add_problem(expected_quantity(sensible.dimension));
        return std::nullopt;
    }
    Reading reading = read_quantity(json_->text, sensible.dimension);
    if (!reading.value) {
        add_problem(std::move(reading.expected), std::move(reading.advice));
        return std::nullopt;
    }
    if (*reading.value < sensible.lowest || *reading.value > sensible.highest) {
        add_problem(fmt::format("{} from {} to {}",
                                noun_of(sensible.dimension),
                                plain_quantity(sensible.lowest, sensible.dimension),
                                plain_quantity(sensible.highest, sensible.dimension)));
        return std::nullopt;
    }
    return reading.value;
}

std::optional<double> TripValue::number(const Between& between) const {
    const std::string expected = fmt::format("a number {}", between_text(between));
    if (json_->kind != Kind::number) {
        add_problem(expected, json_->kind == Kind::text ? "write it without quotation marks" : "");
        return std::nullopt;
    }
    if (!(json_->number >= between.lowest && json_->number <= between.highest)) {
        add_problem(expected);
        return std::nullopt;
    }
    return json_->number;
}

std::optional<int> TripValue::whole_number(const Between& between) const {
    const bool fits = json_->kind == Kind::number && json_->number >= between.lowest &&
                      json_->number <= between.highest &&
                      std::floor(json_->number) == json_->number;
    if (!fits) {
        add_problem(fmt::format("a whole number {}", between_text(between)),
                    json_->kind == Kind::text ? "write it without quotation marks" : "");
        return std::nullopt;
    }
    return static_cast<int>(json_->number);
}

std::optional<bool> TripValue::yes_or_no() const {
    if (json_->kind != Kind::boolean) {
        add_problem("true or false",
                    json_->kind == Kind::text ? "write it without quotation marks" : "");
        return std::nullopt;
    }
    return json_->flag;
}

std::optional<std::string> TripValue::name() const {
    const bool fits = json_->kind == Kind::text && !has_control(json_->text, true) &&
                      json_->text.find_first_not_of(' ') != std::string::npos &&
                      json_->text.size() <= longest_name;
    if (!fits) {
        const bool long_text = json_->kind == Kind::text && json_->text.size() > longest_name;
        add_problem(long_text ? fmt::format("a name of at most {} bytes", longest_name)
                              : "a name in quotation marks, one line, not empty",
                    long_text ? "shorten it" : quoted(*json_));
        return std::nullopt;
    }
    const std::size_t first = json_->text.find_first_not_of(' ');
    return json_->text.substr(first, json_->text.find_last_not_of(' ') + 1 - first);
}

std::optional<std::string> TripValue::text() const {
    if (json_->kind != Kind::text || has_control(json_->text, false) ||
        json_->text.size() > longest_text) {
        add_problem("a text in quotation marks", quoted(*json_));
        return std::nullopt;
    }
    return json_->text;
}

std::optional<std::chrono::seconds> TripValue::duration(const Between& hours) const {
    const std::optional<double> duration_s = quantity({.dimension = Dimension::duration,
                                                       .lowest = hours.lowest * s_per_h,
                                                       .highest = hours.highest * s_per_h});
    if (!duration_s)
        return std::nullopt;
    return std::chrono::seconds(std::llround(*duration_s));
}

std::optional<std::chrono::seconds> TripValue::time_of_day() const {
    const auto time = json_->kind == Kind::text ? read_time_of_day(json_->text) : std::nullopt;
    if (!time)
        add_problem("a time of day \"HH:MM\" of the 24-hour clock, in quotation marks",
                    "for instance \"08:00\"");
    return time;
}

std::optional<Date> TripValue::date() const {
    const auto date = json_->kind == Kind::text ? read_date(json_->text) : std::nullopt;
    if (!date)
        add_problem("a date \"YYYY-MM-DD\" of the calendar, from 1900 to 2199, in quotation marks",
                    "for instance \"2027-06-18\"");
    return date;
}

std::optional<RiverClass> TripValue::river_class() const {
    // a plain 3 is taken as well: class is a count, not a quantity
    const bool written = json_->kind == Kind::text || json_->kind == Kind::number;
    const std::optional<RiverClass> read = written ? read_river_class(json_->text) : std::nullopt;
    if (!read)
        add_problem("a river class from \"I\" to \"VI\"",
                    "\"III-\", \"II+\" and \"II-III\" count as the harder one, III");
    return read;
}

std::optional<std::string_view>
TripValue::one_of(const std::vector<std::string_view>& words) const {
    if (json_->kind == Kind::text) {
        const auto found = std::find(words.begin(), words.end(), json_->text);
        if (found != words.end())
            return *found;
    }
    const std::string nearest =
        json_->kind == Kind::text ? nearest_word(json_->text, words) : std::string();
    add_problem(either(words),
                nearest.empty() ? std::string() : fmt::format("write \"{}\"", nearest));
    return std::nullopt;
}

std::vector<TripValue> TripValue::items(std::string_view of) const {
    std::vector<TripValue> items;
    if (json_->kind != Kind::list) {
        add_problem(fmt::format("a list in square brackets, each item {}", of),
                    json_->kind == Kind::null ? std::string() : "write it as [ ... ]");
        return items;
    }
    items.reserve(json_->items.size());
    for (std::size_t i = 0; i < json_->items.size(); ++i)
        items.emplace_back(json_->items[i], fmt::format("{}/{}", place_, i), *problems_);
    return items;
}

bool is_short_enough(const TripValue& value, std::size_t most, std::string advice) {
    const std::size_t items = value.json().kind == Kind::list ? value.json().items.size() : 0;
    if (items <= most)
        return true;
    value.problems().add(value.place(),
                         {.found = fmt::format("a list of {}", items),
                          .expected = fmt::format("at most {}", most),
                          .advice = std::move(advice)});
    return false;
}

bool has_only_keys(const TripValue& value, const KeyNames& names) {
    if (value.json().kind != Kind::object) {
        value.add_problem(fmt::format("{}: an object in curly brackets", names.noun));
        return false;
    }
    std::vector<std::string> meant; // by a key that is spelled wrongly
    for (const JsonValue::Member& member : value.json().members) {
        if (std::find(names.all.begin(), names.all.end(), member.key) != names.all.end())
            continue;
        const std::string nearest = nearest_word(member.key, names.all);
        meant.push_back(nearest);
        value.problems().add(
            pointer_to(value.place(), member.key),
            {.found = "an unknown key",
             .expected = nearest.empty()
                             ? fmt::format("a key of {} ({})", names.noun, either(names.all))
                             : fmt::format("a key of {}", names.noun),
             .advice = nearest.empty() ? std::string() : fmt::format("write \"{}\"", nearest)});
    }
    for (const std::string_view needed : names.needed)
        if (value.json().find(needed) == nullptr &&
            std::find(meant.begin(), meant.end(), needed) == meant.end())
            value.problems().add(value.place(),
                                 {.found = fmt::format("no \"{}\"", needed),
                                  .expected = fmt::format("{} to have one", names.noun),
                                  .advice = needed == "tumpline" ? "write \"tumpline\": 1" : ""});
    return true;
}

} // namespace tumpline::planner
