#include "planner/trip/cross_check.h"

#include "geo/light/time_zone.h"
#include "planner/quantities/spelling.h"
#include "planner/trip/flow_check.h"
#include "planner/trip/name_references.h"
#include "planner/trip/route_keys_check.h"
#include "planner/trip/weather_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace tumpline::planner {

namespace {

void check_party(const Trip& trip, Problems& problems) {
    check_once(names_of(trip.party), {"/party", "name"}, problems);
    for (std::size_t i = 0; i < trip.party.size(); ++i) {
        const Member& member = trip.party[i];
        const std::string place = fmt::format("/party/{}", i);
        if (member.name == "party")
            problems.add(place + "/name",
                         {.found = "\"party\"",
                          .expected = "another name: \"party\" means all members together",
                          .advice = {}});
        const auto check_limit = [&](const std::optional<double>& limit_kg, std::string_view key) {
            if (limit_kg && member.body_kg > 0.0 && *limit_kg > 2.0 * member.body_kg)
                problems.add(
                    fmt::format("{}/{}", place, key),
                    {.found = plain_quantity(*limit_kg, Dimension::mass),
                     .expected = fmt::format("at most twice the body's mass, {}",
                                             plain_quantity(2.0 * member.body_kg, Dimension::mass)),
                     .advice = {}});
        };
        check_limit(member.carry_limit_kg, "carry_limit");
        check_limit(member.portage_limit_kg, "portage_limit");
    }
}

void check_freeboard(const Craft& craft, const std::string& place, Problems& problems) {
    if (craft.freeboard_m && !craft.waterplane_m2)
        problems.add(place + "/freeboard",
                     {.found = "no \"waterplane\" beside it",
                      .expected = "both: a load lowers the boat by its volume over that area",
                      .advice = "add \"waterplane\", as \"1.3 m2\", or leave it out"});
}

/// What a paddle is packed as is no longer than the paddle.
void check_paddle(const PaddleSpec& paddle, const std::string& place, Problems& problems) {
    if (paddle.length_m && paddle.packed_length_m && *paddle.packed_length_m > *paddle.length_m)
        problems.add(place + "/paddle/packed_length",
                     {.found = plain_quantity(*paddle.packed_length_m, Dimension::length),
                      .expected = fmt::format("no more than its \"length\", {}",
                                              plain_quantity(*paddle.length_m, Dimension::length)),
                      .advice = {}});
}

/// Keys of boats on a paddle, and of paddles on a boat.
void check_choice_kind(const CraftChoice& choice, const std::string& place, Problems& problems) {
    if (choice.paddle)
        check_paddle(*choice.paddle, place, problems);
    if (choice.paddle && !choice.is_paddle)
        problems.add(place + "/paddle",
                     {.found = "the lengths of a paddle",
                      .expected = "\"kind\": \"paddle\" beside it",
                      .advice = {}});
    const bool boat = choice.payload_kg || choice.calm_speed_mps || !choice.bags_l.empty() ||
                      choice.wet_fraction || choice.river_class || choice.wind_ceiling_mps ||
                      choice.rolls_up || choice.rolled_l || choice.borne_by ||
                      choice.waterplane_m2 || choice.freeboard_m || choice.deck ||
                      !choice.suits.empty() || choice.seats != 1;
    if (choice.is_paddle && boat)
        problems.add(place,
                     {.found = "keys of a boat beside \"kind\": \"paddle\"",
                      .expected = "name, mass, paddle, replaces and price",
                      .advice = {}});
}

void check_craft_choices(const Trip& trip, References& references, Problems& problems) {
    const Names boats = names_of(trip.craft);
    Names paddles;
    for (const KitItem& item : trip.kit)
        if (item.paddle && std::find(paddles.begin(), paddles.end(), item.name) == paddles.end())
            paddles.emplace_back(item.name);
    check_once(names_of(trip.craft_choices), {"/craft_choices", "name"}, problems);
    for (std::size_t i = 0; i < trip.craft_choices.size(); ++i) {
        const CraftChoice& choice = trip.craft_choices[i];
        const std::string place = fmt::format("/craft_choices/{}", i);
        check_freeboard(choice, place, problems);
        check_choice_kind(choice, place, problems);
        if (!choice.name.empty() &&
            std::find(boats.begin(), boats.end(), choice.name) != boats.end())
            problems.add(place + "/name",
                         {.found = in_quotes(choice.name),
                          .expected = "another name than a boat of the trip bears (/craft)",
                          .advice = {}});
        for (std::size_t j = 0; j < choice.replaces.size(); ++j)
            references.check(choice.replaces[j],
                             choice.is_paddle ? paddles : boats,
                             fmt::format("{}/replaces/{}", place, j),
                             choice.is_paddle ? "a thing of the kit with \"paddle\""
                                              : "a boat of the trip");
    }
}

void check_craft(const Trip& trip, References& references, Problems& problems) {
    const Names members = names_of(trip.party);
    check_once(names_of(trip.craft), {"/craft", "name"}, problems);
    std::map<std::string_view, std::string_view> boat_of;
    for (std::size_t i = 0; i < trip.craft.size(); ++i) {
        const Craft& craft = trip.craft[i];
        check_freeboard(craft, fmt::format("/craft/{}", i), problems);
        for (std::size_t j = 0; j < craft.crew.size(); ++j) {
            const std::string place = fmt::format("/craft/{}/crew/{}", i, j);
            references.check(craft.crew[j], members, place, "a member of the party");
            const auto [boat, first] = boat_of.emplace(craft.crew[j], craft.name);
            if (!first)
                problems.add(place,
                             {.found = in_quotes(craft.crew[j]),
                              .expected = fmt::format("each member in one craft only; already in "
                                                      "{}",
                                                      in_quotes(boat->second)),
                              .advice = {}});
        }
    }
}

/// One piece lies at one end.
void check_lies(const Trip& trip, std::size_t index, Problems& problems) {
    const KitItem& item = trip.kit[index];
    for (std::size_t other = 0; other < index && item.lies && !item.piece.empty(); ++other)
        if (trip.kit[other].piece == item.piece && trip.kit[other].lies &&
            trip.kit[other].lies != item.lies)
            problems.add(fmt::format("/kit/{}/lies", index),
                         {.found = in_quotes(word(*item.lies)),
                          .expected = fmt::format("the end of /kit/{}, with which it is in {}",
                                                  other,
                                                  in_quotes(item.piece)),
                          .advice = {}});
}

/// What is at hand lies in no bag, and one piece lies in one bag.
void check_bag(const Trip& trip, std::size_t index, Problems& problems) {
    const KitItem& item = trip.kit[index];
    if (!item.bag)
        return;
    const std::string place = fmt::format("/kit/{}/bag", index);
    if (item.at_hand)
        problems.add(place,
                     {.found = in_quotes(word(*item.bag)) + " beside \"at_hand\": true",
                      .expected = "one of them: what is at hand lies in no bag",
                      .advice = {}});
    for (std::size_t other = 0; other < index; ++other)
        if (!item.piece.empty() && trip.kit[other].piece == item.piece && trip.kit[other].bag &&
            trip.kit[other].bag != item.bag)
            problems.add(place,
                         {.found = in_quotes(word(*item.bag)),
                          .expected = fmt::format("the bag of /kit/{}, with which it is in {}",
                                                  other,
                                                  in_quotes(item.piece)),
                          .advice = {}});
}

void check_kit(const Trip& trip, References& references, Problems& problems) {
    const Names members = names_of(trip.party);
    for (std::size_t i = 0; i < trip.kit.size(); ++i) {
        const KitItem& item = trip.kit[i];
        const std::string place = fmt::format("/kit/{}", i);
        Names owners = members;
        owners.emplace_back("party");
        if (item.paddle)
            check_paddle(*item.paddle, place, problems);
        check_lies(trip, i, problems);
        references.check(item.owner, owners, place + "/for", "an owner");
        references.check(item.bearer, members, place + "/stays_with", "a member of the party");
        if (!item.owner.empty() && !item.bearer.empty() && item.owner != item.bearer)
            problems.add(place + "/stays_with",
                         {.found = in_quotes(item.bearer),
                          .expected = fmt::format("no other bearer than {}, whose it is",
                                                  in_quotes(item.owner)),
                          .advice = "leave \"stays_with\" out"});
        for (std::size_t j = 0; j < i && !item.bearer.empty() && !item.piece.empty(); ++j)
            if (trip.kit[j].piece == item.piece && !trip.kit[j].bearer.empty() &&
                trip.kit[j].bearer != item.bearer)
                problems.add(
                    place + "/stays_with",
                    {.found = in_quotes(item.bearer),
                     .expected = fmt::format("{}, with whom /kit/{} of the same \"in\" stays: a "
                                             "container goes on one back",
                                             in_quotes(trip.kit[j].bearer),
                                             j),
                     .advice = "take one of the two out of " + in_quotes(item.piece)});
        if (item.must && item.bring == false)
            problems.add(place + "/bring",
                         {.found = "false beside \"must\": true",
                          .expected = "one of them: what must come is brought",
                          .advice = "leave \"must\" out"});
        check_bag(trip, i, problems);
    }
}

void check_days(const Trip& trip, References& references, Problems& problems) {
    const Names places = names_of(trip.route.places);
    for (std::size_t i = 0; i < trip.days.nights.size(); ++i)
        references.check(trip.days.nights[i],
                         places,
                         fmt::format("/days/nights/{}", i),
                         "the name of a place of the route");
    if (trip.days.hours && trip.days.hours_limit && *trip.days.hours_limit < *trip.days.hours)
        problems.add("/days/hours_limit",
                     {.found = show_number(*trip.days.hours_limit, 2),
                      .expected = fmt::format("no less than the hours wished, {}",
                                              show_number(*trip.days.hours, 2)),
                      .advice = {}});
    std::set<int> seen;
    for (std::size_t i = 0; i < trip.days.rest_days_after.size(); ++i)
        if (!seen.insert(trip.days.rest_days_after[i]).second)
            problems.add(fmt::format("/days/rest_days_after/{}", i),
                         {.found = fmt::format("{} twice", trip.days.rest_days_after[i]),
                          .expected = "each day once",
                          .advice = {}});
    if (trip.days.halt && trip.days.halt->from_s >= trip.days.halt->to_s)
        problems.add("/days/halt/to",
                     {.found = "an hour no later than \"from\"",
                      .expected = "a later hour of the same day",
                      .advice = {}});
}

void check_calendars(const Trip& trip, References& references, Problems& problems) {
    Names known = names_of(trip.route.places);
    for (const TripLeg& leg : trip.route.legs)
        if (!leg.name.empty()) // a leg may go without one
            known.push_back(leg.name);
    for (std::size_t i = 0; i < trip.permits.size(); ++i)
        references.check(trip.permits[i].where,
                         known,
                         fmt::format("/permits/{}/for", i),
                         "the name of a place or of a leg");
    const bool dated = std::any_of(trip.permits.begin(), trip.permits.end(), [](const Permit& one) {
        return one.dates.has_value();
    });
    if (!trip.start.ok() && (dated || !trip.connections.empty()))
        problems.add(dated ? "/permits" : "/connections",
                     {.found = "no \"start\" of the trip",
                      .expected = "its date: without it no weekday of the trip is known",
                      .advice = "write \"start\": \"YYYY-MM-DD\""});
}

/// Things are meant by their names: kit and boats.
void check_leaves(const Trip& trip, References& references) {
    Names things = names_of(trip.kit);
    for (const Craft& craft : trip.craft)
        things.emplace_back(craft.name);
    std::sort(things.begin(), things.end());
    things.erase(std::unique(things.begin(), things.end()), things.end());
    for (std::size_t i = 0; i < trip.leaves.size(); ++i) {
        const std::string place = fmt::format("/leave/{}", i);
        const Leave& leave = trip.leaves[i];
        references.check(
            leave.at, names_of(trip.route.places), place + "/at", "the name of a place");
        for (std::size_t t = 0; t < leave.things.size(); ++t)
            references.check(
                leave.things[t],
                things,
                fmt::format("{}/{}/{}", place, leave.all_but ? "all_but" : "things", t),
                "a thing of the kit or a boat");
    }
}

void check_time_zone(const Trip& trip, Problems& problems) {
    if (trip.time_zone.empty() || geo::is_time_zone(trip.time_zone))
        return;
    if (!geo::has_time_zone_database()) {
        problems.add(
            "/time_zone",
            {.found = in_quotes(trip.time_zone) + ", but no time zone database on this system",
             .expected = "the IANA database, below /usr/share/zoneinfo",
             .advice = "install it (Debian: tzdata), or plan in \"UTC\""});
        return;
    }
    const std::string nearest = geo::nearest_time_zone(trip.time_zone);
    problems.add(
        "/time_zone",
        {.found = in_quotes(trip.time_zone),
         .expected = "a time zone of the IANA database, such as \"Europe/Oslo\"",
         .advice = nearest.empty() ? std::string() : fmt::format("write {}", in_quotes(nearest))});
}

} // namespace

void check_trip(const Trip& trip, Problems& problems) {
    References references(problems);
    check_time_zone(trip, problems);
    check_route_keys(trip, references, problems);
    check_party(trip, problems);
    if (!trip.party.empty()) { // else every owner and crew would be unknown as well
        check_craft(trip, references, problems);
        check_craft_choices(trip, references, problems);
        check_kit(trip, references, problems);
    }
    check_days(trip, references, problems);
    check_calendars(trip, references, problems);
    check_leaves(trip, references);
    check_weather(trip, problems);
    check_flows(trip, problems);
    references.report();
}

} // namespace tumpline::planner
