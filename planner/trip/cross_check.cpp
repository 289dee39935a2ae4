#include "planner/trip/cross_check.h"

#include "geo/light/time_zone.h"
#include "planner/quantities/spelling.h"
#include "planner/trip/flow_check.h"
#include "planner/trip/weather_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace tumpline::planner {

namespace {

using Names = std::vector<std::string_view>;

std::string in_quotes(std::string_view text) {
    return fmt::format("\"{}\"", text);
}

/// A name that nothing has, and where it stands.
struct UnknownName {
    std::string name;
    std::string noun;
    Names known;
    std::vector<std::string> places;
};

/// References to things by name; each unknown name is one problem, however often it stands.
class References {
  public:
    explicit References(Problems& problems) : problems_(problems) {}

    void check(std::string_view name,
               const Names& known,
               const std::string& place,
               std::string_view noun) {
        // A thing whose own name could not be read is a problem already: this may mean it.
        if (name.empty() || std::find(known.begin(), known.end(), name) != known.end() ||
            std::find(known.begin(), known.end(), std::string_view()) != known.end())
            return;
        for (UnknownName& each : unknown_)
            if (each.name == name && each.noun == noun)
                return each.places.push_back(place);
        unknown_.push_back({std::string(name), std::string(noun), known, {place}});
    }

    /// The names themselves are shown if they are few.
    void report() {
        for (const UnknownName& each : unknown_) {
            const std::string nearest = nearest_word(each.name, each.known);
            const bool few = !each.known.empty() && each.known.size() <= 12;
            const std::size_t more = each.places.size() - 1;
            problems_.add(each.places.front(),
                          {.found = more == 0 ? in_quotes(each.name)
                                              : fmt::format("{} (and at {} more {})",
                                                            in_quotes(each.name),
                                                            more,
                                                            more == 1 ? "place" : "places"),
                           .expected = few ? fmt::format("{} ({})", each.noun, either(each.known))
                                           : each.noun,
                           .advice = nearest.empty()
                                         ? std::string()
                                         : fmt::format("write {}", in_quotes(nearest))});
        }
    }

