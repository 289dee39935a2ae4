#include "planner/trip/sections.h"

#include <fmt/format.h>

#include <array>
#include <string_view>
#include <vector>

namespace tumpline::planner {

namespace {

constexpr std::size_t most_leaves = 100;

constexpr std::array stores{"food", "fuel", "water"};

/// {"food": "2 kg"}, {"fuel": "200 g"} or {"water": "2 L"}.
void read_store(const TripValue& value, Leave& leave) {
    if (leave.all_but) {
        value.add_problem("the name of a thing of the kit or of a boat",
                          "food, fuel and water come along with \"all_but\"; lay them down with "
                          "\"things\" of another entry at the same place");
        return;
    }
    Leave one;
    read_section(value, laid_store_section(), one);
    std::vector<std::string_view> given;
    for (const char* key : stores)
        if (value.json().find(key) != nullptr)
            given.emplace_back(key);
    if (given.size() != 1) {
        value.add_problem("one of \"food\", \"fuel\" and \"water\"",
                          "write {\"food\": \"2 kg\"}, each in braces of its own");
        return;
    }
    const auto take = [&](auto& so_far, const auto& read) {
        if (so_far && read)
            value.add_problem(fmt::format("{} once in an entry", given.front()), "write it as one");
        else if (read)
            so_far = read;
    };
    take(leave.food_kg, one.food_kg);
    take(leave.fuel_kg, one.fuel_kg);
    take(leave.water_l, one.water_l);
}

void read_things(const TripValue& value, Leave& leave) {
    for (const TripValue& item : value.items("the name of a thing of the kit or of a boat")) {
        std::string& thing =
            leave.things.emplace_back(); // of stores empty: the rest keep their place
        if (item.json().kind == JsonValue::Kind::object)
            read_store(item, leave);
        else
            put(thing, item.name());
    }
    if (value.json().kind == JsonValue::Kind::list && value.json().items.empty())
        value.add_problem("the name of at least one thing of the kit or of a boat");
}

void check_keys(const TripValue& value, const Leave& leave) {
    if (value.json().kind != JsonValue::Kind::object)
        return;
    const bool things = value.json().find("things") != nullptr;
    const bool all_but = value.json().find("all_but") != nullptr;
    if (things == all_but)
        value.add_problem("either \"things\" or \"all_but\"",
                          things ? "leave one of the two out"
                                 : "say what is left: \"things\": [\"tent\"]");
    if (leave.day && leave.fetch_day && *leave.fetch_day < *leave.day)
        value.problems().add(value.place() + "/fetch_day",
                             {.found = fmt::format("day {}, before it is left", *leave.fetch_day),
                              .expected = fmt::format("day {} or a later one", *leave.day),
                              .advice = "leave \"fetch_day\" out to fetch at the next pass"});
}

} // namespace

const Section<Leave>& laid_store_section() {
    static const Section<Leave> section{
        "laid_store",
        "food, fuel or water that is left",
        {{"food",
          Need::may,
          [](const TripValue& v, Leave& l) {
              put(l.food_kg, v.quantity({Dimension::mass, 0.01, 500.0}));
          }},
         {"fuel",
          Need::may,
          [](const TripValue& v, Leave& l) {
              put(l.fuel_kg, v.quantity({Dimension::mass, 0.001, 100.0}));
          }},
         {"water", Need::may, [](const TripValue& v, Leave& l) {
              put(l.water_l, v.quantity({Dimension::volume, 0.01, 500.0}));
          }}}};
    return section;
}

const Section<Leave>& leave_section() {
    static const Section<Leave> section{
        "leave",
        "what is left",
        {
            {"at", Need::must, [](const TripValue& v, Leave& l) { put(l.at, v.name()); }},
            {"day",
             Need::may,
             [](const TripValue& v, Leave& l) {
                 put(l.day, v.whole_number({1, 400}));
             }},
            {"pass",
             Need::may,
             [](const TripValue& v, Leave& l) {
                 put(l.pass, v.whole_number({1, 400}));
             }},
            {"things", Need::may, read_things},
            {"all_but",
             Need::may,
             [](const TripValue& v, Leave& l) {
                 l.all_but = true;
                 read_things(v, l);
             }},
            {"fetch_day",
             Need::may,
             [](const TripValue& v, Leave& l) {
                 put(l.fetch_day, v.whole_number({1, 400}));
             }},
        }};
    return section;
}

void read_leaves(const TripValue& value, Trip& trip) {
    for (const TripValue& item : value.items("what is left at a place")) {
        if (trip.leaves.size() >= most_leaves) {
            value.add_problem(fmt::format("at most {} entries", most_leaves),
                              "put what is left at one place into one entry");
            return;
        }
        Leave& leave = trip.leaves.emplace_back();
        read_section(item, leave_section(), leave);
        check_keys(item, leave);
    }
}

} // namespace tumpline::planner
