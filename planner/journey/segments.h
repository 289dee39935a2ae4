#pragma once

#include "planner/defaults/defaults.h"
#include "planner/models/load_carriage.h"
#include "planner/models/river.h"
#include "planner/models/walking_speed.h"
#include "planner/quantities/leg_number.h"
#include "planner/route/route.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// A step of a walk: so far at that slope.
struct SlopeStep {
    double length_m;
    double slope;
};

/// A run of a paddle in one direction.
struct Course {
    double bearing_deg;
    double length_m;
    bool known = true; ///< false: of a leg without a line

    /// From where the wind blows upon it: from ahead where nobody gave its direction, or the course
    /// itself is not known.
    [[nodiscard]] double wind_from_deg(const std::optional<double>& given_deg) const {
        return known ? given_deg.value_or(bearing_deg) : bearing_deg;
    }
};

/// A river's current that nobody gave, estimated from the fall of its leg and its bed.
struct EstimatedCurrent {
    Bed bed;
    CurrentEstimate current;
};

/// A piece of one leg between two points where something may change: the leg's ends, places. The
/// engine's unit; prepared once so that planning again costs little.
struct Stretch {
    LegNumber leg;
    Travel travel;
    double from_m; ///< along the route
    double to_m;
    double ascent_m;
    double descent_m;
    // On foot, at the walking model's own speed on a path without a load:
    LcdaSums there;
    LcdaSums back; ///< the same ground the other way
    std::vector<SlopeStep> steps;
    Footing footing;    ///< for the walking models that tell the path from other ground
    double time_factor; ///< of the ground, and of the night where the trip file says so
    double eta;         ///< terrain coefficient of the energy models
    double steep_share; ///< of the time there, on ascents that are hard work
    double dark_factor; ///< on the time after dusk and before dawn, besides; 1 afloat
    std::optional<double> snow_m = {}; ///< depth of the snow, on foot, where the weather tells it
    double sinks_m = 0.0;              ///< of it, at each step
    // Afloat:
    std::vector<Course> courses;
    double current_mps;                       ///< negative against the boat
    std::optional<EstimatedCurrent> estimate; ///< of it, where nobody gave it
    double shelter;                           ///< share of the wind kept off
    bool drinkable;
    int scouts;
    double lasts_s;       ///< of a ride, which is one piece; else 0
    double led_mps = 0.0; ///< of a boat that is lined, waded with or poled; else 0

    [[nodiscard]] double length_m() const { return to_m - from_m; }

    [[nodiscard]] bool on_foot() const { return planner::on_foot(travel); }

    [[nodiscard]] bool afloat() const { return planner::afloat(travel); }

    /// What of a time on the move counts among the hours of a day and brings on its rests.
    [[nodiscard]] double own_effort_s(double moving_s) const {
        return is_ride(travel) ? 0.0 : moving_s;
    }
};

/// A point between two stretches.
struct Boundary {
    double along_m;
    std::vector<std::size_t> places;    ///< indices into Route::places
    bool leg_end;                       ///< of some leg, start and finish included
    bool may_sleep;                     ///< not in the middle of a lake, the sea or a portage
    bool water;                         ///< dependable drinking water
    bool supply;                        ///< resupply or cache
    std::optional<double> food_kg = {}; ///< of the supply, where the trip file says it
};

/// The route as stretches [i] between boundaries [i] and [i + 1].
struct Stretches {
    std::vector<Stretch> stretches;
    std::vector<Boundary> boundaries;

    /// The boundary nearest to a point of the route.
    [[nodiscard]] std::size_t boundary_at(double along_m) const;
};

/// Puts the snow of another day under a stretch on foot of that leg.
void lay_snow(Stretch& stretch, const LegOnDay& where, const Assumed& assumed);

/// Cuts a route at its legs' ends and places, and further so that no stretch on foot or on a river
/// is longer than `longest_m` (0: no further cuts).
[[nodiscard]] Stretches
make_stretches(const Trip& trip, const Route& route, const Assumed& assumed, double longest_m);

/// A boundary's name: its place, else the leg that ends or begins there, else "km 12.3".
[[nodiscard]] std::string
boundary_name(const Route& route, const Stretches& stretches, std::size_t boundary);

} // namespace tumpline::planner
