#include "cli/text/new_trip_text.h"

#include "cli/words/text_width.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string_view>

namespace tumpline::cli {

namespace {

using planner::FirstLeg;
using planner::FirstPlace;
using planner::FirstTrip;
using planner::PlaceKind;
using planner::Travel;

constexpr double far_off_m = 500.0; // a plan warns beyond that; so let the user decide
constexpr double long_walk_m = 3000.0;

/// A text as JSON.
std::string json_text(std::string_view text) {
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::string list_of(const std::vector<std::string>& texts) {
    std::vector<std::string> items;
    items.reserve(texts.size());
    for (const std::string& text : texts)
        items.push_back(json_text(text));
    return fmt::format("[{}]", fmt::join(items, ", "));
}

constexpr std::string_view opening =
    R"(// A first trip, made from tracks. It plans as it stands; what it says of people, boats and things
// is invented, so write yours. Lines behind // are not in force: take the // away to use them.
// Quantities have a unit: "970 g", "7 lb 4 oz", "12.5 km", "4 km/h", "25 min", "18 C".
{
  "tumpline": 1, // the version of this form
  // "$schema": "trip.schema.json", // where the schema lies, for editors that complete keys
)";

std::string file_head(const FirstTrip& trip, const FirstTripFiles& files) {
    return fmt::format(R"(  "name": {},
  // "start": "2027-06-18", // the date of day 1: daylight and weekdays hang on it
  // "units": "imperial", // what people read
  "time_zone": "{}", // by longitude alone; better a name like "Europe/Oslo"
)",
                       json_text(files.name),
                       trip.time_zone);
}

std::string route_head(const FirstTrip& trip, const FirstTripFiles& files) {
    std::string text = "  \"route\": {\n    \"tracks\": " + list_of(files.tracks) + ",\n";
    if (files.elevation.empty())
        text += fmt::format(
            "    // \"elevation\": [\"ground.tif\"], // rasters of the ground's height; {}\n",
            trip.heights ? "without, the tracks' own" : "without, NO CLIMB IS KNOWN");
    else
        text += "    \"elevation\": " + list_of(files.elevation) + ",\n";
    return text + R"(    // "step": "25 m", // of the height profile
    // "ascent_threshold": "5 m", // smaller swings of the ground are noise, not climb
    // "recorder": "gnss", // gnss or barometer: what recorded the tracks' own heights
    // One leg for each change between walking, carrying and paddling. More that a leg may say:
    //   "track": "...", "from": "...", "to": "..."   its track, and places at which it is cut from it
    //   "length": "11 km", "ascent": "620 m", "descent": "80 m"   in place of a track, from a guidebook
    //   "travel": "ride", "lasts": "50 min"   a bus, a shuttle, a ferry; needs no track
    //   "travel": "line"           up or down a river with the boat led: line, wade or pole
    //   "speed": "1.4 km/h"        lined, waded or poled: its pace along the shore
    //   "depth": "knee"            waded: depth of the water; knee, thigh or a length
    //   "terrain": "path"          on foot: path, rough-path, forest, off-path, brush, bog, sand, snow
    //   "footprint": "10 cm"       on foot in snow: how deep feet sink
    //   "night": true              on foot: walked in the dark
    //   "carries": "auto"          of a portage: 1, 1.5, 2, 3 or "auto"
    //   "boat_on_carry": "auto"    of a portage: rolled, inflated or auto
    //   "carry_by": "auto"         of a portage: hands, two, cart or auto
    //   "cart": true               of a portage: a cart rolls there
    //   "water": "lake"            afloat: lake, river or sea
    //   "class": "II"              afloat: the hardest water, I to VI
    //   "current": "4 km/h"        afloat: with you; negative against you
    //   "river_bed": {"type": "clean-straight-full", "depth": "1 m", "roughness": 0.03}
    //                              afloat: for an estimate of the current
    //   "scouts": 2                afloat: how many times one lands to look
    //   "open_crossing": true      afloat: far from shore
    //   "shelter": 0.5             afloat: share of the wind kept off
    //   "fetch": "4 km"            on a lake: open water to windward, for its waves
    //   "flow": {"gauge": "bridge", "normal": {"current": "5 km/h", "reading": "30 m3/s", "class": "II"},
    //            "low": {}, "high": {}, "now": "21 m3/s", "runnable": ["8 m3/s", "60 m3/s"],
    //            "times": [{"hours": ["10:00", "14:00"], "now": "45 m3/s"}]}   in place of "current"
    //   "weather": {"wind": "8 m/s"}   what is expected here, on top of the trip's
    //   "drinkable": true          afloat: whether the water can be drunk
    //   "instead_of": "..."        the name of the leg to which this one is an alternative
    //   "source": "...", "note": "..."   where it comes from, and from when; anything else
    "legs": [
)";
}

std::string leg_line(const FirstLeg& leg, bool last) {
    std::string line = fmt::format("      {{\"name\": {}, \"travel\": \"{}\"",
                                   json_text(one_line(leg.name)),
                                   planner::word(leg.travel));
    if (!leg.track.empty())
        line += ", \"track\": " + json_text(leg.track);
    if (!leg.from.empty())
        line += ", \"from\": " + json_text(leg.from);
    if (!leg.to.empty())
        line += ", \"to\": " + json_text(leg.to);
    if (leg.travel == Travel::walk)
        line += ", \"terrain\": \"path\"";
    if (leg.travel == Travel::portage)
        line += ", \"carries\": \"auto\"";
    if (leg.water)
        line += fmt::format(", \"water\": \"{}\"", planner::word(*leg.water));
    line += fmt::format("}}{} // {}: {}",
                        last ? "" : ",",
                        planner::show_distance(leg.length_m, planner::UnitSystem::metric),
                        one_line(leg.why));
    if (leg.water == planner::Water::river)
        line += "; ask for its class, current and hazards";
    return line + "\n";
}

constexpr std::string_view places_head = R"(    ],
    // Kinds: start, finish, put-in, take-out, camp, water (dependable drinking water), resupply,
    // cache, exit (a way out to help or a road), hazard, ford. More that a place may say:
    //   "at": [13.1021, 61.5210]   longitude, latitude; left out: the waypoint of that name;
    //                              or along the route: "km 41", "km 3.2 of LEG"
    //   "water": true              of a camp: whether it has drinking water
    //   "holds": 4                 of a camp: how many people
    //   "closed": ["2027-06-20"], "closed_weekdays": ["sunday"]   when it cannot be used
    //   "depth": "knee", "speed": "0.8 m/s"   of a ford
    //   "food": "2 kg"             of a resupply or cache: in place of what the plan needs
    //   "note": "..."
    "places": [
)";

bool in_force(const FirstPlace& place) {
    return place.kind.has_value() && place.off_m <= far_off_m;
}

std::string place_line(const FirstPlace& place, bool last) {
    std::string line = fmt::format("      {}{{\"name\": {}, \"kind\": \"{}\"",
                                   in_force(place) ? "" : "// ",
                                   json_text(place.name),
                                   planner::word(place.kind.value_or(PlaceKind::camp)));
    if (place.at)
        line += fmt::format(", \"at\": [{}, {}]",
                            planner::show_number(place.at->lon_deg, 7),
                            planner::show_number(place.at->lat_deg, 7));
    line += fmt::format("}}{} // km {:.1f}", last ? "" : ",", place.along_m / 1000.0);
    if (place.off_m > far_off_m)
        line += fmt::format(", but {:.1f} km off the route", place.off_m / 1000.0);
    else if (place.off_m >= 1.0)
        line += fmt::format(", {:.0f} m off", place.off_m);
    if (!place.kind)
        line += "; the file does not tell its kind";
    return line + "\n";
}

/// The last line is one in force: those that are not would leave a comma behind.
std::string places(const FirstTrip& trip) {
    std::vector<const FirstPlace*> order;
    for (const FirstPlace& place : trip.places)
        order.push_back(&place);
    const auto last = std::find_if(
        order.rbegin(), order.rend(), [](const FirstPlace* place) { return in_force(*place); });
    if (last != order.rend())
        std::rotate(last.base() - 1, last.base(), order.end());
    std::string text;
    for (const FirstPlace* place : order)
        text += place_line(*place, place == order.back());
    return text + "    ]\n  },\n";
}

constexpr std::string_view party = R"(  "party": [
    {
      "name": "first person", // by which things and boats mean this person
      // "height": "171 cm", // height, age and sex: what the body needs at rest
      // "age": 41,
      // "sex": "female",
      // "carry_limit": "22 kg", // the heaviest pack on walks
      // "portage_limit": "30 kg", // the heaviest load on portages
      // "pack_volume": "60 L", // what the backpack holds
      // "pack_length": "60 cm", // inside it, from the bottom to the top: whether a paddle goes in
      // "pace": 1.0, // factor on the walking model's level speed; `tumpline pace` learns it
      // "level_speed": "4.5 km/h", // on the level, for the model "constant"
      // "class": "II", // the hardest water this person paddles
      // "fitness": "25 min", // to climb 300 m over 800 m without hurry: Tranter's hours beside each day
      "body": "75 kg"
    }
  ],
)";

