#include "tests/support/hand_built_plan.h"

#include <chrono>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::test {

namespace {

using namespace std::chrono_literals;
using namespace planner;

constexpr double joules_per_kcal = 4184.0;

/// Local time at Europe/Oslo in June (UTC+2) on a day of the trip, from minutes after midnight.
sys_seconds at(int day, int minutes) {
    const std::chrono::sys_days first = std::chrono::year{2027} / std::chrono::June / 18;
    return first + std::chrono::days{day - 1} + std::chrono::minutes{minutes} - 2h;
}

int clock(int hour, int minute) {
    return 60 * hour + minute;
}

Trip trip() {
    Trip trip;
    trip.file = "saddle.json";
    trip.name = "Over the saddle and down the river";
    trip.start = std::chrono::year{2027} / std::chrono::June / 18;
    trip.time_zone = "Europe/Oslo";
    trip.route.tracks = {"saddle.gpx"};
    trip.route.elevation = {"saddle-dem.tif"};
    for (const auto& [name, travel] :
         std::vector<std::pair<std::string, Travel>>{{"Road end over the saddle", Travel::walk},
                                                     {"Across Long Tarn", Travel::paddle},
                                                     {"Fall carry", Travel::portage},
                                                     {"Upper river", Travel::paddle},
                                                     {"Meadow path to the bridge", Travel::walk}}) {
        TripLeg leg;
        leg.name = name;
        leg.travel = travel;
        if (travel == Travel::paddle)
            leg.water = name == "Upper river" ? Water::river : Water::lake;
        if (name == "Upper river") {
            leg.current_mps = 1.0;
            leg.river_class = 2;
        }
        trip.route.legs.push_back(leg);
    }
    for (const auto& [name, kind] :
         std::vector<std::pair<std::string, PlaceKind>>{{"Road end", PlaceKind::start},
                                                        {"Shelf spring", PlaceKind::water},
                                                        {"Birch spit", PlaceKind::camp},
                                                        {"Gravel bar", PlaceKind::camp},
                                                        {"Road bridge", PlaceKind::finish}}) {
        TripPlace place;
        place.name = name;
        place.kind = kind;
        trip.route.places.push_back(place);
    }
    Member ada;
    ada.name = "Ada";
    ada.body_kg = 68.0;
    ada.height_m = 1.71;
    ada.age_years = 41.0;
    ada.sex = Sex::female;
    ada.carry_limit_kg = 22.0;
    Member bjorn;
    bjorn.name = "Björn";
    bjorn.body_kg = 82.0;
    bjorn.carry_limit_kg = 24.0;
    trip.party = {ada, bjorn};
    for (const auto& [name, crew] : std::vector<std::pair<std::string, std::string>>{
             {"red boat", "Ada"}, {"blue boat", "Björn"}}) {
        Craft craft;
        craft.name = name;
        craft.kind = CraftKind::packraft;
        craft.mass_kg = 3.3;
        craft.payload_kg = 160.0;
        craft.crew = {crew};
        craft.bags_l = {70.0, 70.0};
        trip.craft.push_back(craft);
    }
    const auto item = [&](std::string name, double mass_kg, std::string owner) -> KitItem& {
        KitItem& kit = trip.kit.emplace_back();
        kit.name = std::move(name);
        kit.mass_kg = mass_kg;
        kit.owner = std::move(owner);
        return kit;
    };
    item("tent", 1.9, "");
    item("stove and pot", 0.52, "");
    item("throw bag", 0.35, "");
    item("repair kit", 0.28, "");
    for (const char* owner : {"Ada", "Björn"}) {
        item("sleeping bag and mat", 1.4, owner);
        item("clothes", 2.1, owner);
        item("boots", 1.1, owner).ashore = ItemUse::worn;
        item("paddle", 0.97, owner).afloat = ItemUse::used;
        item("life jacket", 0.7, owner).afloat = ItemUse::worn;
    }
    Condition rapids;
    rapids.river_class = 3;
    item("thigh straps", 0.45, "Ada").when = {rapids};
    Condition cold;
    cold.water_below_c = 10.0;
    item("dry suit", 1.4, "Ada").when = {cold};
    trip.days.nights = {"Birch spit", "Gravel bar"};
    trip.days.set_off = std::chrono::hours{8};
    trip.weather.high_c = 16.0;
    trip.weather.wind_mps = 2.78;
    trip.weather.wind_from_deg = 240.0;
    trip.weather.water_c = 9.0;
    return trip;
}

/// A load whose parts are those of its worst; start and end differ from it by food and water.
struct Load {
    double pack_start_kg, pack_end_kg;
    Parts parts;
    double worn_kg, limit_kg, energy_kcal;
};

MemberLoad member_load(const std::string& member, const Load& load) {
    MemberLoad made;
    made.member = member;
    made.pack_start_kg = load.pack_start_kg;
    made.pack_end_kg = load.pack_end_kg;
    made.pack_max_kg = load.parts.sum_kg();
    made.worn_kg = load.worn_kg;
    made.limit_kg = load.limit_kg;
    made.parts = load.parts;
    made.energy_j = load.energy_kcal * joules_per_kcal;
    return made;
}

Parts parts(double kit_kg, Parts rest) {
    rest.kit_kg = kit_kg;
    return rest;
}

void load_craft(PlanLeg& leg) {
    for (const char* name : {"red boat", "blue boat"}) {
        const bool red = std::string(name) == "red boat";
        CraftLoad craft;
        craft.craft = name;
        craft.left = {{"sleeping bag and mat", 1.4}, {"food", red ? 2.31 : 2.6}};
        craft.right = {{"clothes", 2.1}, {red ? "stove and pot" : "tent", red ? 0.52 : 1.9}};
        craft.at_hand = {{"throw bag", red ? 0.35 : 0.0}, {"water", 1.0}};
        if (!red)
            craft.at_hand.erase(craft.at_hand.begin());
        for (const Stowed& bag : craft.left)
            craft.left_kg += bag.mass_kg;
        for (const Stowed& bag : craft.right)
            craft.right_kg += bag.mass_kg;
        for (const Stowed& bag : craft.at_hand)
            craft.at_hand_kg += bag.mass_kg;
        craft.load_kg =
            (red ? 68.0 : 82.0) + 1.8 + craft.left_kg + craft.right_kg + craft.at_hand_kg;
        craft.payload_kg = 160.0;
        craft.draft_change_m = red ? 0.021 : 0.024;
        leg.craft.push_back(craft);
    }
}

std::vector<PlanLeg> legs() {
    std::vector<PlanLeg> legs(6);
    PlanLeg& pass = legs[0];
    pass.leg = 1;
    pass.day = 1;
    pass.name = "Road end over the saddle";
    pass.travel = Travel::walk;
    pass.from_m = 0.0;
    pass.to_m = 14200.0;
    pass.ascent_m = 620.0;
    pass.descent_m = 310.0;
    pass.moving_s = 18600.0;
    pass.moving_low_s = 15800.0;
    pass.moving_high_s = 22300.0;
    pass.rest_s = 3120.0;
    pass.start = at(1, clock(8, 0));
    pass.end = at(1, clock(14, 2));
    pass.on_foot_m = 14200.0;
    pass.loads = {
        member_load(
            "Ada",
            {19.104,
             17.91,
             parts(8.15, {.craft_kg = 3.3, .food_kg = 4.7, .fuel_kg = 0.304, .water_kg = 2.65}),
             1.9,
             22.0,
             2410.0}),
        member_load("Björn",
                    {20.23,
                     18.87,
                     parts(8.93, {.craft_kg = 3.3, .food_kg = 5.2, .water_kg = 2.8}),
                     2.1,
                     24.0,
                     2830.0})};

    PlanLeg& tarn = legs[1];
    tarn.leg = 2;
    tarn.day = 1;
    tarn.name = "Across Long Tarn";
    tarn.travel = Travel::paddle;
    tarn.from_m = 14200.0;
    tarn.to_m = 17300.0;
    tarn.moving_s = 2940.0;
    tarn.moving_low_s = 2600.0;
    tarn.moving_high_s = 3600.0;
    tarn.changeover_s = 2100.0;
    tarn.start = at(1, clock(14, 2));
    tarn.end = at(1, clock(15, 26));
    tarn.wind_head_mps = 1.2;
    tarn.loads = {
        member_load("Ada",
                    {16.24,
                     16.1,
                     parts(7.18, {.food_kg = 4.31, .fuel_kg = 0.304, .water_kg = 1.0}),
                     1.8,
                     0.0,
                     190.0}),
        member_load(
            "Björn",
            {17.2, 17.06, parts(7.96, {.food_kg = 4.76, .water_kg = 1.0}), 1.8, 0.0, 215.0})};
    load_craft(tarn);

    PlanLeg& carry = legs[2];
    carry.leg = 3;
    carry.day = 2;
    carry.name = "Fall carry";
    carry.travel = Travel::portage;
    carry.from_m = 17300.0;
    carry.to_m = 18400.0;
    carry.ascent_m = 12.0;
    carry.descent_m = 68.0;
    carry.moving_s = 3240.0;
    carry.moving_low_s = 2760.0;
    carry.moving_high_s = 4100.0;
    carry.changeover_s = 1200.0;
    carry.start = at(2, clock(8, 0));
    carry.end = at(2, clock(9, 14));
    carry.lengths = 3.0;
    carry.on_foot_m = 3300.0;
    carry.loads = {
        member_load(
            "Ada",
            {16.784,
             16.784,
             parts(8.15, {.craft_kg = 3.63, .food_kg = 3.7, .fuel_kg = 0.304, .water_kg = 1.0}),
             1.9,
             13.0,
             390.0}),
        member_load("Björn",
                    {17.72,
                     17.72,
                     parts(8.93, {.craft_kg = 3.63, .food_kg = 4.16, .water_kg = 1.0}),
                     2.1,
                     15.0,
                     450.0})};
    carry.loads[0].carries = {{1, 12.854, 1.0, {"pack"}}, {2, 3.93, 1.0, {"red boat", "paddle"}}};
    carry.loads[1].carries = {{1, 13.92, 1.0, {"pack"}}, {2, 3.8, 1.0, {"blue boat"}}};
    for (MemberLoad& load : carry.loads) { // on a portage the worst is the heaviest carry
        load.pack_max_kg = load.carries.front().pack_kg;
        load.pack_start_kg = load.pack_max_kg;
        load.pack_end_kg = load.pack_max_kg;
        load.parts.craft_kg = 0.0;
        load.parts.kit_kg =
            load.pack_max_kg - load.parts.food_kg - load.parts.fuel_kg - load.parts.water_kg;
    }
    carry.choices = {{.carries = 1.0,
                      .rolled = false,
                      .lengths = 1.0,
                      .walked_m = 1100.0,
                      .moving_s = 1260.0,
                      .changeover_s = 1200.0,
                      .heaviest_kg = 17.72,
                      .heaviest_member = "Björn",
                      .heaviest_ratio = 1.291,
                      .within_limits = false,
                      .chosen = false},
                     {.carries = 1.0,
                      .rolled = true,
                      .lengths = 1.0,
                      .walked_m = 1100.0,
                      .moving_s = 1230.0,
                      .changeover_s = 5700.0,
                      .heaviest_kg = 17.9,
                      .heaviest_member = "Björn",
                      .heaviest_ratio = 1.3,
                      .within_limits = false,
                      .chosen = false},
                     {.carries = 2.0,
                      .rolled = false,
                      .lengths = 3.0,
                      .walked_m = 3300.0,
                      .moving_s = 3240.0,
                      .changeover_s = 1200.0,
                      .heaviest_kg = 13.92,
                      .heaviest_member = "Björn",
                      .heaviest_ratio = 0.989,
                      .within_limits = true,
                      .chosen = true}};
    carry.break_even_m = 2350.0;

    for (std::size_t half = 0; half < 2; ++half) {
        PlanLeg& river = legs[3 + half];
        const bool first = half == 0;
        river.leg = 4;
        river.day = first ? 2 : 3;
        river.part = first ? 1 : 2;
        river.name = "Upper river";
        river.travel = Travel::paddle;
        river.from_m = first ? 18400.0 : 32400.0;
        river.to_m = first ? 32400.0 : 41900.0;
        river.descent_m = first ? 33.0 : 19.0;
        river.moving_s = first ? 6900.0 : 4740.0;
        river.moving_low_s = first ? 6100.0 : 4200.0;
        river.moving_high_s = first ? 8600.0 : 5900.0;
        river.changeover_s = first ? 1500.0 : 0.0;
        river.rest_s = first ? 1140.0 : 780.0;
        river.start = first ? at(2, clock(9, 14)) : at(3, clock(8, 0));
        river.end = first ? at(2, clock(11, 53)) : at(3, clock(9, 32));
        river.gradient = first ? 33.0 / 14000.0 : 19.0 / 9500.0;
        river.steepest_500m = first ? 0.006 : 0.004;
        river.current_mps = 1.0;
        const double eaten_kg = first ? 0.0 : 1.0;
        river.loads = {
            member_load(
                "Ada",
                {12.134 - eaten_kg,
                 11.93 - eaten_kg,
                 parts(7.18, {.food_kg = 3.65 - eaten_kg, .fuel_kg = 0.304, .water_kg = 1.0}),
                 1.8,
                 0.0,
                 410.0}),
            member_load("Björn",
                        {12.97 - eaten_kg,
                         12.74 - eaten_kg,
                         parts(7.96, {.food_kg = 4.01 - eaten_kg, .water_kg = 1.0}),
                         1.8,
                         0.0,
                         465.0})};
        load_craft(river);
    }

    PlanLeg& path = legs[5];
    path.leg = 5;
    path.day = 3;
    path.name = "Meadow path to the bridge";
    path.travel = Travel::walk;
    path.from_m = 41900.0;
    path.to_m = 46000.0;
    path.ascent_m = 40.0;
    path.descent_m = 22.0;
    path.moving_s = 4080.0;
    path.moving_low_s = 3500.0;
    path.moving_high_s = 4900.0;
    path.changeover_s = 3600.0;
    path.rest_s = 660.0;
    path.start = at(3, clock(9, 32));
    path.end = at(3, clock(11, 51));
    path.on_foot_m = 4100.0;
    path.loads = {
        member_load("Ada",
                    {15.434,
                     15.0,
                     parts(8.15,
                           {.craft_kg = 3.63,
                            .food_kg = 1.9,
                            .fuel_kg = 0.2,
                            .water_kg = 1.2,
                            .waste_kg = 0.354}),
                     1.9,
                     22.0,
                     470.0}),
        member_load(
            "Björn",
            {16.36,
             15.91,
             parts(8.93, {.craft_kg = 3.63, .food_kg = 2.3, .water_kg = 1.2, .waste_kg = 0.3}),
             2.1,
             24.0,
             540.0})};
    for (PlanLeg& leg : legs) // what is packed at the start is the worst of a leg without a spring
        for (MemberLoad& load : leg.loads) {
            load.pack_end_kg += load.pack_max_kg - load.pack_start_kg;
            load.pack_start_kg = load.pack_max_kg;
        }
    return legs;
}

std::vector<PlanDay> days(const std::vector<PlanLeg>& legs) {
    std::vector<PlanDay> days(3);
    const std::vector<std::string> stops = {"Road end", "Birch spit", "Gravel bar", "Road bridge"};
    for (int number = 1; number <= 3; ++number) {
        PlanDay& day = days[static_cast<std::size_t>(number - 1)];
        day.day = number;
        day.date = std::chrono::year_month_day{
            std::chrono::sys_days{std::chrono::year{2027} / std::chrono::June / 18} +
            std::chrono::days{number - 1}};
        day.from = stops[static_cast<std::size_t>(number - 1)];
        day.to = stops[static_cast<std::size_t>(number)];
        day.camp = {61.52 + 0.1 * number, 13.1};
        day.from_m = -1.0;
        for (const char* name : {"Ada", "Björn"}) {
            MemberDay& member = day.members.emplace_back();
            member.member = name;
            member.energy_j = (std::string(name) == "Ada" ? 1650.0 : 1900.0) * joules_per_kcal;
            member.food_kg = std::string(name) == "Ada" ? 0.61 : 0.7;
            member.water_l = 4.9;
        }
        std::size_t index = 0;
        for (const PlanLeg& leg : legs) {
            ++index;
            if (leg.day != number)
                continue;
            if (day.from_m < 0.0) {
                day.from_m = leg.from_m;
                day.set_off = leg.start;
            }
            day.to_m = leg.to_m;
            const double length_m = leg.to_m - leg.from_m;
            (leg.travel == Travel::walk      ? day.walk_m
             : leg.travel == Travel::portage ? day.portage_m
                                             : day.paddle_m) += length_m;
            day.on_foot_m += leg.on_foot_m;
            day.ascent_m += leg.ascent_m;
            day.descent_m += leg.descent_m;
            day.moving_s += leg.moving_s;
            day.changeover_s += leg.changeover_s;
            day.rest_s += leg.rest_s;
            day.arrive = leg.end;
            for (std::size_t member = 0; member < 2; ++member) {
                day.members[member].energy_j += leg.loads[member].energy_j;
                if (leg.travel != Travel::paddle &&
                    leg.loads[member].pack_max_kg > day.members[member].heaviest_kg) {
                    day.members[member].heaviest_kg = leg.loads[member].pack_max_kg;
                    day.members[member].heaviest_leg = index;
                }
            }
        }
        day.arrive_early = day.arrive - 50min;
        day.arrive_late = day.arrive + 80min;
        day.light.sun.rise = at(number, clock(3, 42));
        day.light.sun.set = at(number, clock(22, 51));
        day.light.twilight.rise = at(number, clock(2, 1));
        day.light.twilight.day = geo::SunDay::rises_only;
        day.food_kg = day.members[0].food_kg + day.members[1].food_kg;
        day.fuel_kg = 0.06;
        day.water_l = day.members[0].water_l + day.members[1].water_l;
    }
    const double starts_kg[3][2] = {{19.4, 20.6}, {17.6, 18.5}, {15.8, 16.7}};
    for (std::size_t day = 0; day < 3; ++day)
        for (std::size_t member = 0; member < 2; ++member) {
            days[day].members[member].pack_start_kg = starts_kg[day][member];
            days[day].members[member].pack_end_kg =
                day < 2 ? starts_kg[day + 1][member] : starts_kg[day][member] - 1.2;
        }
    return days;
}

Totals totals(const std::vector<PlanDay>& days) {
    Totals sum;
    for (const PlanDay& day : days) {
        sum.distance_m += day.to_m - day.from_m;
        sum.walk_m += day.walk_m;
        sum.portage_m += day.portage_m;
        sum.paddle_m += day.paddle_m;
        sum.on_foot_m += day.on_foot_m;
        sum.ascent_m += day.ascent_m;
        sum.descent_m += day.descent_m;
        sum.moving_s += day.moving_s;
        sum.changeover_s += day.changeover_s;
        sum.rest_s += day.rest_s;
        for (const MemberDay& member : day.members)
            sum.energy_j += member.energy_j;
    }
    sum.elapsed_s =
        std::chrono::duration<double>(days.back().arrive - days.front().set_off).count();
    sum.days = static_cast<int>(days.size());
    sum.food_kg = 9.9;
    sum.fuel_kg = 0.154;
    return sum;
}

std::vector<Caution> cautions() {
    return {
        {Level::caution,
         "cold-water",
         std::nullopt,
         std::nullopt,
         "The water is 9 °C: a swim of minutes takes the strength of hands and arms. Dress for it, "
         "stay near the shore, and ask local guides.",
         "common practice, no source"},
        {Level::note,
         "gradient-hint",
         2,
         4,
         "The steepest 500 m of this river fall 6 m per km; read current descriptions of it.",
         "common practice, no source"},
        {Level::note,
         "level-ground-assumed",
         3,
         5,
         "The raster does not cover 300 m of this leg; they are taken as level.",
         "docs/elevation.md"},
        {Level::note,
         "usual-water",
         std::nullopt,
         std::nullopt,
         "Water rises and falls within hours. Current information on the river, local authorities "
         "and qualified guides come before this plan.",
         "common practice, no source"}};
}

std::vector<Event> events() {
    return {{EventKind::set_off, 1, 1, 0.0, at(1, clock(8, 0)), 0.0, "Road end", 0.0},
            {EventKind::fill_water, 1, 1, 6300.0, at(1, clock(10, 40)), 0.0, "Shelf spring", 2.5},
            {EventKind::boots_to_boat, 1, 2, 14200.0, at(1, clock(14, 2)), 2100.0, "", 0.0},
            {EventKind::arrive, 1, 2, 17300.0, at(1, clock(15, 26)), 0.0, "Birch spit", 0.0},
            {EventKind::set_off, 2, 3, 17300.0, at(2, clock(8, 0)), 0.0, "Birch spit", 0.0},
            {EventKind::landing, 2, 4, 25100.0, at(2, clock(10, 30)), 600.0, "", 0.0},
            {EventKind::scout, 2, 4, 25100.0, at(2, clock(10, 40)), 900.0, "", 0.0},
            {EventKind::arrive, 2, 4, 32400.0, at(2, clock(11, 53)), 0.0, "Gravel bar", 0.0},
            {EventKind::set_off, 3, 4, 32400.0, at(3, clock(8, 0)), 0.0, "Gravel bar", 0.0},
            {EventKind::boat_to_boots, 3, 5, 41900.0, at(3, clock(9, 32)), 3600.0, "", 0.0},
            {EventKind::arrive, 3, 5, 46000.0, at(3, clock(11, 51)), 0.0, "Road bridge", 0.0}};
}

/// Enough entries that the list is not empty: the food of both and one breakfast.
Ledger ledger() {
    Ledger ledger;
    const auto book = [&](Entry entry) {
        entry.step = ledger.entries.size();
        ledger.entries.push_back(std::move(entry));
    };
    for (std::size_t member = 0; member < 2; ++member) {
        Entry packed;
        packed.member = member;
        packed.part = Part::food;
        packed.mass_mg = member == 0 ? 4'700'000 : 5'200'000;
        packed.why = "packed at Road end";
        book(packed);
        Entry breakfast;
        breakfast.member = member;
        breakfast.part = Part::food;
        breakfast.mass_mg = 180'000;
        breakfast.from = Account::pack;
        breakfast.to = Account::eaten;
        breakfast.why = "breakfast";
        book(breakfast);
    }
    return ledger;
}

std::vector<ExitPoint> exits() {
    std::vector<ExitPoint> exits;
    for (int km = 0; km <= 46; ++km) {
        ExitPoint& point = exits.emplace_back();
        point.along_m = 1000.0 * km;
        point.forward = "Road bridge";
        point.back = "Road end";
        point.forward_s = 800.0 * (46 - km);
        point.back_s = 1100.0 * km;
        point.no_return = km == 20;
    }
    return exits;
}

} // namespace

