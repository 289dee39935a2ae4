#pragma once

#include "geo/layers/layer_source.h"
#include "geo/position.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/ways_of_travel.h"

#include <array>
#include <chrono>
#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

/// A trip as its file tells it: data only, SI units, every default still open where the file was
/// silent (std::optional) and filled from planner/defaults/defaults.h by the stage that needs it.
namespace tumpline::planner {

using Date = std::chrono::year_month_day;
using std::chrono::seconds;

enum class Terrain { path, rough_path, forest, off_path, brush, bog, sand, snow };
enum class Water { lake, river, sea };
/// 0 unknown or flat water, 1..6 as I..VI of the International Scale of River Difficulty.
using RiverClass = int;
enum class BoatOnCarry { rolled, whole, automatic };
/// How the heavy pieces go over a portage: each on one back, or by two who may, or on a cart.
enum class CarryBy { hands, two, cart };
enum class PlaceKind {
    start,
    finish,
    put_in,
    take_out,
    camp,
    water,
    resupply,
    cache,
    exit,
    hazard,
    ford,
    landing ///< made by the planner where legs meet; not a word of the trip file
};

/// Bed of a river, for an estimate of its current where none is given.
struct RiverBed {
    std::string type;                ///< a row of [Chow1959]'s table, docs/models/river.md
    std::optional<double> depth_m;   ///< mean depth, used as hydraulic radius
    std::optional<double> roughness; ///< Manning's n; overrides `type`
};

/// From an hour of the day to another, seconds after midnight; over midnight where `to_s` is the
/// earlier.
struct HoursOfDay {
    double from_s = 0.0;
    double to_s = 0.0;

    [[nodiscard]] bool holds(double after_midnight_s) const {
        return from_s < to_s ? after_midnight_s >= from_s && after_midnight_s < to_s
                             : after_midnight_s >= from_s || after_midnight_s < to_s;
    }
};

/// The first and the last of some days.
struct DateSpan {
    Date first{};
    Date last{};

    [[nodiscard]] bool holds(Date date) const { return first <= date && date <= last; }
};

struct Weather {
    std::optional<double> high_c;
    std::optional<double> low_c;    ///< at night
    std::optional<double> wind_mps; ///< over open water
    std::optional<double> wind_from_deg;
    std::optional<bool> rain;
    std::optional<double> water_c;
    std::optional<bool> snow;
    std::optional<double> gusts_mps = {};
    std::optional<double> humidity = {}; ///< relative, 0..1
    std::optional<double> snow_depth_m = {};

    [[nodiscard]] bool operator==(const Weather&) const = default;
};

/// Weather that holds within limits; one that is empty limits nothing.
struct WeatherEntry {
    Weather says;
    std::vector<int> days; ///< of the trip, from 1
    std::optional<DateSpan> dates;
    std::optional<HoursOfDay> hours;
    std::vector<std::string> legs; ///< names

    [[nodiscard]] bool limited() const { return !days.empty() || dates || hours || !legs.empty(); }
};

/// How much water a river carries.
enum class FlowLevel { low, normal, high };
inline constexpr std::array flow_levels{FlowLevel::low, FlowLevel::normal, FlowLevel::high};

/// What a gauge shows: a discharge, m3/s, or a stage over its own zero, m.
struct GaugeReading {
    double value = 0.0;
    bool stage = false;

    [[nodiscard]] bool operator==(const GaugeReading&) const = default;
};

/// A river at one level, as far as somebody knows it.
struct FlowColumn {
    std::optional<double> current_mps;
    std::optional<GaugeReading> reading;
    std::optional<RiverClass> river_class; ///< empty: the leg's
};

/// A level by its column or by a reading; one of them is set.
struct FlowNow {
    std::optional<FlowLevel> column;
    std::optional<GaugeReading> reading;

    [[nodiscard]] bool operator==(const FlowNow&) const = default;
};

/// What a dam lets go at some hours of every day.
struct Release {
    std::optional<HoursOfDay> hours;
    FlowNow now;
};

struct RiverFlow {
    std::string gauge;                                                   ///< its name; may be empty
    std::array<std::optional<FlowColumn>, flow_levels.size()> columns{}; ///< by FlowLevel
    FlowNow now{.column = FlowLevel::normal, .reading = {}};             ///< outside the releases
    std::optional<std::array<GaugeReading, 2>> runnable = {};            ///< outside: no way down
    std::vector<Release> times = {};
    std::optional<RiverClass> leg_class = {}; ///< of the leg, where a column has none
    bool asked = false;                       ///< `now` is what was asked for beside the trip file
    bool now_given = false;                   ///< `now` is what the trip file says

