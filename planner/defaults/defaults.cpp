#include "planner/defaults/defaults.h"

#include "geo/light/time_zone.h"
#include "planner/conditions/departures.h"
#include "planner/defaults/led_boats.h"
#include "planner/models/age.h"
#include "planner/models/catalogue.h"
#include "planner/models/compendium.h"
#include "planner/models/drinking.h"
#include "planner/models/river.h"
#include "planner/models/stove_fuel.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace tumpline::planner {

namespace {

constexpr std::string_view practice = "common practice, no source";
constexpr double kcal_per_g_in_j_per_kg = 4.184e6; // FAO 77: 1 kcal = 4.184 kJ

/// The one table of defaults. A value stands with the text by which the plan shows it and with its
/// source; the trip file's key says what it is of.
struct NumberDefault {
    double value;
    std::string_view shown;
    std::string_view source;
};

constexpr NumberDefault height{1.75, "175 cm", practice};
constexpr NumberDefault age{40.0, "40", practice};
constexpr NumberDefault pace{1.0, "1.0", practice};
constexpr NumberDefault wet_fraction{0.15, "0.15 of its mass", practice}; ///< of a soft hull
/// Nothing soaks in: drops on the skin and what a tilt does not pour out.
constexpr NumberDefault wet_hard_fraction{0.02, "0.02 of its mass", practice};
constexpr NumberDefault item_wet_fraction{0.5, "0.5 of its mass", "UIAA101"};
constexpr NumberDefault goods_per_head{20.0, "20 kg", practice};
constexpr NumberDefault energy_density{4.0 * kcal_per_g_in_j_per_kg, "4.0 kcal/g", practice};
constexpr NumberDefault replace{0.9, "0.9", practice};
constexpr NumberDefault packaging{0.08, "0.08", practice};
constexpr NumberDefault reserve_days{1.0, "1", practice};
constexpr NumberDefault water_capacity{4.0, "4 L", practice};
constexpr NumberDefault water_reserve{0.5, "0.5 L", practice};
constexpr NumberDefault boiled{2.0, "2 L", practice};
constexpr NumberDefault container{0.150, "150 g", practice};
constexpr NumberDefault fuel_reserve{0.15, "0.15", practice};
constexpr NumberDefault boots_to_boat{2400.0, "40 min", practice};
constexpr NumberDefault boat_to_boots{3600.0, "60 min", practice};
constexpr NumberDefault landing{600.0, "10 min", practice};
constexpr NumberDefault scout{900.0, "15 min", practice};
constexpr NumberDefault break_camp{5400.0, "90 min", practice};
constexpr NumberDefault set_off{
    std::chrono::duration<double>(usual_set_off).count(), "08:00", practice};
constexpr NumberDefault hours{8.0, "8", practice};
constexpr NumberDefault rest_per_hour{600.0, "10 min", "FM2118"};
constexpr NumberDefault high{20.0, "20 C", practice};
constexpr NumberDefault calm{0.0, "0 km/h", practice};

/// Fills values and remembers which were filled.
class Filler {
  public:
    explicit Filler(std::vector<DefaultUsed>& used) : used_(used) {}

    void note(std::string key, std::string_view shown, std::string_view source) {
        used_.push_back({std::move(key), std::string(shown), std::string(source)});
    }

    template <typename T>
    double number(const std::optional<T>& given, std::string key, const NumberDefault& otherwise) {
        if (given) {
            if constexpr (std::is_same_v<T, seconds>)
                return static_cast<double>(given->count());
            else
                return static_cast<double>(*given);
        }
        note(std::move(key), otherwise.shown, otherwise.source);
        return otherwise.value;
    }

    template <typename T>
    T choice(const std::optional<T>& given, std::string key, T otherwise, std::string_view shown) {
        if (given)
            return *given;
        note(std::move(key), shown, practice);
        return otherwise;
    }

