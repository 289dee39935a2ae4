#include "planner/trip/route_keys_check.h"

#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::planner {

namespace {

/// Boats are lined, waded with and poled on rivers, close to the shore, at a pace of their own.
void check_led(const TripLeg& leg, const std::string& place, Problems& problems) {
    const std::string on = leg.travel
                               ? fmt::format("on a leg with \"travel\": \"{}\"", word(*leg.travel))
                               : std::string("on a leg without \"travel\"");
    const auto refuse = [&](bool given, std::string_view key, std::string_view expected) {
        if (given)
            problems.add(fmt::format("{}/{}", place, key),
                         {.found = fmt::format("\"{}\" {}", key, on),
                          .expected = std::string(expected),
                          .advice = {}});
    };
    const bool is_led = leg.travel && led(*leg.travel);
    refuse(!is_led && leg.led_mps.has_value(),
           "speed",
           "it on legs that are lined, waded or poled only");
    refuse(leg.travel != Travel::wade && leg.wading_m.has_value(),
           "depth",
           "it on legs that are waded only");
    if (!is_led)
        return;
    constexpr std::string_view paddled = "it on legs that are paddled only";
    refuse(leg.open_crossing.has_value(), "open_crossing", paddled);
    refuse(leg.fetch_m.has_value(), "fetch", paddled);
    refuse(leg.shelter.has_value(), "shelter", paddled);
    if (leg.water && *leg.water != Water::river)
        problems.add(place + "/water",
                     {.found = fmt::format("\"water\": \"{}\" {}", word(*leg.water), on),
                      .expected = "\"river\", or no \"water\": boats are led on rivers",
                      .advice = "paddle a lake along its shore: \"travel\": \"paddle\""});
}

/// Keys that mean nothing for this way of travel are slips.
void check_leg(const TripLeg& leg, const std::string& place, Problems& problems) {
    check_led(leg, place, problems);
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
    if (!afloat(*leg.travel)) {
        constexpr std::string_view ways = "legs afloat";
        constexpr std::string_view paddled = "legs that are paddled";
        refuse(leg.water.has_value(), "water", ways);
        refuse(leg.current_mps.has_value(), "current", ways);
        refuse(leg.flow.has_value(), "flow", ways);
        refuse(leg.bed.has_value(), "river_bed", ways);
        refuse(leg.shelter.has_value(), "shelter", paddled);
        refuse(leg.open_crossing.has_value(), "open_crossing", paddled);
        refuse(leg.scouts.has_value(), "scouts", ways);
        refuse(leg.fetch_m.has_value(), "fetch", paddled);
    }
    if (!on_foot(*leg.travel)) {
        constexpr std::string_view ways = "legs on foot";
        refuse(leg.terrain.has_value(), "terrain", ways);
        refuse(leg.footprint_m.has_value(), "footprint", ways);
        refuse(leg.night.has_value(), "night", ways);
    }
    if (*leg.travel != Travel::portage) {
        refuse(leg.carries.has_value(), "carries", "portages");
        refuse(leg.boat_on_carry.has_value(), "boat_on_carry", "portages");
        refuse(leg.carry_by.has_value(), "carry_by", "portages");
        refuse(leg.cart.has_value(), "cart", "portages");
    }
    if (is_ride(*leg.travel)) {
        constexpr std::string_view ways = "legs on foot or afloat";
        refuse(leg.river_class.has_value(), "class", ways);
        refuse(leg.drinkable.has_value(), "drinkable", ways);
    }
}

/// A ride is known by its time, and nothing else is.
void check_ride(const TripLeg& leg, const std::string& place, Problems& problems) {
    const bool ride = leg.travel && is_ride(*leg.travel);
    if (ride && !leg.lasts_s && !problems.told_of(place + "/lasts"))
        problems.add(place,
                     {.found = "a ride without \"lasts\"",
                      .expected = "how long it takes",
                      .advice = "write \"lasts\": \"50 min\""});
    if (!ride && leg.lasts_s)
        problems.add(place + "/lasts",
                     {.found = leg.travel
                                   ? fmt::format("\"lasts\" on a leg with \"travel\": \"{}\"",
                                                 word(*leg.travel))
                                   : std::string("\"lasts\" on a leg without \"travel\""),
                      .expected = "it on rides only: other legs take what the plan works out",
                      .advice = "write \"travel\": \"ride\" if others take you there"});
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
        else if (given && leg.travel && !on_foot(*leg.travel))
            refuse(key,
                   fmt::format("\"{}\" on a leg that is {}", key, past_word(*leg.travel)),
                   "it on foot only");
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

/// What a portage is to be carried by must be there.
void check_carry_by(const Trip& trip,
                    const TripLeg& leg,
                    const std::string& place,
                    Problems& problems) {
    const auto by_two = [](const auto& thing) { return thing.borne_by == 2; };
    if (leg.carry_by == CarryBy::cart && leg.cart != true)
        problems.add(place + "/carry_by",
                     {.found = "\"cart\" without \"cart\": true",
                      .expected = "it where a cart rolls",
                      .advice = "add \"cart\": true if the portage is a road or track"});
    if (leg.carry_by == CarryBy::two && std::none_of(trip.kit.begin(), trip.kit.end(), by_two) &&
        std::none_of(trip.craft.begin(), trip.craft.end(), by_two))
        problems.add(place + "/carry_by",
                     {.found = "\"two\", and nothing that two may carry",
                      .expected = "a boat or a thing of the kit with \"borne_by\": 2",
                      .advice = {}});
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

} // namespace

void check_route_keys(const Trip& trip, References& references, Problems& problems) {
    check_once(names_of(trip.route.places), {"/route/places", "name"}, problems);
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
        check_ride(leg, place, problems);
        check_undrawn(leg, place, problems);
        check_cart(trip, leg, place, problems);
        check_carry_by(trip, leg, place, problems);
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

} // namespace tumpline::planner
