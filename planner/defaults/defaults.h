#pragma once

#include "planner/conditions/calendar.h"
#include "planner/conditions/forecast.h"
#include "planner/models/load_carriage.h"
#include "planner/models/paddling.h"
#include "planner/models/resting_energy.h"
#include "planner/models/walking_speed.h"
#include "planner/trip/trip.h"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// A model that was used, for people who want to check.
struct ModelUsed {
    std::string family; ///< "walking"
    std::string name;   ///< "swiss-signpost"
    std::string source; ///< key in docs/references.md
};

/// An assumption the trip file did not state.
struct DefaultUsed {
    std::string key;    ///< JSON pointer in the trip file, "/days/hours"
    std::string value;  ///< as it could be written there, "8"
    std::string source; ///< key, or "common practice, no source"
};

/// What somebody who grows spends on a day at the least, whatever the legs add up to; 0 for adults.
struct LeastDay {
    double of_travel_j = 0.0;
    double of_rest_j = 0.0;
};

/// A member with nothing left open.
struct AssumedMember {
    double body_kg;
    double age_years;
    double resting_w;
    double met_body_kg; ///< by which multiples of rest are counted: `body_kg`, more for a child
    LeastDay least_day;
    double walk_limit_kg;
    double portage_limit_kg;
    double pace; ///< factor on the walking model's level speed
    std::optional<RiverClass> river_class;
};

/// A craft with nothing left open.
struct AssumedCraft {
    HullKind kind;
    double mass_kg;
    double payload_kg; ///< 0 if not given
    double calm_speed_mps;
    bool usual_speed;    ///< that of such boats, the file giving none
    double reference_kg; ///< all-up mass at which calm_speed holds
    double wet_kg;       ///< water clinging to it after use
    double wind_ceiling_mps;
    bool rolls_up;
    std::vector<std::size_t> crew; ///< indices into the party
};

struct AssumedFood {
    std::optional<double> ration_kg;
    double energy_density_j_per_kg;
    double replace;
    double packaging;
    double reserve_days;
    std::array<double, 3> shares; ///< breakfast, trail, dinner
    Meal first_meal;
    Meal last_meal;
};

struct AssumedWater {
    bool by_model; ///< some of the rates are those of planner/models/drinking.h
    double walking_lps;
    double climbing_lps; ///< on steep ascents
    double carrying_lps; ///< on portages
    double paddling_lps;
    double halting_lps;           ///< at rests and change-overs; never more than on the move there
    std::optional<double> camp_l; ///< per night, whatever its hours; empty: by the hours
    double kitchen_l;             ///< of a camp by the hours
    double camp_lps;              ///< the same, for each second in camp
    double capacity_l;
    double reserve_l;
    WaterStow stow;
    bool
        assumed_everywhere; ///< no source is given on foot: water is taken to be at every leg's end
};

struct AssumedFuel {
    bool by_model; ///< fuel per litre is that of planner/models/stove_fuel.h
    double boiled_l;
    double kg_per_litre;
    double container_kg;
    std::optional<double> container_holds_kg;
    double reserve;
};

struct AssumedTimes {
    double boots_to_boat_s;
    double boat_to_boots_s;
    double landing_s;
    double scout_s;
    double break_camp_s;
    double set_off_s; ///< local time of day
    double first_set_off_s;
    double hours_s; ///< moving time wished per day
    std::optional<double> hours_limit_s;
    double rest_per_hour_s;
};

/// Share of the wind that banks and bends keep off a river where the trip file does not say: common
/// practice, no source.
inline constexpr double river_shelter = 0.5;

struct AssumedWeather {
    double wind_mps;
    std::optional<double> wind_from_deg; ///< empty: from ahead on every course
    bool rain;
    bool rain_known;
    double high_c;
    std::optional<double> low_c;
    std::optional<double> water_c;
    bool snow;
};

struct AssumedModels {
    WalkingModel walking;
    bool load_effect; ///< equal-effort; false: none
    CarriageModel energy;
    RestingModel resting;
    PaddlingModel paddling;
};

/// How one day departs from what is assumed; factors. The plan itself departs nowhere, draws do
/// (docs/odds.md).
struct DayDeparture {
    double wind = 1.0;
    double calm_speed = 1.0;
    std::vector<double> pace; ///< per member
};

struct Departures {
    std::vector<std::size_t> day_of; ///< per stretch, index into days; empty: nothing departs
    std::vector<DayDeparture> days;
    double current = 1.0;
    std::vector<double> current_of = {}; ///< per stretch, in place of it; empty: everywhere it
};

/// The trip with every open value filled from the one table of defaults (assumptions.cpp).
struct Assumed {
    Date start;
    std::string time_zone;
    std::vector<AssumedMember> members;
    std::vector<AssumedCraft> craft;
    std::vector<double> item_wet_kg; ///< per kit item: water clinging after use; 0 if none does
    AssumedFood food;
    AssumedWater water;
    AssumedFuel fuel;
    AssumedTimes times;
    AssumedWeather weather; ///< the hardest of the whole trip
    Forecast forecast;      ///< by place and hour
    std::optional<MiddayHalt> halt;
    AssumedModels models;
    Departures departures;
    std::vector<ModelUsed> models_used;
    std::vector<DefaultUsed> defaults; ///< each value the file did not state
};

/// The date of a day of the trip (from 1).
[[nodiscard]] inline Date date_of(const Assumed& assumed, int day) {
    return date_of(assumed.start, day);
}

/// A time on a day of the trip as an instant.
[[nodiscard]] inline geo::sys_seconds instant(const Assumed& assumed, const DayTime& time) {
    return instant(TripDays{assumed.start,
                            assumed.time_zone,
                            assumed.times.first_set_off_s,
                            assumed.times.set_off_s},
                   time);
}

/// Fills what the trip leaves open and lists it. Names are taken as checked by the trip file.
[[nodiscard]] Assumed assume(const Trip& trip);

} // namespace tumpline::planner