  private:
    std::vector<DefaultUsed>& used_;
};

/// Somebody who bears nothing: loads are weighed against limits, so that none may be 0.
constexpr double least_limit_kg = 1e-6;

/// Shares of the body mass that somebody carries without a limit of their own.
struct LoadShares {
    double walk;
    double portage;
    std::string_view walk_source;
    std::string_view portage_source;
};

/// Those of an adult, less in old age as walking speed is less; of a child the middle of what is
/// told of school bags.
LoadShares load_shares(const Body& body) {
    constexpr double walk_share = 0.30;
    constexpr double portage_share = 0.45;
    if (is_child(body))
        return {child_load_share, child_load_share, "AAPBackpack", "AAPBackpack"};
    const double old = gait_ratio(body.age_years);
    if (old < 1.0)
        return {old * walk_share, old * portage_share, "Bohannon2011", "Bohannon2011"};
    return {walk_share, portage_share, "ADP390", "FM3218"};
}

std::string share_words(double share) {
    return fmt::format("{:.0f} % of body mass", 100.0 * share);
}

/// Whoever is sixty and more walks slower than the model by the measured ratio of their decade.
double usual_pace(const Member& member, const Body& body, std::string key, Filler& fill) {
    const double old = member.age_years ? gait_ratio(body.age_years) : 1.0;
    if (old >= 1.0)
        return fill.number(member.pace, std::move(key), pace);
    const std::string shown = fmt::format("{:.2f}", old);
    return fill.number(member.pace, std::move(key), {old, shown, "Bohannon2011"});
}

AssumedMember assume_member(const Member& member,
                            std::size_t index,
                            RestingModel resting,
                            bool constant_walk,
                            Filler& fill) {
    const auto key = [&](std::string_view name) {
        return fmt::format("/party/{}/{}", index, name);
    };
    const Body body{.mass_kg = member.body_kg,
                    .height_m = fill.number(member.height_m, key("height"), height),
                    .age_years = fill.number(member.age_years, key("age"), age),
                    // The higher resting expenditure of the two, so that food is rather too much
                    // than too little.
                    .male = fill.choice(member.sex, key("sex"), Sex::male, "male") == Sex::male};
    AssumedMember assumed{};
    assumed.body_kg = member.body_kg;
    assumed.age_years = body.age_years;
    assumed.resting_w = resting_w(resting, body);
    assumed.met_body_kg = member.body_kg;
    if (is_child(body)) {
        assumed.met_body_kg = assumed.resting_w / met_w(1.0, 1.0);
        assumed.least_day = {.of_travel_j = child_day_j(body, ChildDay::heavy),
                             .of_rest_j = child_day_j(body, ChildDay::moderate)};
    }
    assumed.pace = usual_pace(member, body, key("pace"), fill);
    if (constant_walk) // the model answers 1 m/s; the member's own level speed is the scale
        assumed.pace *=
            fill.number(member.level_speed_mps, key("level_speed"), {1.111, "4 km/h", practice});
    const LoadShares shares = load_shares(body);
    if (member.carry_limit_kg) {
        assumed.walk_limit_kg = std::max(*member.carry_limit_kg, least_limit_kg);
    } else {
        fill.note(key("carry_limit"), share_words(shares.walk), shares.walk_source);
        assumed.walk_limit_kg = shares.walk * member.body_kg;
    }
    if (member.portage_limit_kg) {
        assumed.portage_limit_kg = std::max(*member.portage_limit_kg, least_limit_kg);
    } else if (member.carry_limit_kg) {
        fill.note(key("portage_limit"), "as carry_limit", practice);
        assumed.portage_limit_kg = assumed.walk_limit_kg;
    } else {
        fill.note(key("portage_limit"), share_words(shares.portage), shares.portage_source);
        assumed.portage_limit_kg = shares.portage * member.body_kg;
    }
    assumed.river_class = member.river_class;
    return assumed;
}

HullKind to_hull(CraftKind kind) {
    switch (kind) {
    case CraftKind::packraft:
        return HullKind::packraft;
    case CraftKind::inflatable:
        return HullKind::inflatable;
    case CraftKind::solo_canoe:
        return HullKind::solo_canoe;
    case CraftKind::tandem_canoe:
        return HullKind::tandem_canoe;
    case CraftKind::kayak:
        return HullKind::kayak;
    }
    return HullKind::packraft;
}

/// Light craft roll up; heavier ones are canoes for as many as their crew.
std::pair<CraftKind, std::string_view> likely_kind(const Craft& craft) {
    constexpr double heaviest_roll_kg = 7.0; // two-person rafts weigh up to about 5 kg
    if (craft.mass_kg <= heaviest_roll_kg)
        return {CraftKind::packraft, "packraft"};
    if (craft.crew.size() >= 2)
        return {CraftKind::tandem_canoe, "tandem-canoe"};
    return {CraftKind::solo_canoe, "solo-canoe"};
}

AssumedCraft assume_craft(const Craft& craft,
                          std::size_t index,
                          const std::vector<Member>& party,
                          Filler& fill) {
    const auto key = [&](std::string_view name) {
        return fmt::format("/craft/{}/{}", index, name);
    };
    const auto [likely, likely_name] = likely_kind(craft);
    const CraftKind kind = fill.choice(craft.kind, key("kind"), likely, likely_name);
    AssumedCraft assumed{};
    assumed.kind = to_hull(kind);
    assumed.mass_kg = craft.mass_kg;
    assumed.payload_kg = craft.payload_kg.value_or(0.0);
    const double usual_mps = default_calm_speed_mps(assumed.kind);
    assumed.usual_speed = !craft.calm_speed_mps;
    assumed.calm_speed_mps =
        fill.number(craft.calm_speed_mps,
                    key("calm_speed"),
                    {usual_mps, fmt::format("{:.1f} km/h", usual_mps * 3.6), practice});
    const bool soft = kind == CraftKind::packraft || kind == CraftKind::inflatable;
    assumed.wet_kg =
        craft.mass_kg *
        fill.number(craft.wet_fraction, key("wet"), soft ? wet_fraction : wet_hard_fraction);
    const double ceiling_mps = default_wind_ceiling_mps(assumed.kind);
    assumed.wind_ceiling_mps =
        fill.number(craft.wind_ceiling_mps,
                    key("wind_ceiling"),
                    {ceiling_mps, fmt::format("{:.1f} m/s", ceiling_mps), practice});
    assumed.rolls_up = fill.choice(craft.rolls_up, key("rolls_up"), soft, soft ? "true" : "false");
    double crew_kg = 0.0;
    for (const std::string& name : craft.crew) {
        const auto at = std::find_if(
            party.begin(), party.end(), [&](const Member& member) { return member.name == name; });
        if (at == party.end())
            continue; // the trip file has said so
        assumed.crew.push_back(static_cast<std::size_t>(at - party.begin()));
        crew_kg += at->body_kg + goods_per_head.value;
    }
    assumed.reference_kg = craft.mass_kg + std::max(crew_kg, goods_per_head.value);
    return assumed;
}

/// In camp it is cooler than on the way by as much as the night is known to be.
double camp_air_c(const AssumedWeather& weather) {
    return weather.low_c ? 0.5 * (weather.high_c + *weather.low_c) : weather.high_c;
}

AssumedWater assume_water(const Trip& trip, const AssumedWeather& weather, Filler& fill) {
    const double high_c = weather.high_c;
    const auto rate = [&](const std::optional<double>& given, std::string key, Effort effort) {
        const double model_lps = drinking_lps(effort, high_c);
        return fill.number(given,
                           std::move(key),
                           {model_lps, fmt::format("{:.2f} L/h", model_lps * 3600.0), "TBMED507"});
    };
    AssumedWater water{};
    water.by_model = !trip.water.walking_lps || !trip.water.paddling_lps || !trip.water.camp_l;
    water.walking_lps = rate(trip.water.walking_lps, "/water/walking", Effort::moderate);
    water.carrying_lps =
        trip.water.walking_lps ? water.walking_lps : drinking_lps(Effort::hard, high_c);
    water.climbing_lps = water.carrying_lps;
    water.paddling_lps = rate(trip.water.paddling_lps, "/water/paddling", Effort::easy);
    water.halting_lps = drinking_lps(Effort::easy, high_c);
    water.camp_l = trip.water.camp_l;
    water.kitchen_l = kitchen_l;
    water.camp_lps = resting_lps(camp_air_c(weather));
    if (!water.camp_l)
        fill.note(
            "/water/camp",
            fmt::format("{:.1f} L and {:.2f} L/h in camp", kitchen_l, 3600.0 * water.camp_lps),
            "JequierConstant2010");
    water.capacity_l = fill.number(trip.water.capacity_l, "/water/capacity", water_capacity);
    water.reserve_l = fill.number(trip.water.reserve_l, "/water/reserve", water_reserve);
    water.stow =
        trip.craft.empty()
            ? trip.water.stow.value_or(WaterStow::bottle_at_hand)
            : fill.choice(
                  trip.water.stow, "/water/stow", WaterStow::bottle_at_hand, "bottle-at-hand");
    water.assumed_everywhere = std::none_of(
        trip.route.places.begin(), trip.route.places.end(), [](const TripPlace& place) {
            return place.kind == PlaceKind::water || place.water.has_value();
        });
    return water;
}

AssumedTimes assume_times(const Trip& trip, Filler& fill) {
    AssumedTimes times{};
    const Changeovers& given = trip.changeovers;
    times.boots_to_boat_s =
        fill.number(given.boots_to_boat, "/changeovers/boots_to_boat", boots_to_boat);
    times.boat_to_boots_s =
        fill.number(given.boat_to_boots, "/changeovers/boat_to_boots", boat_to_boots);
    times.landing_s = fill.number(given.landing, "/changeovers/landing", landing);
    times.scout_s = fill.number(given.scout, "/changeovers/scout", scout);
    times.break_camp_s = fill.number(given.break_camp, "/changeovers/break_camp", break_camp);
    times.set_off_s = fill.number(trip.days.set_off, "/days/set_off", set_off);
    times.first_set_off_s = trip.days.first_set_off
                                ? static_cast<double>(trip.days.first_set_off->count())
                                : times.set_off_s;
    if (trip.days.hours_limit)
        times.hours_limit_s = 3600.0 * *trip.days.hours_limit;
    if (!trip.days.hours && trip.days.hours_limit && *trip.days.hours_limit < hours.value) {
        fill.note("/days/hours", "as hours_limit", practice);
        times.hours_s = *times.hours_limit_s;
    } else {
        times.hours_s = 3600.0 * fill.number(trip.days.hours, "/days/hours", hours);
    }
    times.rest_per_hour_s =
        fill.number(trip.days.rest_per_hour, "/days/rest_per_hour", rest_per_hour);
    return times;
}

AssumedWeather assume_weather(const Trip& trip, Filler& fill) {
    const Weather& given = trip.weather;
    const auto key = [&](std::string_view name) {
        return fmt::format("/weather/{}{}", trip.weather_listed ? "0/" : "", name);
    };
    AssumedWeather weather{};
    if (!given.high_c && given.low_c && *given.low_c > high.value) {
        fill.note(key("high"), "as low", practice);
        weather.high_c = *given.low_c;
    } else {
        weather.high_c = fill.number(given.high_c, key("high"), high);
    }
    weather.low_c = given.low_c;
    weather.wind_mps = fill.number(given.wind_mps, key("wind"), calm);
    weather.wind_from_deg = given.wind_from_deg;
    if (given.wind_mps.value_or(0.0) > 0.0 && !given.wind_from_deg)
        fill.note(key("wind_from"), "from ahead on every course", practice);
    // What is not known comes along: an item for rain is packed unless the file says it stays dry.
    weather.rain_known = given.rain.has_value();
    weather.rain = fill.choice(given.rain, key("rain"), true, "true");
    weather.water_c = given.water_c;
    weather.snow = given.snow.value_or(false);
    return weather;
}

AssumedFood assume_food(const Food& given, Filler& fill) {
    AssumedFood food{};
    food.ration_kg = given.ration_kg;
    if (!given.ration_kg) {
        food.energy_density_j_per_kg =
            fill.number(given.energy_density_j_per_kg, "/food/energy_density", energy_density);
        food.replace = fill.number(given.replace, "/food/replace", replace);
    }
    food.packaging = fill.number(given.packaging, "/food/packaging", packaging);
    food.reserve_days = fill.number(given.reserve_days, "/food/reserve_days", reserve_days);
    food.shares = fill.choice(given.shares,
                              "/food/shares",
                              std::array{0.25, 0.40, 0.35},
                              "breakfast 0.25, trail 0.40, dinner 0.35");
    food.first_meal = fill.choice(given.first_meal, "/food/first_meal", Meal::trail, "trail");
    food.last_meal = fill.choice(given.last_meal, "/food/last_meal", Meal::dinner, "dinner");
    return food;
}

/// Fuel for a litre by the heat it takes; a figure of the user's own counts for water, and snow
/// takes more of it by the same heats.
double assume_fuel_per_litre(const Fuel& given, Filler& fill) {
    const bool snow = given.melt_snow.value_or(false);
    const Boil water{.start_c = default_start_c, .boil_c = sea_level_boil_c, .from_snow = false};
    Boil boil{.start_c = snow ? default_snow_c : default_start_c,
              .boil_c = sea_level_boil_c,
              .from_snow = snow};
    if (given.start_c)
        boil.start_c = snow ? std::min(*given.start_c, 0.0) : *given.start_c;
    if (given.altitude_m)
        boil.boil_c = boiling_point_c(*given.altitude_m);
    if (given.kg_per_litre)
        return snow ? *given.kg_per_litre * heat_j_per_kg(boil) / heat_j_per_kg(water)
                    : *given.kg_per_litre;
    if (given.stove.empty())
        fill.note("/fuel/stove", default_stove, practice);
    if (!given.start_c)
        fill.note("/fuel/start", fmt::format("{:.0f} C", boil.start_c), practice);
    const Stove burner = stove(given.stove.empty() ? default_stove : given.stove).value();
    const double kg_per_litre = fuel_kg_per_litre(burner, boil);
    fill.note("/fuel/per_litre", fmt::format("{:.1f} g", 1000.0 * kg_per_litre), "CengelBoles");
    return kg_per_litre;
}

AssumedFuel assume_fuel(const Fuel& given, Filler& fill) {
    AssumedFuel fuel{};
    fuel.boiled_l = fill.number(given.boiled_l, "/fuel/boiled", boiled);
    fuel.by_model = !given.kg_per_litre || given.melt_snow.value_or(false);
    fuel.kg_per_litre = assume_fuel_per_litre(given, fill);
    fuel.container_kg = fill.number(given.container_kg, "/fuel/container", container);
    fuel.container_holds_kg = given.container_holds_kg;
    fuel.reserve = fill.number(given.reserve, "/fuel/reserve", fuel_reserve);
    return fuel;
}

/// Water that clings to things after use on the water, per kit item.
std::vector<double> assume_wet_items(const std::vector<KitItem>& kit, Filler& fill) {
    std::vector<double> wet_kg;
    for (std::size_t k = 0; k < kit.size(); ++k) {
        const KitItem& item = kit[k];
        const double fraction =
            item.wet_fraction ? *item.wet_fraction
            : item.gets_wet
                ? fill.number(item.wet_fraction, fmt::format("/kit/{}/wet", k), item_wet_fraction)
                : 0.0;
        wet_kg.push_back(fraction * item.all_kg());
    }
    return wet_kg;
}

/// What an estimate of a river's current takes for granted.
void note_river_beds(const TripRoute& route, Filler& fill) {
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const TripLeg& leg = route.legs[i];
        if (!leg.bed || leg.current_mps)
            continue;
        const auto key = [&](std::string_view name) {
            return fmt::format("/route/legs/{}/river_bed/{}", i, name);
        };
        if (leg.bed->type.empty() && !leg.bed->roughness)
            fill.note(key("type"), default_bed, practice);
        if (!leg.bed->depth_m)
            fill.note(key("depth"), fmt::format("{:.1f} m", default_depth_m), practice);
    }
}