    [[nodiscard]] const std::optional<FlowColumn>& column(FlowLevel level) const {
        return columns[static_cast<std::size_t>(level)];
    }
};

/// What a ride without a length takes of the route: too little to show, and enough to tell what
/// lies before it from what lies behind it.
inline constexpr double no_length_m = 0.001;

struct TripLeg {
    std::string name;
    std::optional<Travel> travel; ///< empty: read from the track's type, else walk
    std::string track;            ///< name of a track in the files, "all", or empty: next in order
    std::optional<double> length_m; ///< of a leg without a track: it has no line; `no_length_m` of
                                    ///< a ride that gives neither
    std::optional<double> ascent_m; ///< of the same, on foot; with `descent_m` or not at all
    std::optional<double> descent_m;
    std::string from, to; ///< names of places; empty: the track's ends
    std::optional<Terrain> terrain;
    std::optional<Water> water;
    std::optional<double> current_mps; ///< downstream positive; negative: travelled upstream
    std::optional<RiverClass> river_class;
    std::optional<double> carries; ///< 1, 1.5, 2 or 3; empty: automatic
    std::optional<BoatOnCarry> boat_on_carry;
    std::optional<CarryBy> carry_by; ///< empty: the quickest within the limits
    std::optional<bool> cart;        ///< of a portage: a road or track on which a cart rolls
    std::optional<RiverBed> bed;
    std::optional<bool> drinkable; ///< of the water paddled on; default: lake and river yes, sea no
    std::optional<double> shelter; ///< share of the wind kept off, 0..1
    std::optional<bool> open_crossing; ///< far from shore
    std::optional<double> footprint_m; ///< depth of footprints in snow
    std::optional<int> scouts;         ///< how many times one lands to look
    std::optional<bool> night;         ///< walked in the dark
    std::string instead_of;            ///< this leg is an alternative to the leg(s) of that name
    std::string source;                ///< where the description comes from and from when
    std::string note;
    std::optional<double> fetch_m = {};       ///< of open water to windward
    std::optional<WeatherEntry> weather = {}; ///< of its own; names no legs
    std::optional<RiverFlow> flow = {};       ///< `current_mps` and `river_class` come from it
    std::optional<double> lasts_s = {};       ///< of a ride
    std::optional<double> led_mps = {};       ///< along the shore, of a boat that is led
    std::optional<double> wading_m = {};      ///< depth of the water that is waded

