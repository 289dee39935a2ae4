#include "tests/support/hand_built_parts.h"

#include <chrono>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::test {

using namespace planner;

Trip hand_built_trip() {
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

} // namespace tumpline::test
