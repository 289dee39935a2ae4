#pragma once

#include "geo/input_error.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/json_document.h"
#include "planner/trip/vocabulary.h"

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// How values of a trip file are read: each reading function notes a problem with its place and
/// leaves its target alone if the value cannot be used, so that one run finds them all.
namespace tumpline::planner {

/// The problems found in one file.
class Problems {
  public:
    explicit Problems(std::string file) : file_(std::move(file)) {}

    struct What {
        std::string found;
        std::string expected;
        std::string advice;
    };

    void add(std::string place, What what);

    [[nodiscard]] bool none() const { return problems_.empty(); }

    /// Whether something was found at this very place: what follows from it needs no line of its
    /// own.
    [[nodiscard]] bool told_of(std::string_view place) const;

    /// In the order in which they were found; more than a hundred end with a count.
    [[nodiscard]] std::vector<geo::Problem> take();

  private:
    std::string file_;
    std::vector<geo::Problem> problems_;
    std::size_t left_out_ = 0;
};

/// What a quantity may be: its dimension and sensible bounds in SI.
struct Sensible {
    Dimension dimension;
    double lowest;
    double highest;
};

/// Of the air, of water, and of the night that a piece of kit is for.
inline constexpr Sensible sensible_temperature{Dimension::temperature, -60.0, 60.0};
inline constexpr Sensible sensible_wind{Dimension::speed, 0.0, 60.0};

/// What a plain number may be.
struct Between {
    double lowest;
    double highest;
};

/// One value of the file with its place.
class TripValue {
  public:
    TripValue(const JsonValue& json, std::string place, Problems& problems)
        : json_(&json), place_(std::move(place)), problems_(&problems) {}

    [[nodiscard]] const JsonValue& json() const { return *json_; }

    [[nodiscard]] const std::string& place() const { return place_; }

    [[nodiscard]] Problems& problems() const { return *problems_; }

    void add_problem(std::string expected, std::string advice = {}) const;

    [[nodiscard]] std::optional<double> quantity(const Sensible& sensible) const;
    [[nodiscard]] std::optional<double> number(const Between& between) const;
    [[nodiscard]] std::optional<int> whole_number(const Between& between) const;
    [[nodiscard]] std::optional<bool> yes_or_no() const;
    /// Not empty, without control characters.
    [[nodiscard]] std::optional<std::string> name() const;
    /// Perhaps of several lines, perhaps empty.
    [[nodiscard]] std::optional<std::string> text() const;
    [[nodiscard]] std::optional<std::chrono::seconds> duration(const Between& hours) const;
    [[nodiscard]] std::optional<std::chrono::seconds> time_of_day() const;
    [[nodiscard]] std::optional<Date> date() const;
    [[nodiscard]] std::optional<RiverClass> river_class() const;
    /// One of a closed set of words; `expected` is made from them.
    [[nodiscard]] std::optional<std::string_view>
    one_of(const std::vector<std::string_view>& words) const;
    /// The items of a list; none, and a problem noted, if it is no list. `of` is "names of places".
    [[nodiscard]] std::vector<TripValue> items(std::string_view of) const;

    template <class Meaning>
    [[nodiscard]] std::optional<Meaning> meaning(std::span<const Word<Meaning>> words) const {
        std::vector<std::string_view> texts;
        for (const Word<Meaning>& entry : words)
            texts.push_back(entry.word);
        const std::optional<std::string_view> chosen = one_of(texts);
        for (const Word<Meaning>& entry : words)
            if (chosen && entry.word == *chosen)
                return entry.meaning;
        return std::nullopt;
    }

  private:
    const JsonValue* json_;
    std::string place_;
    Problems* problems_;
};

/// Puts what was read into its place; leaves the place alone if nothing could be read.
template <class Target, class Read> void put(Target& target, std::optional<Read> read) {
    if (read)
        target = std::move(*read);
}

enum class Need { must, may };

/// A key of an object and what to do with its value.
template <class Target> struct Key {
    std::string_view name;
    Need need;
    void (*read)(const TripValue& value, Target& target);
};

/// An object of the trip file: its name in the schema ($defs), what people call it, its keys.
template <class Target> struct Section {
    std::string_view name;
    std::string_view noun; ///< "a kit item"
    std::vector<Key<Target>> keys;
};

/// Whether `value` is an object; reports it if not, and its unknown and missing keys.
struct KeyNames {
    std::string_view noun;
    std::vector<std::string_view> all;
    std::vector<std::string_view> needed;
};

[[nodiscard]] bool has_only_keys(const TripValue& value, const KeyNames& names);

template <class Target>
void read_section(const TripValue& value, const Section<Target>& section, Target& target) {
    KeyNames names{.noun = section.noun, .all = {}, .needed = {}};
    for (const Key<Target>& key : section.keys) {
        names.all.push_back(key.name);
        if (key.need == Need::must)
            names.needed.push_back(key.name);
    }
    if (!has_only_keys(value, names))
        return;
    for (const JsonValue::Member& member : value.json().members)
        for (const Key<Target>& key : section.keys)
            if (key.name == member.key)
                key.read(TripValue(member.value,
                                   value.place() + "/" + std::string(key.name),
                                   value.problems()),
                         target);
}

/// How long the lists of a trip file may be: far beyond any trip, and short enough for a plan
/// within seconds.
inline constexpr std::size_t most_legs = 2'000;
inline constexpr std::size_t most_places = 2'000;
inline constexpr std::size_t most_members = 100;
inline constexpr std::size_t most_craft = 100;
inline constexpr std::size_t most_craft_choices = 20;
inline constexpr std::size_t most_things = 5'000;
inline constexpr std::size_t most_appointments = 1'000;
inline constexpr std::size_t most_connections = 100;
inline constexpr std::size_t most_timetable_hours = 1'000;
inline constexpr std::size_t most_permits = 500;
inline constexpr std::size_t most_weather = 200;
inline constexpr std::size_t most_layers = 50;

/// Whether a list is no longer than that; reports it if it is. `advice` is what to do instead.
[[nodiscard]] bool is_short_enough(const TripValue& value, std::size_t most, std::string advice);

/// A list of sections; an item with problems still takes its place, so that numbers stay right.
template <class Target>
void read_list(const TripValue& value, const Section<Target>& section, std::vector<Target>& list) {
    for (const TripValue& item : value.items(section.noun))
        read_section(item, section, list.emplace_back());
}

} // namespace tumpline::planner