Plan hand_built_plan() {
    Plan plan;
    plan.trip = trip();
    plan.models = {{"walking", "swiss-signpost", "[SwissTopo2015]"},
                   {"load_effect", "equal-effort", "docs/models/load_effect.md"},
                   {"energy", "lcda-backpacking-2022", "[Looney2022]"},
                   {"resting", "mifflin-st-jeor-1990", "[Mifflin1990]"},
                   {"paddling", "power-balance", "docs/models/paddling.md"}};
    plan.defaults = {{"/days/hours", "8", "common practice, no source"},
                     {"/changeovers/boots_to_boat", "35 min", "common practice, no source"},
                     {"/food/replace", "0.9", "common practice, no source"}};
    plan.converged = {
        .rounds = 6, .largest_change_kg = 0.0004, .largest_change_s = 0.3, .settled = true};
    plan.legs = legs();
    plan.days = days(plan.legs);
    plan.totals = totals(plan.days);
    plan.events = events();
    PlanAppointment bus;
    bus.what = "last bus";
    bus.at = "Road bridge";
    bus.day = 3;
    bus.by = at(3, clock(18, 5));
    bus.arrive = at(3, clock(11, 51));
    bus.margin_s = 5400.0;
    bus.spare_s = 17040.0;
    bus.leave_by = {{"Birch spit", 2, 17300.0, at(2, clock(12, 44))},
                    {"Gravel bar", 3, 32400.0, at(3, clock(12, 44))}};
    plan.appointments = {bus};
    plan.exits = exits();
    plan.stays_home = {{"thigh straps", 0.45, "no leg is of class III or harder", 8.7, 281.0}};
    plan.comes = {{"dry suit", 1.4, "water of 9 °C on Across Long Tarn", 2, 27.1, 896.0, false}};
    Stage stage;
    stage.from = "Road end";
    stage.to = "Road bridge";
    stage.last_day = 3;
    stage.food_kg = 9.9;
    stage.packaging_kg = 0.56;
    stage.fuel_kg = 0.154;
    stage.containers = 1;
    stage.reserve_kg = 1.3;
    stage.bearer_share = {0.475, 0.525};
    stage.lost_day_short_kg = 0.0;
    plan.stages = {stage};
    plan.water = {{.from = "Road end",
                   .to = "Shelf spring",
                   .from_m = 0.0,
                   .to_m = 6300.0,
                   .first_day = 1,
                   .last_day = 1,
                   .hours = 2.67,
                   .nights = 0,
                   .fill_l = {2.65, 2.8},
                   .capacity_l = 4.0,
                   .over_capacity = false},
                  {.from = "Shelf spring",
                   .to = "Birch spit",
                   .from_m = 6300.0,
                   .to_m = 14200.0,
                   .first_day = 1,
                   .last_day = 1,
                   .hours = 3.4,
                   .nights = 0,
                   .fill_l = {1.2, 1.3},
                   .capacity_l = 4.0,
                   .over_capacity = false}};
    plan.sharing.heaviest_ratio = 0.868;
    plan.sharing.lower_bound = 0.855;
    plan.sharing.member = "Ada";
    plan.sharing.plan_leg = 1;
    plan.sharing.bearers = {{"tent", 1.9, "Björn"},
                            {"stove and pot", 0.52, "Ada"},
                            {"throw bag", 0.35, "Ada"},
                            {"repair kit", 0.28, "Björn"}};
    plan.cautions = cautions();
    plan.ledger = ledger();
    return plan;
}

} // namespace tumpline::test