std::string craft(const FirstTrip& trip) {
    double walked_m = 0.0;
    bool afloat = false;
    for (const FirstLeg& leg : trip.legs) {
        walked_m += leg.travel == Travel::walk ? leg.length_m : 0.0;
        afloat = afloat || leg.travel != Travel::walk;
    }
    if (!afloat)
        return "  \"craft\": [], // boats: none, as no leg goes by water\n";
    const bool carried_far = walked_m > long_walk_m;
    return fmt::format(R"(  "craft": [
    {{
      "name": "boat",
      "kind": "{}", // packraft, inflatable, solo-canoe, tandem-canoe or kayak
      // "payload": "160 kg", // what it may bear, people included
      // "calm_speed": "4.5 km/h", // through calm water, loaded, all day
      // "bags": ["70 L", "70 L"], // its two bags, left and right
      // "wet": 0.15, // water clinging after use, as a share of the mass
      // "class": "II", // the hardest water it is meant for
      // "wind_ceiling": "20 km/h", // no open crossing in stronger wind
      // "borne_by": 1, // 2: two may carry it over a portage, one at each end
      // "rolled": "12 L", // its volume when rolled up
      // "rolls_up": true, // whether it goes rolled into a pack
      // "waterplane": "1.3 m2", // area of the waterline: how much deeper a load lays it
      // "freeboard": "20 cm", // side over the water with its crew and no goods; needs the waterplane
      // "deck": "open", // open, spray-deck or self-bailing
      // "thigh_straps": true, // usual from class III
      // "suits": ["lake", "river II"], // the water that it is made for; also sea
      "mass": "{}", // with what stays attached
      "crew": ["first person"]
    }}
  ],
)",
                       carried_far ? "packraft" : "solo-canoe",
                       carried_far ? "3.5 kg" : "22 kg");
}

