#pragma once

#include "planner/trip/trip.h"
#include "planner/trip/value_reader.h"

#include <string>
#include <string_view>
#include <vector>

/// The objects of a trip file, each a table of keys and how they are read. The tables are what the
/// reader goes by; docs/trip.schema.json repeats them, and a test holds the two together.
namespace tumpline::planner {

[[nodiscard]] const Section<Trip>& trip_section();

[[nodiscard]] const Section<TripRoute>& route_section();
/// The route with what its keys ask of each other.
void read_route(const TripValue& value, TripRoute& route);
[[nodiscard]] const Section<TripLeg>& leg_section();
[[nodiscard]] const Section<RiverBed>& river_bed_section();
[[nodiscard]] const Section<RiverFlow>& flow_section();
[[nodiscard]] const Section<FlowColumn>& flow_column_section();
[[nodiscard]] const Section<Release>& release_section();
[[nodiscard]] const Section<TripPlace>& place_section();

[[nodiscard]] const Section<Member>& member_section();
[[nodiscard]] const Section<Craft>& craft_section();
[[nodiscard]] const Section<CraftChoice>& craft_choice_section();

[[nodiscard]] const Section<KitItem>& kit_section();
[[nodiscard]] const Section<Condition>& condition_section();
/// Of a thing of the kit and of a choice.
[[nodiscard]] const Section<PaddleSpec>& paddle_section();

[[nodiscard]] const Section<Food>& food_section();
[[nodiscard]] const Section<std::array<double, 3>>& shares_section();
[[nodiscard]] const Section<DrinkingWater>& water_section();
[[nodiscard]] const Section<Fuel>& fuel_section();

[[nodiscard]] const Section<Changeovers>& changeovers_section();
[[nodiscard]] const Section<Appointment>& appointment_section();
[[nodiscard]] const Section<Connection>& connection_section();
[[nodiscard]] const Section<Permit>& permit_section();
/// A connection with what its keys ask of each other.
void read_connections(const TripValue& value, Trip& trip);
/// Two dates, the first and the last.
[[nodiscard]] std::optional<DateSpan> read_dates(const TripValue& value);
/// What is left on the way, with what its keys ask of each other.
void read_leaves(const TripValue& value, Trip& trip);
[[nodiscard]] const Section<Leave>& leave_section();
[[nodiscard]] const Section<Leave>& laid_store_section();
[[nodiscard]] const Section<Days>& days_section();
[[nodiscard]] const Section<MiddayHalt>& halt_section();
[[nodiscard]] const Section<Contact>& contact_section();

[[nodiscard]] const Section<WeatherEntry>& weather_section();
/// Two times of day that differ.
[[nodiscard]] std::optional<HoursOfDay> read_hours(const TripValue& value);
/// The same of one leg, without names of legs.
[[nodiscard]] const Section<WeatherEntry>& leg_weather_section();
/// The weather of the trip: one object, or a list.
void read_weather(const TripValue& value, Trip& trip);
/// Makes one weather for the whole trip of what was read of it and of its legs.
void sum_up_weather(Trip& trip);
[[nodiscard]] const Section<TripMap>& map_section();
[[nodiscard]] const Section<geo::LayerSource>& layer_section();

[[nodiscard]] const Section<Models>& models_section();
[[nodiscard]] const Section<Spread>& spread_section();

/// The words that choose a model, by the key of "models"; none for another key.
[[nodiscard]] std::vector<std::string_view> model_words(std::string_view family);

/// The words that choose a stove, and the bed of a river.
[[nodiscard]] std::vector<std::string_view> stove_words();
[[nodiscard]] std::vector<std::string_view> river_bed_words();

/// The keys of one object, for whoever describes the trip file.
struct KnownKeys {
    std::string section; ///< "leg"; the file itself is "trip"
    std::vector<std::string> keys;
    std::vector<std::string> needed;
};

/// Every object of the trip file.
[[nodiscard]] std::vector<KnownKeys> known_keys();

} // namespace tumpline::planner