/// Paces of boats that are lined, waded with or poled.
void note_led_paces(const Trip& trip, Filler& fill) {
    for (std::size_t i = 0; i < trip.route.legs.size(); ++i) {
        const TripLeg& leg = trip.route.legs[i];
        if (leg.travel && led(*leg.travel) && !leg.led_mps)
            fill.note(fmt::format("/route/legs/{}/speed", i),
                      fmt::format("{:.1f} m/s", usual_led_mps(*leg.travel)),
                      practice);
    }
}

/// Under wind, what banks and bends keep off it.
void note_river_shelter(const Trip& trip, Filler& fill) {
    if (trip.weather.wind_mps.value_or(0.0) <= 0.0)
        return;
    for (std::size_t i = 0; i < trip.route.legs.size(); ++i) {
        const TripLeg& leg = trip.route.legs[i];
        if (leg.water == Water::river && !leg.shelter)
            fill.note(fmt::format("/route/legs/{}/shelter", i),
                      fmt::format("{:.1f}", river_shelter),
                      practice);
    }
}

/// The name chosen in the trip file, or the catalogue's default of that family.
std::string chosen(const std::string& spec, std::string_view family, std::string_view otherwise) {
    if (!spec.empty())
        return spec;
    for (const ModelEntry& entry : model_catalogue())
        if (entry.family == family && entry.is_default)
            return std::string(entry.name);
    return std::string(otherwise);
}