constexpr std::string_view kit_head =
    R"(  // Boats to choose from: "tumpline craft" plans the trip with each of them.
  //   "craft_choices": [{"name": "light boat", "mass": "2.1 kg", "payload": "130 kg", "class": "II", "seats": 1, "price": 900},
  //                     {"name": "long paddle", "kind": "paddle", "mass": "900 g", "paddle": {"length": "230 cm"}, "price": 190}]
  //   "replaces": ["boat"]   the boats in whose place it comes, where not by its seats
  // Things and what they weigh: put them on a scale. More that a thing may say:
  //   "count": 2             how many; "mass" is of one
  //   "for": "party"         or a member's name; left out: shared out among all
  //   "ashore", "afloat"     packed, worn or used
  //   "when": {"class": "III", "rain": true, "water_below": "12 C", "night_below": "0 C", "snow": true, "open_crossing": true}
  //                          comes only if all of these hold; a list: if any of them does
  //   "bring": true          comes (or, with false, stays) whatever "when" says
  //   "in": "barrel"         the piece in which it is carried
  //   "volume": "8 L"        packed
  //   "borne_by": 2          two may carry it over a portage between them
  //   "cart_payload": "60 kg"   it is a cart, and takes so much
  //   "at_hand": true        not stowed in the boat's bags
  //   "stays_with": "..."    the member who carries it throughout
  //   "is": "life-jacket"    what it is for the rules of safety; also cold-suit, helmet, throw-bag,
  //                          first-aid, light, spare-paddle, shelter
  //   "must": true           always comes, and nothing proposes to leave it
  //   "bag": "left"          the bag of its boat in which it lies; left out: where it levels the boat
  //   "lies": "bow"          or stern: the end of its boat at which it lies
  //   "paddle": {"length": "220 cm", "pieces": 4, "packed_length": "62 cm", "stroke": "low"}   or high: it is one
  //   "gets_wet": true       heavier after use on the water, until dried
  //   "wet": 0.5             by how much: the water as a share of its mass
  "kit": [
)";