    /// Of a leg afloat: a lake unless something else is said; only rivers are lined, waded or
    /// poled.
    [[nodiscard]] Water on_water() const {
        return water.value_or(travel && led(*travel) ? Water::river : Water::lake);
    }
};

/// A point of the route by its distance along it: "km 41", "mi 2 before the end of Lower river".
struct RouteDistance {
    double distance_m = 0.0;
    std::string leg;         ///< along this leg; empty: along the whole route
    bool before_end = false; ///< counted back from the end of it
};

struct TripPlace {
    std::string name;
    PlaceKind kind = PlaceKind::camp;
    std::optional<geo::Position> at;    ///< empty: the waypoint of that name in the tracks
    std::optional<RouteDistance> along; ///< in place of a position
    std::optional<bool> water;          ///< a camp with (true) or without (false) drinking water
    std::vector<Date> closed;           ///< dates on which it cannot be used
    std::vector<int> closed_weekdays;   ///< ISO weekdays, 1 Monday .. 7 Sunday
    std::optional<int> holds;           ///< people a camp holds
    std::optional<double> food_mass_kg; ///< of a cache or resupply: overrides what the stage needs
    std::string note;
    std::optional<double> depth_m = {};   ///< of a ford
    std::optional<double> speed_mps = {}; ///< of the water there
};

/// What recorded the heights of the tracks.
enum class HeightRecorder { gnss, barometer };

struct TripRoute {
    std::vector<std::filesystem::path> tracks; ///< made absolute or relative to the working folder
    std::vector<std::filesystem::path> elevation;
    std::vector<TripLeg> legs; ///< empty: every track in order
    std::vector<TripPlace> places;
    std::optional<double> step_m; ///< of the profile
    std::optional<double> ascent_threshold_m;
    std::optional<HeightRecorder> recorder; ///< empty: taken as a receiver's
};

enum class Sex { female, male };

struct Member {
    std::string name;
    double body_kg = 0.0;
    std::optional<double> height_m;
    std::optional<double> age_years;
    std::optional<Sex> sex;
    std::optional<double> carry_limit_kg;     ///< on walks
    std::optional<double> portage_limit_kg;   ///< on portages
    std::optional<double> pack_volume_l;      ///< of the backpack
    std::optional<double> pack_length_m = {}; ///< inside it, from the bottom to the top
    std::optional<double> pace;               ///< factor on the level speed, 1 as the model
    std::optional<double> level_speed_mps;    ///< for the walking model `constant`
    std::optional<RiverClass> river_class;    ///< the hardest class this member paddles
    std::optional<seconds> fitness; ///< to climb 300 m over 800 m, unhurried [Tranter1970]
};

enum class CraftKind { packraft, inflatable, solo_canoe, tandem_canoe, kayak };

/// How a boat keeps water out, or lets it out again.
enum class Deck { open, spray_deck, self_bailing };

/// Water that a boat is made for.
struct SuitedWater {
    Water water = Water::lake;
    RiverClass hardest = 0; ///< of a river; 0: not said
};

struct Craft {
    std::string name;
    std::optional<CraftKind> kind;
    double mass_kg = 0.0;
    std::optional<double> payload_kg; ///< people included
    std::vector<std::string> crew;    ///< names of members
    std::optional<double> calm_speed_mps;
    std::vector<double> bags_l;             ///< volumes of its bags: two (left, right) or none
    std::optional<double> wet_fraction;     ///< of its mass, clinging after use until dried
    std::optional<RiverClass> river_class;  ///< the hardest class it is meant for
    std::optional<double> wind_ceiling_mps; ///< no open crossing above this wind
    std::optional<bool> rolls_up;           ///< can be carried rolled in the pack
    std::optional<double> rolled_l;         ///< volume when rolled up
    std::optional<int> borne_by;            ///< 2: two may carry it, one at each end
    std::optional<double> waterplane_m2;    ///< area of the waterline, for the draft
    std::optional<double> freeboard_m;      ///< with its crew aboard and no goods
    std::optional<Deck> deck = {};
    std::vector<SuitedWater> suits = {}; ///< the water that it is made for; empty: not said
    std::optional<bool> thigh_straps = {};
};

enum class Stroke { low, high };

/// What a paddle is like.
struct PaddleSpec {
    std::optional<double> length_m = {};
    std::optional<int> pieces = {};             ///< into which it comes apart
    std::optional<double> packed_length_m = {}; ///< of the longest of them
    std::optional<Stroke> stroke = {};          ///< for which it is made
};

/// A boat that the party might take in place of one of its own, whose crew it gets; or a paddle in
/// place of paddles of the kit.
struct CraftChoice : Craft {
    bool is_paddle = false; ///< `kind` is "paddle": of a boat's keys name and mass
    std::optional<PaddleSpec> paddle = {};
    int seats = 1;                     ///< it takes the place of each boat with so many aboard
    std::vector<std::string> replaces; ///< or of these boats or paddles of the trip, by name
    std::optional<double> price;       ///< of one, in the party's own money
};

/// What an item does in one state.
enum class ItemUse { packed, worn, used };

/// All keys that are set must hold; an item's `when` is a list of which any suffices.
struct Condition {
    std::optional<RiverClass> river_class; ///< comes from that class upwards
    std::optional<bool> rain;
    std::optional<double> water_below_c;
    std::optional<double> night_below_c;
    std::optional<bool> snow;
    std::optional<bool> open_crossing;
};

/// What a thing is for the rules of safety; never guessed from its name.
enum class SafetyGear {
    life_jacket,
    cold_suit, ///< dry suit or wetsuit
    helmet,
    throw_bag,
    first_aid,
    light,
    spare_paddle,
    shelter
};

/// Of the two bags of a craft.
enum class BagSide { left, right };
enum class BoatEnd { bow, stern };

struct KitItem {
    std::string name;
    double mass_kg = 0.0; ///< of one
    int count = 1;
    std::string owner; ///< a member's name, or empty: the party's
    ItemUse ashore = ItemUse::packed;
    ItemUse afloat = ItemUse::packed;
    std::vector<Condition> when; ///< empty: always comes
    std::optional<bool> bring;   ///< overrides `when`; recorded in the plan
    std::string piece;           ///< items of one piece are carried together ("in")
    std::optional<double> volume_l;
    bool at_hand = false;         ///< kept out of the stowed bags afloat
    std::optional<SafetyGear> is; ///< empty: nothing that a rule asks for
    bool must = false;            ///< always comes, and no remedy leaves it at home
    std::optional<BagSide> bag;   ///< where it lies afloat; empty: where it levels the boat
    std::string bearer;           ///< party item that must stay with this member
    std::optional<int> borne_by;  ///< 2: two may carry it over a portage, one at each end
    std::optional<double> cart_payload_kg; ///< of a cart: what it takes
    bool gets_wet = false;                 ///< lines and the like: heavier after use on the water
    std::optional<double> wet_fraction; ///< of its mass, clinging until dried; implies `gets_wet`
    std::optional<PaddleSpec> paddle = {}; ///< it is one
    std::optional<BoatEnd> lies = {};      ///< afloat; empty: not said