AssumedModels assume_models(const Models& spec, std::vector<ModelUsed>& used) {
    const auto use = [&](std::string_view family, const std::string& name) {
        std::string source(practice);
        for (const ModelEntry& entry : model_catalogue())
            if (entry.family == family && entry.name == name)
                source = std::string(entry.source);
        used.push_back({std::string(family), name, source});
        return name;
    };
    AssumedModels models{};
    models.walking =
        walking_model(use("walking", chosen(spec.walking, "walking", "swiss-signpost")))
            .value_or(WalkingModel::swiss_signpost);
    models.load_effect =
        use("load_effect", chosen(spec.load_effect, "load_effect", "equal-effort")) != "none";
    models.energy =
        carriage_model(use("energy", chosen(spec.energy, "energy", "lcda-backpacking-2022")))
            .value_or(CarriageModel::lcda_backpacking_2022);
    models.resting =
        resting_model(use("resting", chosen(spec.resting, "resting", "mifflin-st-jeor-1990")))
            .value_or(RestingModel::mifflin_st_jeor_1990);
    models.paddling =
        paddling_model(use("paddling", chosen(spec.paddling, "paddling", "power-balance")))
            .value_or(PaddlingModel::power_balance);
    return models;
}

/// Nobody sets off before what brings them has come, and its margin is over.
void wait_for_arrivals(const Trip& trip, Assumed& assumed) {
    double& set_off_s = assumed.times.first_set_off_s;
    for (const Connection& connection : trip.connections) {
        if (!connection.to_start)
            continue;
        const std::optional<ArrivalAtStart> arrival =
            arrival_at_start(connection,
                             assumed.start,
                             instant(assumed, {.day = 1, .after_midnight_s = set_off_s}),
                             assumed.time_zone);
        if (!arrival || !arrival->moves_set_off)
            continue;
        const geo::local_seconds ready =
            geo::to_local(arrival->at + connection.margin, assumed.time_zone);
        const std::chrono::local_days midnight{assumed.start};
        if (ready < midnight + std::chrono::days{1}) // else it comes too late for that day
            set_off_s = static_cast<double>((ready - midnight).count());
    }
}

} // namespace