constexpr std::string_view kit_afloat =
    R"(    {"item": "paddle", "mass": "950 g", "for": "first person", "afloat": "used"},
    {"item": "life jacket", "mass": "600 g", "is": "life-jacket", "for": "first person", "afloat": "worn"},
    {"item": "dry suit", "mass": "1.2 kg", "is": "cold-suit", "for": "first person", "afloat": "worn", "when": {"water_below": "15 C"}},
)";

constexpr std::string_view kit_all =
    R"(    {"item": "tent", "mass": "2 kg", "is": "shelter"},
    {"item": "stove and pot", "mass": "500 g"},
    {"item": "first-aid bag", "mass": "400 g", "is": "first-aid"},
    {"item": "repair kit", "mass": "300 g"},
    {"item": "sleeping bag and mat", "mass": "1.6 kg", "for": "first person"},
    {"item": "rain clothes", "mass": "600 g", "for": "first person", "when": {"rain": true}},
    {"item": "boots and clothes on the body", "mass": "2.5 kg", "for": "first person", "ashore": "worn", "afloat": "worn"},
    {"item": "clothes in the pack", "mass": "1.8 kg", "for": "first person"}
  ],
)";

constexpr std::string_view supplies = R"(  "food": {
    // "ration": "energy", // as much as the effort asks; or a mass per person and day: "700 g"
    // "energy_density": "4.0 kcal/g", // of the food without packaging
    // "replace": 0.9, // share of the energy spent that is eaten
    // "packaging": 0.08, // as a share of the food's mass; it stays as waste
    // "shares": {"breakfast": 0.25, "trail": 0.4, "dinner": 0.35}, // of a day
    // "first_meal": "trail", // breakfast, trail or dinner: the first from the pack
    // "last_meal": "trail", // and the last
    // "in": "barrel", // the container in which it is one piece
    // "container": "60 L", // what that container holds
    // "volume": "2.5 L/kg", // packed
    "reserve_days": 1 // days of food that nobody plans to eat
  },
  "water": {
    // "walking": "0.5 L/h", // per person; left out: by temperature and effort
    // "paddling": "0.3 L/h",
    // "camp": "2 L", // per person and night
    // "reserve": "0.5 L", // per person, never drunk by plan
    // "stow": "bags", // afloat: bottle-at-hand (a litre each, the rest in the bags), bags, at-hand
    "capacity": "4 L" // what each person's vessels hold
  },
  "fuel": {
    // "per_litre": "16.5 g", // fuel to boil one litre
    // "stove": "gas", // gas, gas-exchanger, white-gas, ethanol, methanol, hexamine
    // "start": "10 C", // of the water, or of the snow, before it is heated
    // "altitude": "2000 m", // where water is only brought to the boil; left out: 100 C
    // "container": "150 g", // one empty container
    // "container_holds": "230 g", // fuel in one
    // "reserve": 0.15, // share on top
    // "melt_snow": false, // true: the water is melted first
    "boiled": "2 L" // water boiled per person and day
  },
)";

constexpr std::string_view changeovers =
    R"(  // How long these take your party; they are often half of the day.
  "changeovers": {
    // "boots_to_boat": "40 min", // from walking to paddling
    // "boat_to_boots": "60 min", // from paddling to walking
    // "landing": "10 min", // at a portage, the boat left as it is
    // "scout": "15 min", // each time one lands to look
    "break_camp": "90 min" // from waking to setting off
  },
)";