    /// All of the count, dry.
    [[nodiscard]] double all_kg() const { return mass_kg * count; }
};

enum class Meal { breakfast, trail, dinner };

struct Food {
    std::optional<double> ration_kg; ///< fixed per person and day; empty: by energy
    std::optional<double> energy_density_j_per_kg;
    std::optional<double> replace;   ///< share of the energy spent that is eaten
    std::optional<double> packaging; ///< share of the food's mass, stays as waste
    std::optional<double> reserve_days;
    std::optional<std::array<double, 3>> shares; ///< breakfast, trail, dinner; sum 1
    std::optional<Meal> first_meal;              ///< first eaten from the pack on day 1
    std::optional<Meal> last_meal;               ///< last eaten from the pack on the last day
    std::string piece; ///< container that is one piece on a portage ("in")
    std::optional<double> volume_l_per_kg;
    std::optional<double> container_l; ///< what the container holds
};

/// Where the water lies afloat: a bottle of each at hand and the rest in the bags, all in the bags,
/// or all at hand.
enum class WaterStow { bottle_at_hand, bags, at_hand };

struct DrinkingWater {
    std::optional<double> walking_lps; ///< litres per second
    std::optional<double> paddling_lps;
    std::optional<double> camp_l;     ///< per person and night
    std::optional<double> capacity_l; ///< vessels per person
    std::optional<double> reserve_l;  ///< per person, never drunk by plan
    std::optional<WaterStow> stow = {};
};

struct Fuel {
    std::optional<double> boiled_l; ///< per person and day
    std::optional<double> kg_per_litre;
    std::optional<double> start_c; ///< of the water, or of the snow, before it is heated
    std::optional<double>
        altitude_m;    ///< where the water is only brought to the boil, not cooked in
    std::string stove; ///< a row of docs/models/stove_fuel.md; empty: gas
    std::optional<double> container_kg;       ///< empty mass of one container
    std::optional<double> container_holds_kg; ///< fuel in one; empty: one container whatever
    std::optional<double> reserve;            ///< share on top
    std::optional<bool> melt_snow;
};

struct Changeovers {
    std::optional<seconds> boots_to_boat;
    std::optional<seconds> boat_to_boots;
    std::optional<seconds> landing;
    std::optional<seconds> scout;
    std::optional<seconds> break_camp; ///< from waking to setting off
};

struct Appointment {
    std::string what;
    std::string at; ///< a place
    int day = 1;
    seconds by{}; ///< local time of day
    seconds margin{};
    bool hard = false; ///< missing it is a stop; otherwise a caution
};

/// An hour of a timetable: on a date, or on weekdays; neither: every day.
struct TimetableHour {
    std::optional<Date> date = {};
    std::vector<int> weekdays = {}; ///< ISO weekdays, 1 Monday .. 7 Sunday
    seconds at{};                   ///< local time of day