Assumed assume(const Trip& trip) {
    Assumed assumed{};
    Filler fill(assumed.defaults);
    assumed.models = assume_models(trip.models, assumed.models_used);
    assumed.start = trip.start;
    if (!trip.start.ok()) {
        using namespace std::chrono;
        assumed.start = year{2000} / June / 21; // long light: the plan warns that it knows no date
        fill.note("/start", "2000-06-21", practice);
    }
    assumed.time_zone = trip.time_zone;
    if (trip.time_zone.empty()) {
        fill.note("/time_zone", "UTC", practice);
        assumed.time_zone = "UTC";
    }
    const bool constant_walk = assumed.models.walking == WalkingModel::constant;
    for (std::size_t i = 0; i < trip.party.size(); ++i)
        assumed.members.push_back(
            assume_member(trip.party[i], i, assumed.models.resting, constant_walk, fill));
    for (std::size_t i = 0; i < trip.craft.size(); ++i)
        assumed.craft.push_back(assume_craft(trip.craft[i], i, trip.party, fill));
    note_river_beds(trip.route, fill);
    note_river_shelter(trip, fill);
    note_led_paces(trip, fill);
    assumed.item_wet_kg = assume_wet_items(trip.kit, fill);
    assumed.weather = assume_weather(trip, fill);
    assumed.forecast = Forecast(trip);
    assumed.halt = trip.days.halt;
    assumed.food = assume_food(trip.food, fill);
    assumed.water = assume_water(trip, assumed.weather, fill);
    assumed.fuel = assume_fuel(trip.fuel, fill);
    assumed.times = assume_times(trip, fill);
    wait_for_arrivals(trip, assumed);
    return assumed;
}

} // namespace tumpline::planner
