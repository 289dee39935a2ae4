#include "planner/trip/trip_file.h"

#include "geo/input_error.h"
#include "planner/quantities/quantities.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using testing::ElementsAre;
using testing::IsEmpty;

/// Every key that a first trip has, with comments, mixed units and a name with an umlaut.
constexpr const char* complete = R"({
  "tumpline": 1,
  "name": "Over the saddle and down the river",
  "start": "2027-06-18",
  "time_zone": "Europe/Oslo",
  "route": {
    "tracks": ["saddle.gpx"],                 // beside this file
    "elevation": ["saddle-dem.tif"],
    "legs": [
      {"name": "Road end to the tarn", "travel": "walk",    "track": "approach", "terrain": "path"},
      {"name": "Across the tarn",      "travel": "paddle",  "track": "tarn", "water": "lake"},
      {"name": "Fall carry",           "travel": "portage", "track": "carry", "carries": "auto"},
      {"name": "Upper river",          "travel": "paddle",  "track": "all", "from": "Fall pool",
       "to": "Road bridge", "water": "river", "current": "4 km/h", "class": "II"}
    ],
    "places": [
      {"name": "Birch spit", "kind": "camp", "at": [13.1021, 61.5210]},
      {"name": "Fall pool",  "kind": "put-in"},
      {"name": "Shelf spring", "kind": "water"},
      {"name": "Farm shop",  "kind": "resupply"}
    ]
  },
  "party": [
    {"name": "Ada", "body": "68 kg", "height": "171 cm", "age": 41, "sex": "female",
     "carry_limit": "22 kg", "pace": 1.0}
  ],
  "craft": [
    {"name": "red boat", "mass": "3.3 kg", "payload": "160 kg", "crew": ["Ada"],
     "calm_speed": "4.5 km/h", "bags": ["70 L", "70 L"]}
  ],
  "kit": [
    {"item": "tent", "mass": "1.9 kg", "for": "party"},
    {"item": "paddle", "mass": "970 g", "for": "Ada", "afloat": "used"},
    {"item": "life jacket", "mass": "700 g", "for": "Ada", "afloat": "worn"},
    {"item": "thigh straps", "mass": "450 g", "for": "Ada", "when": {"class": "III"}},
    {"item": "boots", "mass": "1.1 kg", "for": "Ada", "ashore": "worn"}
  ],
  "food":  {"ration": "energy", "energy_density": "4.4 kcal/g", "replace": 0.9, "packaging": 0.06,
            "reserve_days": 1},
  "water": {"walking": "0.5 L/h", "paddling": "0.3 L/h", "camp": "3 L", "capacity": "4 L"},
  "fuel":  {"boiled": "2.5 L", "per_litre": "12 g", "container": "150 g"},
  "changeovers": {"boots_to_boat": "35 min", "boat_to_boots": "60 min", "landing": "10 min",
                  "scout": "15 min"},
  "appointments": [{"what": "last bus", "at": "Road bridge", "day": 3, "by": "18:05",
                    "margin": "90 min"}],
  "days":  {"set_off": "08:00", "hours": 8, "nights": ["Birch spit"], "rest_days_after": [],
            "rest_per_hour": "10 min"},
  "weather": {"high": "16 C", "wind": "10 km/h", "wind_from": 240, "rain": true, "water": "9 C"},
  "models": {"walking": "swiss-signpost", "load_effect": "equal-effort",
             "energy": "lcda-backpacking-2022", "resting": "mifflin-st-jeor-1990",
             "paddling": "power-balance"}
})";