  private:
    Problems& problems_;
    std::vector<UnknownName> unknown_;
};

/// Names that stand twice; case does not make two of one.
void check_once(const Names& names,
                std::string_view list,
                std::string_view key,
                Problems& problems) {
    for (std::size_t i = 0; i < names.size(); ++i)
        for (std::size_t earlier = 0; earlier < i; ++earlier)
            if (!names[i].empty() && names[i].size() == names[earlier].size() &&
                edit_distance(names[i], names[earlier]) == 0) {
                problems.add(fmt::format("{}/{}/{}", list, i, key),
                             {.found = in_quotes(names[i]),
                              .expected = fmt::format("another name than {}/{}'s", list, earlier),
                              .advice = {}});
                break;
            }
}

template <class Things> Names names_of(const Things& things) {
    Names names;
    for (const auto& thing : things)
        names.push_back(thing.name);
    return names;
}

void check_party(const Trip& trip, Problems& problems) {
    check_once(names_of(trip.party), "/party", "name", problems);
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

void check_craft_choices(const Trip& trip, References& references, Problems& problems) {
    const Names boats = names_of(trip.craft);
    check_once(names_of(trip.craft_choices), "/craft_choices", "name", problems);
    for (std::size_t i = 0; i < trip.craft_choices.size(); ++i) {
        const CraftChoice& choice = trip.craft_choices[i];
        const std::string place = fmt::format("/craft_choices/{}", i);
        check_freeboard(choice, place, problems);
        if (!choice.name.empty() &&
            std::find(boats.begin(), boats.end(), choice.name) != boats.end())
            problems.add(place + "/name",
                         {.found = in_quotes(choice.name),
                          .expected = "another name than a boat of the trip bears (/craft)",
                          .advice = {}});
        for (std::size_t j = 0; j < choice.replaces.size(); ++j)
            references.check(choice.replaces[j],
                             boats,
                             fmt::format("{}/replaces/{}", place, j),
                             "a boat of the trip");
    }
}

void check_craft(const Trip& trip, References& references, Problems& problems) {
    const Names members = names_of(trip.party);
    check_once(names_of(trip.craft), "/craft", "name", problems);
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

/// Keys that mean nothing for this way of travel are slips.
void check_leg(const TripLeg& leg, const std::string& place, Problems& problems) {
    if (!leg.travel)
        return;
    const auto refuse = [&](bool given, std::string_view key, std::string_view ways) {
        if (given)
            problems.add(fmt::format("{}/{}", place, key),
                         {.found = fmt::format(
                              "\"{}\" on a leg with \"travel\": \"{}\"", key, word(*leg.travel)),
                          .expected = fmt::format("it on {} only", ways),
                          .advice = {}});
    };
    if (*leg.travel != Travel::paddle) {
        constexpr std::string_view ways = "legs that are paddled";
        refuse(leg.water.has_value(), "water", ways);
        refuse(leg.current_mps.has_value(), "current", ways);
        refuse(leg.flow.has_value(), "flow", ways);
        refuse(leg.bed.has_value(), "river_bed", ways);
        refuse(leg.shelter.has_value(), "shelter", ways);
        refuse(leg.open_crossing.has_value(), "open_crossing", ways);
        refuse(leg.scouts.has_value(), "scouts", ways);
        refuse(leg.fetch_m.has_value(), "fetch", ways);
    } else {
        constexpr std::string_view ways = "legs on foot";
        refuse(leg.terrain.has_value(), "terrain", ways);
        refuse(leg.footprint_m.has_value(), "footprint", ways);
        refuse(leg.night.has_value(), "night", ways);
    }
    if (*leg.travel != Travel::portage) {
        refuse(leg.carries.has_value(), "carries", "portages");
        refuse(leg.boat_on_carry.has_value(), "boat_on_carry", "portages");
        refuse(leg.cart.has_value(), "cart", "portages");
    }
}

/// What a leg without a track says of itself, and what only such a leg may say.
void check_undrawn(const TripLeg& leg, const std::string& place, Problems& problems) {
    const auto refuse = [&](std::string_view key, std::string found, std::string_view expected) {
        problems.add(fmt::format("{}/{}", place, key),
                     {.found = std::move(found), .expected = std::string(expected), .advice = {}});
    };
    if (leg.length_m && !leg.track.empty())
        refuse("length",
               "\"length\" beside \"track\"",
               "one of them: a leg with a track is as long as its line");
    for (const auto& [given, key] : {std::pair{leg.ascent_m.has_value(), "ascent"},
                                     std::pair{leg.descent_m.has_value(), "descent"}}) {
        if (given && !leg.length_m)
            refuse(key,
                   fmt::format("\"{}\" without \"length\"", key),
                   "it on a leg without a track, beside its \"length\"");
        else if (given && leg.travel == Travel::paddle)
            refuse(key, fmt::format("\"{}\" on a leg that is paddled", key), "it on foot only");
    }
    if (leg.length_m && leg.ascent_m.has_value() != leg.descent_m.has_value())
        refuse(leg.ascent_m ? "ascent" : "descent",
               fmt::format("\"{}\" alone", leg.ascent_m ? "ascent" : "descent"),
               "\"ascent\" and \"descent\" together (\"0 m\" where there is none), or neither: "
               "then the ground counts as level, with a caution");
    if (leg.ascent_m && leg.descent_m && leg.length_m &&
        *leg.ascent_m + *leg.descent_m > 2.0 * *leg.length_m)
        refuse("ascent",
               fmt::format("{} up and down over {}",
                           plain_quantity(*leg.ascent_m + *leg.descent_m, Dimension::length),
                           plain_quantity(*leg.length_m, Dimension::length)),
               "no more than twice the length: ground of 63 degrees");
}

void check_distance(const TripPlace& spec,
                    const std::string& place,
                    const Trip& trip,
                    References& references,
                    Problems& problems) {
    if (!spec.along || spec.along->leg.empty())
        return;
    Names legs;
    for (const TripLeg& leg : trip.route.legs)
        if (leg.instead_of.empty())
            legs.push_back(leg.name.empty() ? leg.track : leg.name);
    if (trip.route.legs.empty())
        return; // every track is a leg: looked for once they are read
    references.check(spec.along->leg, legs, place + "/at", "the name of a leg");
    if (std::count(legs.begin(), legs.end(), spec.along->leg) > 1)
        problems.add(place + "/at",
                     {.found = in_quotes(spec.along->leg),
                      .expected = "the name of one leg; several have this one",
                      .advice = "give the distance from the start of the route"});
}

/// A cart rolls on roads and tracks, and somebody must have one.
void check_cart(const Trip& trip,
                const TripLeg& leg,
                const std::string& place,
                Problems& problems) {
    if (leg.cart != true)
        return;
    if (leg.terrain && *leg.terrain != Terrain::path)
        problems.add(place + "/cart",
                     {.found = fmt::format("true beside \"terrain\": \"{}\"", word(*leg.terrain)),
                      .expected = "it on roads and tracks, \"path\", only",
                      .advice = {}});
    if (std::none_of(trip.kit.begin(), trip.kit.end(), [](const KitItem& item) {
            return item.cart_payload_kg.has_value();
        }))
        problems.add(place + "/cart",
                     {.found = "true, and no cart in the kit",
                      .expected = "a thing of the kit with \"cart_payload\"",
                      .advice = "add one, as {\"item\": \"cart\", \"mass\": \"5 kg\", "
                                "\"cart_payload\": \"60 kg\"}"});
}

/// Depth and speed of the water are those of a ford.
void check_fords(const Trip& trip, Problems& problems) {
    for (std::size_t i = 0; i < trip.route.places.size(); ++i) {
        const TripPlace& place = trip.route.places[i];
        if (place.kind == PlaceKind::ford || (!place.depth_m && !place.speed_mps))
            continue;
        const std::string_view key = place.depth_m ? "depth" : "speed";
        problems.add(
            fmt::format("/route/places/{}/{}", i, key),
            {.found = fmt::format("\"{}\" at a place of \"kind\": \"{}\"", key, word(place.kind)),
             .expected = "it at fords only",
             .advice = {}});
    }
}

void check_route(const Trip& trip, References& references, Problems& problems) {
    check_once(names_of(trip.route.places), "/route/places", "name", problems);
    for (std::size_t i = 0; i < trip.route.places.size(); ++i)
        check_distance(
            trip.route.places[i], fmt::format("/route/places/{}", i), trip, references, problems);
    check_fords(trip, problems);
    Names legs;
    for (const TripLeg& leg : trip.route.legs)
        if (leg.instead_of.empty() && !leg.name.empty())
            legs.push_back(leg.name);
    for (std::size_t i = 0; i < trip.route.legs.size(); ++i) {
        const TripLeg& leg = trip.route.legs[i];
        const std::string place = fmt::format("/route/legs/{}", i);
        check_leg(leg, place, problems);
        check_undrawn(leg, place, problems);
        check_cart(trip, leg, place, problems);
        references.check(leg.instead_of, legs, place + "/instead_of", "the name of a leg");
    }
    if (!trip.route.legs.empty() && legs.empty() &&
        std::all_of(trip.route.legs.begin(), trip.route.legs.end(), [](const TripLeg& leg) {
            return !leg.instead_of.empty();
        }))
        problems.add("/route/legs",
                     {.found = "alternatives only",
                      .expected = "at least one leg without \"instead_of\"",
                      .advice = {}});
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
    check_route(trip, references, problems);
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