std::string times(const FirstTrip& trip) {
    std::vector<std::string> camps;
    std::string finish = "Finish";
    for (const FirstPlace& place : trip.places) {
        if (place.kind == PlaceKind::camp && in_force(place))
            camps.push_back(place.name);
        if (place.kind == PlaceKind::finish)
            finish = place.name;
    }
    return fmt::format(
        R"(  // Times to be kept, each worked backwards; "hard": a plan that misses it is no plan.
  "appointments": [
    // {{"what": "last bus", "at": {}, "day": 1, "by": "18:05", "margin": "90 min", "hard": false}}
  ],
  // What runs by a timetable; waiting for it at the end is part of the plan.
  //   "connections": [{{"what": "bus", "at": PLACE, "departs": ["Mo 09:10", "We,Fr 17:40"], "margin": "45 min"}},
  //                   {{"what": "boat taxi", "to": PLACE, "arrives": ["2027-06-18 07:35"]}}]
  // What must be booked: nights at a camp, days on a leg.
  //   "permits": [{{"for": PLACE, "dates": ["2027-06-15", "2027-07-31"], "people": 6, "note": "by post"}}]
  // What is laid down on the way and fetched at a later pass of the place.
  //   "leave": [{{"at": PLACE, "day": 2, "things": ["boat", "paddle", {{"food": "2 kg"}}, {{"fuel": "200 g"}}, {{"water": "2 L"}}]}},
  //             {{"at": PLACE, "pass": 2, "all_but": ["day bag"], "fetch_day": 4}}]
  "days": {{
    // "first_set_off": "12:00", // on day 1, where it differs
    // "hours": 8, // moving hours wished per day
    // "hours_limit": 10, // that no day may exceed
    // "nights": {}, // places in order, or "auto"; left out: wherever the hours end
    // "rest_days_after": [], // days after which a day without travel follows
    // "weather_days": 1, // days in hand
    // "rest_per_hour": "10 min",
    // "most_days": 10, // for "auto"
    // "dusk_is_limit": true, // nobody arrives after dusk
    // "halt": {{"from": "12:00", "to": "16:00", "above": "35 C"}}, // in the heat
    // "in_camp_before_dark": "90 min",
    "set_off": "08:00"
  }},
)",
        json_text(finish),
        camps.empty() ? "\"auto\"" : list_of(camps));
}

constexpr std::string_view closing =
    R"(  // What you expect; ask a forecast and the local authority before you leave. A list says what
  // changes, each entry limited by what stands in it:
  //   [{"wind": "2 m/s"}, {"hours": ["13:00", "18:00"], "wind": "8 m/s", "gusts": "12 m/s"},
  //    {"days": [2], "dates": ["2027-06-18", "2027-06-20"], "legs": ["..."], "snow_depth": "10 cm"}]
  "weather": {
    // "high": "20 C", // by day
    // "low": "5 C", // by night
    // "wind": "10 km/h", // over open water
    // "wind_from": 240, // degrees clockwise from north
    // "water": "10 C", // its temperature
    // "snow": false,
    // "humidity": 0.5, // by day, for the heat
    "rain": true
  },
  // Published models; `tumpline models` explains each.
  "models": {
    // "load_effect": "equal-effort", // what a pack costs in time
    // "energy": "lcda-backpacking-2022", // what walking costs
    // "resting": "mifflin-st-jeor-1990", // what a body at rest costs
    // "paddling": "power-balance", // what wind, current and load do to a boat
    "walking": "swiss-signpost" // how fast one walks on slopes
  },
  // How uncertain things are, as shares, for `tumpline odds`:
  // "spread": {"pace": 0.1, "day_form": 0.05, "wind": 0.4, "current": 0.2, "changeovers": 0.25, "drinking": 0.15, "eating": 0.1},
  "contact": {
    // "text": "Lines of your own on the sheet that stays at home.",
    "alarm_after": "6 h" // after the planned return the person at home calls for help
  }
  // The ground under the route in the book, from files of your own:
  //   "map": {"layers": [{"file": "ground.gpkg", "layer": "lakes", "as": "water",
  //                       "where": "class = 'lake'", "name": "name", "credit": "whose data"}],
  //           "relief": true}
}
)";

} // namespace

std::string first_trip_text(const FirstTrip& trip, const FirstTripFiles& files) {
    std::string text(opening);
    text += file_head(trip, files);
    text += route_head(trip, files);
    for (const std::string& remark : trip.remarks)
        text += fmt::format("    // {}\n", one_line(remark));
    for (const FirstLeg& leg : trip.legs)
        text += leg_line(leg, &leg == &trip.legs.back());
    text += places_head;
    text += places(trip);
    text += party;
    text += craft(trip);
    text += kit_head;
    if (std::any_of(trip.legs.begin(), trip.legs.end(), [](const FirstLeg& leg) {
            return leg.travel != Travel::walk;
        }))
        text += kit_afloat;
    text += kit_all;
    text += supplies;
    text += changeovers;
    text += times(trip);
    text += closing;
    return text;
}

} // namespace tumpline::cli