    [[nodiscard]] bool operator==(const TimetableHour&) const = default;
};

/// What runs by a timetable: away from the end of the route, or to its start.
struct Connection {
    std::string what;
    std::string place;
    bool to_start = false; ///< `times` are arrivals at the start; else departures from the end
    std::vector<TimetableHour> times = {};
    seconds margin{}; ///< to be there before it departs, or to get going after it has arrived
};

/// What must be booked for a place or a leg.
struct Permit {
    std::string where;                   ///< a place or a leg
    std::optional<DateSpan> dates = {};  ///< on which it can be had; empty: always
    std::optional<int> most_people = {}; ///< in one party
    std::string note;
};

/// No travel between two hours of days that are hot.
struct MiddayHalt {
    double from_s = 0.0; ///< local time of day
    double to_s = 0.0;
    std::optional<double> above_c; ///< the day's high; empty: every day
};

struct Days {
    std::optional<seconds> set_off;       ///< local time of day
    std::optional<seconds> first_set_off; ///< on day 1, where it differs
    std::optional<double> hours;          ///< moving hours wished per day
    std::optional<double> hours_limit;    ///< hard limit
    bool nights_auto = false;
    std::vector<std::string> nights;  ///< names of places; empty without auto: by hours
    std::vector<int> rest_days_after; ///< after these days a day without travel
    std::optional<int> weather_days;  ///< days in hand, for the food and the odds
    std::optional<seconds> rest_per_hour;
    std::optional<int> most_days;      ///< for auto
    std::optional<bool> dusk_is_limit; ///< arriving after dusk is not allowed
    std::optional<MiddayHalt> halt = {};
    std::optional<seconds> in_camp_before_dark = {}; ///< wished
};

struct Models {
    std::string walking; ///< empty: the default
    std::string load_effect;
    std::string energy;
    std::string resting;
    std::string paddling;
};

/// Spread of what one does not know, for the odds: standard deviations of the logarithm of the
/// factor by which it is off (docs/odds.md).
struct Spread {
    std::optional<double> pace;
    std::optional<double> day_form;
    std::optional<double> wind;
    std::optional<double> current;
    std::optional<double> changeovers;
    std::optional<double> drinking;
    std::optional<double> eating;
};

/// Things laid down at a place, to be fetched at a later pass of it.
struct Leave {
    std::string at;                     ///< a place
    std::optional<int> day;             ///< empty: at the first pass, or at `pass`
    std::optional<int> pass;            ///< of the place, from 1
    std::vector<std::string> things;    ///< names, of the kit or of boats
    std::optional<double> food_kg = {}; ///< packaging included, out of what is to be eaten
    std::optional<double> fuel_kg = {}; ///< without its container, out of what is to be burnt
    std::optional<double> water_l = {}; ///< of the whole party
    bool all_but = false;               ///< `things` are those that come along
    std::optional<int> fetch_day;       ///< empty: at the next pass
};

/// Whether it lays down food, fuel or water.
[[nodiscard]] inline bool leaves_stores(const Leave& leave) {
    return leave.food_kg || leave.fuel_kg || leave.water_l;
}

/// What is drawn under the route.
struct TripMap {
    std::vector<geo::LayerSource> layers; ///< files made absolute or relative to the working folder
    std::optional<bool> relief;           ///< shade the ground where a raster is named; empty: yes
};

struct Contact {
    std::optional<seconds> alarm_after; ///< after the planned return
    std::string text;                   ///< lines of the user's own for the sheet
};

/// When one sets off in the morning where the trip file does not say: common practice, no source.
inline constexpr std::chrono::seconds usual_set_off = std::chrono::hours{8};

struct Trip {
    std::filesystem::path file;
    std::string name;
    Date start{};
    std::string time_zone;
    std::optional<UnitSystem> units; ///< what people read, unless they ask for others
    TripRoute route;
    std::vector<Member> party;
    std::vector<Craft> craft;
    std::vector<CraftChoice> craft_choices;
    std::vector<KitItem> kit;
    Food food;
    DrinkingWater water;
    Fuel fuel;
    Changeovers changeovers;
    std::vector<Appointment> appointments;
    std::vector<Connection> connections = {};
    std::vector<Permit> permits = {};
    Days days;
    Weather weather; ///< of the whole trip; of a list, what is hardest of its entries
    std::vector<WeatherEntry> forecast; ///< the entries of a list; empty where one holds throughout
    bool weather_listed = false;        ///< written as a list
    Models models;
    Spread spread;
    Contact contact;
    TripMap map;
    std::vector<Leave> leaves = {};
    std::optional<FlowLevel> flow_asked = {}; ///< in place of what the rivers carry now
};

} // namespace tumpline::planner
