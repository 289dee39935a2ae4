#include "tests/support/random_trip.h"

#include "planner/trip/sections.h"
#include "tests/support/random_draws.h"
#include "tests/support/random_route.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::test {

namespace {

using planner::Condition;
using planner::Craft;
using planner::CraftKind;
using planner::ItemUse;
using planner::KitItem;
using planner::Member;
using planner::PlaceKind;
using planner::Route;
using planner::Trip;
using std::chrono::minutes;
using std::chrono::seconds;

seconds random_minutes(int low, int high, Draws& draws) {
    return minutes(5 * draws.whole(low / 5, high / 5));
}

Region random_region(Draws& draws) {
    const std::vector<Region> regions{
        {.start = {.lat_deg = 61.5, .lon_deg = 13.1}, .time_zone = "Europe/Oslo"},
        {.start = {.lat_deg = 78.2, .lon_deg = 15.6}, .time_zone = "Arctic/Longyearbyen"},
        {.start = {.lat_deg = 48.1, .lon_deg = -91.3}, .time_zone = "America/Winnipeg"},
        {.start = {.lat_deg = 49.0, .lon_deg = -57.5}, .time_zone = "America/St_Johns"},
        {.start = {.lat_deg = -45.2, .lon_deg = 167.6}, .time_zone = "Pacific/Auckland"},
        {.start = {.lat_deg = -16.5, .lon_deg = 179.98}, .time_zone = "Pacific/Fiji"},
        {.start = {.lat_deg = 28.0, .lon_deg = 84.6}, .time_zone = "Asia/Kathmandu"},
        {.start = {.lat_deg = 0.1, .lon_deg = 18.2}, .time_zone = "Africa/Kinshasa"},
        {.start = {.lat_deg = -50.9, .lon_deg = -73.0}, .time_zone = "America/Punta_Arenas"}};
    return draws.one_of(regions);
}

std::vector<Member> random_party(Draws& draws) {
    const std::vector<std::string> names{"Ada", "Ben", "Cleo", "Dov", "Eli"};
    std::vector<Member> party(static_cast<std::size_t>(draws.whole(1, 5)));
    for (std::size_t i = 0; i < party.size(); ++i) {
        Member& member = party[i];
        member.name = names[i];
        member.body_kg = draws.in_steps(48.0, 108.0);
        if (draws.chance(0.7)) {
            member.height_m = draws.in_steps(1.5, 2.0);
            member.age_years = draws.whole(14, 75);
            member.sex = draws.chance(0.5) ? planner::Sex::female : planner::Sex::male;
        }
        if (draws.chance(0.6))
            member.carry_limit_kg = draws.in_steps(0.2, 0.4) * member.body_kg;
        if (draws.chance(0.4))
            member.portage_limit_kg = draws.in_steps(0.35, 0.6) * member.body_kg;
        if (draws.chance(0.5))
            member.pace = draws.in_steps(0.8, 1.2);
        if (draws.chance(0.2))
            member.level_speed_mps = draws.in_steps(0.9, 1.7);
        if (draws.chance(0.4))
            member.river_class = draws.whole(1, 4);
    }
    return party;
}

Craft random_craft(CraftKind kind, Draws& draws) {
    Craft craft;
    const bool canoe = kind == CraftKind::tandem_canoe;
    craft.kind = kind;
    craft.mass_kg = canoe ? draws.in_steps(17.0, 30.0) : draws.in_steps(1.5, 6.0);
    if (draws.chance(0.8))
        craft.payload_kg = canoe ? draws.in_steps(250.0, 450.0) : draws.in_steps(120.0, 220.0);
    if (draws.chance(0.7))
        craft.calm_speed_mps = draws.in_steps(0.9, 1.6);
    if (draws.chance(0.6))
        craft.bags_l = {draws.in_steps(30.0, 80.0), draws.in_steps(30.0, 80.0)};
    if (draws.chance(0.4))
        craft.wet_fraction = draws.in_steps(0.0, 0.3);
    if (draws.chance(0.3))
        craft.river_class = draws.whole(2, 5);
    if (draws.chance(0.3))
        craft.wind_ceiling_mps = draws.in_steps(5.0, 12.0);
    craft.rolls_up = !canoe;
    return craft;
}

/// Everybody in one craft: two by two in canoes, or one by one.
std::vector<Craft> random_fleet(const std::vector<Member>& party, Draws& draws) {
    std::vector<Craft> fleet;
    std::size_t seated = 0;
    while (seated < party.size()) {
        const bool two = seated + 1 < party.size() && draws.chance(0.35);
        Craft craft = random_craft(two ? CraftKind::tandem_canoe : CraftKind::packraft, draws);
        craft.name = fmt::format("boat {}", fleet.size() + 1);
        for (int seat = 0; seat < (two ? 2 : 1); ++seat)
            craft.crew.push_back(party[seated++].name);
        fleet.push_back(std::move(craft));
    }
    return fleet;
}

Condition random_condition(Draws& draws) {
    Condition condition;
    switch (draws.whole(0, 5)) {
    case 0:
        condition.river_class = draws.whole(1, 5);
        break;
    case 1:
        condition.rain = draws.chance(0.8);
        break;
    case 2:
        condition.water_below_c = draws.whole(5, 20);
        break;
    case 3:
        condition.night_below_c = draws.whole(-10, 10);
        break;
    case 4:
        condition.snow = true;
        break;
    default:
        condition.open_crossing = true;
        break;
    }
    if (draws.chance(0.2))
        condition.rain = true;
    return condition;
}

struct ItemMass {
    double least_kg;
    double most_kg;
};

KitItem random_item(std::string name, const ItemMass& mass, Draws& draws) {
    KitItem item;
    item.name = std::move(name);
    item.mass_kg = draws.in_steps(mass.least_kg, mass.most_kg);
    if (draws.chance(0.3))
        item.volume_l = item.mass_kg * draws.in_steps(1.0, 6.0);
    item.at_hand = draws.chance(0.1);
    return item;
}

void add_own_things(Trip& trip, const Member& member, Draws& draws) {
    const auto add = [&](KitItem item) {
        item.owner = member.name;
        trip.kit.push_back(std::move(item));
    };
    add(random_item(member.name + "'s bedding", {.least_kg = 1.0, .most_kg = 2.5}, draws));
    KitItem boots = random_item(member.name + "'s boots", {.least_kg = 0.6, .most_kg = 1.8}, draws);
    boots.ashore = ItemUse::worn;
    boots.afloat = draws.chance(0.5) ? ItemUse::worn : ItemUse::packed;
    add(std::move(boots));
    if (!trip.craft.empty()) {
        KitItem paddle =
            random_item(member.name + "'s paddle", {.least_kg = 0.7, .most_kg = 1.2}, draws);
        paddle.afloat = ItemUse::used;
        add(std::move(paddle));
        KitItem jacket =
            random_item(member.name + "'s life jacket", {.least_kg = 0.4, .most_kg = 1.0}, draws);
        jacket.afloat = ItemUse::worn;
        jacket.ashore = draws.chance(0.1) ? ItemUse::worn : ItemUse::packed;
        add(std::move(jacket));
    }
    const int others = draws.whole(0, 5);
    for (int i = 0; i < others; ++i) {
        KitItem item = random_item(fmt::format("{}'s thing {}", member.name, i + 1),
                                   {.least_kg = 0.0, .most_kg = 2.0},
                                   draws);
        item.count = draws.chance(0.2) ? draws.whole(2, 4) : 1;
        if (draws.chance(0.4))
            item.when.push_back(random_condition(draws));
        if (!item.when.empty() && draws.chance(0.3))
            item.when.push_back(random_condition(draws));
        if (draws.chance(0.1))
            item.bring = draws.chance(0.5);
        if (draws.chance(0.2))
            item.piece = member.name + "'s bag";
        add(std::move(item));
    }
}

void add_common_things(Trip& trip, Draws& draws) {
    const int things = draws.whole(0, 10);
    for (int i = 0; i < things; ++i) {
        KitItem item = random_item(
            fmt::format("common thing {}", i + 1), {.least_kg = 0.05, .most_kg = 4.0}, draws);
        if (draws.chance(0.2))
            item.when.push_back(random_condition(draws));
        if (draws.chance(0.15))
            item.bearer = draws.one_of(trip.party).name;
        if (draws.chance(0.15))
            item.piece = "barrel";
        // What is in one container stays with one person.
        for (const KitItem& other : trip.kit)
            if (!item.piece.empty() && other.piece == item.piece && !other.bearer.empty())
                item.bearer = other.bearer;
        item.gets_wet = draws.chance(0.1);
        trip.kit.push_back(std::move(item));
    }
}

void draw_provisions(Trip& trip, Draws& draws) {
    if (draws.chance(0.3))
        trip.food.ration_kg = draws.in_steps(0.5, 1.1);
    if (draws.chance(0.5))
        trip.food.energy_density_j_per_kg = draws.in_steps(3.2e3, 5.4e3) * 4184.0;
    if (draws.chance(0.5))
        trip.food.replace = draws.in_steps(0.6, 1.0);
    if (draws.chance(0.5))
        trip.food.packaging = draws.in_steps(0.0, 0.15);
    if (draws.chance(0.5))
        trip.food.reserve_days = draws.whole(0, 4) * 0.5;
    if (draws.chance(0.2))
        trip.food.shares = std::array{0.25, 0.375, 0.375};
    if (draws.chance(0.2))
        trip.food.first_meal = draws.one_of(
            std::vector{planner::Meal::breakfast, planner::Meal::trail, planner::Meal::dinner});
    if (draws.chance(0.2))
        trip.food.last_meal = draws.one_of(
            std::vector{planner::Meal::breakfast, planner::Meal::trail, planner::Meal::dinner});
    if (draws.chance(0.2))
        trip.food.piece = "barrel";

    if (draws.chance(0.5))
        trip.water.walking_lps = draws.in_steps(0.2, 0.9) / 3600.0;
    if (draws.chance(0.5))
        trip.water.paddling_lps = draws.in_steps(0.1, 0.6) / 3600.0;
    if (draws.chance(0.5))
        trip.water.camp_l = draws.in_steps(1.0, 4.0);
    trip.water.capacity_l = draws.in_steps(2.0, 12.0);
    if (draws.chance(0.4))
        trip.water.reserve_l = draws.in_steps(0.0, 1.0);

    if (draws.chance(0.5))
        trip.fuel.boiled_l = draws.in_steps(0.0, 4.0);
    if (draws.chance(0.3))
        trip.fuel.kg_per_litre = draws.in_steps(0.008, 0.03);
    if (draws.chance(0.5))
        trip.fuel.container_kg = draws.in_steps(0.0, 0.3);
    if (draws.chance(0.4))
        trip.fuel.container_holds_kg = draws.in_steps(0.1, 0.5);
    if (draws.chance(0.1))
        trip.fuel.melt_snow = true;
}

void draw_days(Trip& trip, const Route& route, Draws& draws) {
    if (draws.chance(0.5))
        trip.changeovers.boots_to_boat = random_minutes(0, 60, draws);
    if (draws.chance(0.5))
        trip.changeovers.boat_to_boots = random_minutes(0, 90, draws);
    if (draws.chance(0.5))
        trip.changeovers.landing = random_minutes(0, 30, draws);
    if (draws.chance(0.3))
        trip.changeovers.scout = random_minutes(0, 30, draws);

    if (draws.chance(0.7))
        trip.days.set_off = random_minutes(5 * 60, 11 * 60, draws);
    if (draws.chance(0.2))
        trip.days.first_set_off = random_minutes(8 * 60, 15 * 60, draws);
    if (draws.chance(0.7))
        trip.days.hours = draws.whole(4, 10);
    if (draws.chance(0.5))
        trip.days.rest_per_hour = random_minutes(0, 15, draws);
    if (draws.chance(0.2))
        trip.days.rest_days_after.push_back(draws.whole(1, 3));
    if (draws.chance(0.2))
        trip.days.weather_days = draws.whole(0, 2);

    std::vector<const planner::RoutePlace*> camps;
    for (const planner::RoutePlace& place : route.places)
        if (place.kind == PlaceKind::camp && place.along_m > 0.0)
            camps.push_back(&place);
    const double how = draws.part();
    if (how < 0.25 && !camps.empty()) {
        trip.days.nights_auto = true;
    } else if (how < 0.75) {
        double last_m = 0.0;
        for (const planner::RoutePlace* camp : camps) {
            if (camp->along_m - last_m < draws.between(5e3, 15e3))
                continue;
            trip.days.nights.push_back(camp->name);
            last_m = camp->along_m;
        }
    }
    const bool appointment = !route.places.empty() && draws.chance(0.4);
    if (appointment) {
        const int day = 1 + static_cast<int>(trip.days.nights.size());
        trip.appointments.push_back({.what = "bus",
                                     .at = route.places.back().name,
                                     .day = draws.whole(1, day + 1),
                                     .by = random_minutes(10 * 60, 22 * 60, draws),
                                     .margin = random_minutes(0, 90, draws),
                                     .hard = draws.chance(0.3)});
    }
}

void draw_weather(Trip& trip, Draws& draws) {
    if (draws.chance(0.7))
        trip.weather.high_c = draws.whole(2, 32);
    if (draws.chance(0.5))
        trip.weather.low_c = trip.weather.high_c.value_or(12.0) - draws.whole(2, 12);
    if (draws.chance(0.7)) {
        trip.weather.wind_mps = draws.in_steps(0.0, 9.0);
        trip.weather.wind_from_deg = draws.whole(0, 359);
    }
    if (draws.chance(0.6))
        trip.weather.rain = draws.chance(0.5);
    if (draws.chance(0.5))
        trip.weather.water_c = draws.whole(1, 24);
    if (draws.chance(0.3))
        trip.weather.snow = draws.chance(0.3);
}

void draw_models(Trip& trip, Draws& draws) {
    const auto perhaps = [&](std::string& model, std::string_view family) {
        if (draws.chance(0.5))
            model = draws.one_of(planner::model_words(family));
    };
    perhaps(trip.models.walking, "walking");
    perhaps(trip.models.load_effect, "load_effect");
    perhaps(trip.models.energy, "energy");
    perhaps(trip.models.resting, "resting");
    perhaps(trip.models.paddling, "paddling");
}

} // namespace

RandomTrip random_trip(std::uint64_t seed) {
    Draws draws(seed);
    const Region region = random_region(draws);
    RandomTrip random;
    Trip& trip = random.trip;
    trip.file = "random.json";
    trip.name = fmt::format("random trip {}", seed);
    const int month = draws.whole(1, 12);
    const int day = draws.whole(1, 28);
    trip.start = std::chrono::year(2027) / month / day;
    trip.time_zone = region.time_zone;
    trip.route.tracks = {"random.gpx"};
    random.route = random_route(trip, region, draws);
    trip.party = random_party(draws);
    const bool afloat = std::any_of(random.route.legs.begin(),
                                    random.route.legs.end(),
                                    [](const auto& leg) { return planner::afloat(leg.travel); });
    if (afloat)
        trip.craft = random_fleet(trip.party, draws);
    for (const Member& member : trip.party)
        add_own_things(trip, member, draws);
    add_common_things(trip, draws);
    draw_provisions(trip, draws);
    draw_days(trip, random.route, draws);
    draw_weather(trip, draws);
    draw_models(trip, draws);
    return random;
}

} // namespace tumpline::test
