#include "planner/decisions/craft_choice_trips.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cstddef>

namespace tumpline::planner {

namespace {

using Names = std::vector<std::string>;

std::size_t seats_of(const CraftChoice& choice) {
    return static_cast<std::size_t>(choice.seats);
}

bool takes_place_of(const CraftChoice& choice, const Craft& boat) {
    if (choice.replaces.empty())
        return boat.crew.size() == seats_of(choice);
    return std::find(choice.replaces.begin(), choice.replaces.end(), boat.name) !=
           choice.replaces.end();
}

/// "1 seat", "3 seats".
std::string seats_words(int seats) {
    return fmt::format("{} {}", seats, seats == 1 ? "seat" : "seats");
}

/// One boat of a choice for a crew; each has a name of its own, by who sits in it.
Craft boat_for(const CraftChoice& choice, const Names& crew, const std::string& in_place_of) {
    Craft boat = static_cast<const Craft&>(choice); // its keys as a boat: no more is wanted
    boat.name = crew.empty() ? fmt::format("{} ({})", choice.name, in_place_of)
                             : fmt::format("{} ({})", choice.name, fmt::join(crew, ", "));
    boat.crew = crew;
    return boat;
}

/// Boats for a party that has none, filled in its order.
std::vector<Craft> boats_for_all(const CraftChoice& choice, const std::vector<Member>& party) {
    std::vector<Craft> boats;
    Names crew;
    for (const Member& member : party) {
        crew.push_back(member.name);
        if (crew.size() == seats_of(choice) || &member == &party.back()) {
            boats.push_back(boat_for(choice, crew, {}));
            crew.clear();
        }
    }
    return boats;
}

/// What a trip leaves on the way by the name of something goes by the names of what replaces it.
void rename_left(Trip& trip, const std::string& was, const std::string& is) {
    for (Leave& leave : trip.leaves) {
        const auto found = std::find(leave.things.begin(), leave.things.end(), was);
        if (found != leave.things.end() && was != is)
            leave.things.push_back(is); // others of the old name may still be there
    }
}

void replace_boats(OtherBoats& other, const CraftChoice& choice) {
    for (Craft& boat : other.trip.craft) {
        if (!takes_place_of(choice, boat))
            continue;
        if (boat.crew.size() > seats_of(choice) && other.refused.empty())
            other.refused = fmt::format("it has {}, and {} sit in {}",
                                        seats_words(choice.seats),
                                        boat.crew.size(),
                                        boat.name);
        other.replaces.push_back(boat.name);
        const std::string was = boat.name;
        boat = boat_for(choice, boat.crew, was);
        rename_left(other.trip, was, boat.name);
        ++other.count;
    }
    if (other.count == 0)
        other.refused = fmt::format("it has {}, and no boat of the trip has as many aboard",
                                    seats_words(choice.seats));
}

bool is_named(const Names& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

/// Its mass and what it is like are its own; whose it is and how it is used stays.
void replace_paddles(OtherBoats& other, const CraftChoice& choice) {
    other.paddle = true;
    for (KitItem& item : other.trip.kit) {
        if (!item.paddle || (!choice.replaces.empty() && !is_named(choice.replaces, item.name)))
            continue;
        if (!is_named(other.replaces, item.name))
            other.replaces.push_back(item.name);
        rename_left(other.trip, item.name, choice.name);
        item.name = choice.name;
        item.mass_kg = choice.mass_kg;
        item.paddle = choice.paddle.value_or(PaddleSpec{});
        item.volume_l.reset();
        other.count += item.count;
    }
    if (other.count == 0)
        other.refused = "no thing of the kit says that it is a paddle";
}

OtherBoats with_choice(const Trip& trip, const Route& route, const CraftChoice& choice) {
    OtherBoats other{.boats = Boats::choice,
                     .paddle = false,
                     .name = choice.name,
                     .replaces = {},
                     .count = 0,
                     .by = {},
                     .refused = {},
                     .price = std::nullopt,
                     .trip = trip,
                     .route = route};
    if (choice.is_paddle) {
        replace_paddles(other, choice);
    } else if (trip.craft.empty()) {
        other.trip.craft = boats_for_all(choice, trip.party);
        other.count = static_cast<int>(other.trip.craft.size());
    } else {
        replace_boats(other, choice);
    }
    if (choice.price)
        other.price = *choice.price * other.count;
    return other;
}

bool all_on_land(const Route& route) {
    return std::none_of(route.legs.begin(), route.legs.end(), [](const RouteLeg& leg) {
        return afloat(leg.travel);
    });
}

} // namespace

std::vector<OtherBoats>
other_boats(const Trip& trip, const Route& route, const std::vector<OtherRoute>& others) {
    std::vector<OtherBoats> all;
    const auto add = [&](Boats boats, const Trip& its, const Route& way) -> OtherBoats& {
        OtherBoats& added = all.emplace_back();
        added.boats = boats;
        added.price = 0.0;
        added.trip = its;
        added.route = way;
        return added;
    };
    add(Boats::own, trip, route);
    for (const CraftChoice& choice : trip.craft_choices)
        all.push_back(with_choice(trip, route, choice));
    if (all_on_land(route) && !trip.craft.empty())
        (void)leave_boats(add(Boats::none, trip, route).trip);
    for (const OtherRoute& way : others)
        if (all_on_land(way.route) && !all_on_land(route)) {
            OtherBoats& added = add(Boats::none, way.trip, way.route);
            added.by = way.by;
            added.refused = way.refused;
        }
    return all;
}

} // namespace tumpline::planner