TEST(TripFile, ReadsACompleteTrip) {
    const Trip trip = read_trip_text(complete, "trips/saddle.json");

    EXPECT_EQ(trip.name, "Over the saddle and down the river");
    EXPECT_EQ(trip.start, Date(std::chrono::year(2027), std::chrono::June, std::chrono::day(18)));
    EXPECT_EQ(trip.time_zone, "Europe/Oslo");
    EXPECT_THAT(trip.route.tracks, ElementsAre("trips/saddle.gpx"));
    EXPECT_THAT(trip.route.elevation, ElementsAre("trips/saddle-dem.tif"));

    ASSERT_EQ(trip.route.legs.size(), 4U);
    EXPECT_EQ(trip.route.legs[0].travel, Travel::walk);
    EXPECT_EQ(trip.route.legs[0].terrain, Terrain::path);
    EXPECT_EQ(trip.route.legs[1].water, Water::lake);
    EXPECT_EQ(trip.route.legs[2].travel, Travel::portage);
    EXPECT_FALSE(trip.route.legs[2].carries.has_value());
    EXPECT_EQ(trip.route.legs[3].from, "Fall pool");
    EXPECT_NEAR(trip.route.legs[3].current_mps.value_or(0.0), 4.0 / 3.6, 1e-12);
    EXPECT_EQ(trip.route.legs[3].river_class, 2);

    ASSERT_EQ(trip.route.places.size(), 4U);
    EXPECT_EQ(trip.route.places[0].at, (geo::Position{.lat_deg = 61.5210, .lon_deg = 13.1021}));
    EXPECT_EQ(trip.route.places[1].kind, PlaceKind::put_in);
    EXPECT_FALSE(trip.route.places[1].at.has_value());

    ASSERT_EQ(trip.party.size(), 1U);
    EXPECT_EQ(trip.party[0].body_kg, 68.0);
    EXPECT_DOUBLE_EQ(trip.party[0].height_m.value_or(0.0), 1.71);
    EXPECT_EQ(trip.party[0].age_years, 41.0);
    EXPECT_EQ(trip.party[0].sex, Sex::female);
    EXPECT_EQ(trip.party[0].carry_limit_kg, 22.0);
    EXPECT_EQ(trip.party[0].pace, 1.0);

    ASSERT_EQ(trip.craft.size(), 1U);
    EXPECT_EQ(trip.craft[0].payload_kg, 160.0);
    EXPECT_THAT(trip.craft[0].crew, ElementsAre("Ada"));
    EXPECT_DOUBLE_EQ(trip.craft[0].calm_speed_mps.value_or(0.0), 1.25);
    EXPECT_THAT(trip.craft[0].bags_l, ElementsAre(70.0, 70.0));

    ASSERT_EQ(trip.kit.size(), 5U);
    EXPECT_EQ(trip.kit[0].owner, "");
    EXPECT_DOUBLE_EQ(trip.kit[1].mass_kg, 0.97);
    EXPECT_EQ(trip.kit[1].owner, "Ada");
    EXPECT_EQ(trip.kit[1].afloat, ItemUse::used);
    EXPECT_EQ(trip.kit[2].afloat, ItemUse::worn);
    ASSERT_EQ(trip.kit[3].when.size(), 1U);
    EXPECT_EQ(trip.kit[3].when[0].river_class, 3);
    EXPECT_EQ(trip.kit[4].ashore, ItemUse::worn);

    EXPECT_FALSE(trip.food.ration_kg.has_value());
    EXPECT_NEAR(trip.food.energy_density_j_per_kg.value_or(0.0), 4400.0 * 4184.0, 1e-6);
    EXPECT_EQ(trip.food.replace, 0.9);
    EXPECT_NEAR(trip.water.walking_lps.value_or(0.0) * 3600.0, 0.5, 1e-12);
    EXPECT_EQ(trip.water.capacity_l, 4.0);
    EXPECT_DOUBLE_EQ(trip.fuel.kg_per_litre.value_or(0.0), 0.012);
    EXPECT_EQ(trip.changeovers.boat_to_boots, hours(1));

    ASSERT_EQ(trip.appointments.size(), 1U);
    EXPECT_EQ(trip.appointments[0].day, 3);
    EXPECT_EQ(trip.appointments[0].by, hours(18) + minutes(5));
    EXPECT_EQ(trip.appointments[0].margin, minutes(90));

    EXPECT_EQ(trip.days.set_off, hours(8));
    EXPECT_EQ(trip.days.hours, 8.0);
    EXPECT_THAT(trip.days.nights, ElementsAre("Birch spit"));
    EXPECT_FALSE(trip.days.nights_auto);
    EXPECT_THAT(trip.days.rest_days_after, IsEmpty());
    EXPECT_EQ(trip.days.rest_per_hour, minutes(10));
    EXPECT_EQ(trip.weather.wind_from_deg, 240.0);
    EXPECT_EQ(trip.weather.water_c, 9.0);
    EXPECT_EQ(trip.models.walking, "swiss-signpost");
    EXPECT_EQ(trip.models.paddling, "power-balance");
}

} // namespace
} // namespace tumpline::planner
