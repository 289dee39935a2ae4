#pragma once

#include "geo/position.h"
#include "planner/defaults/defaults.h"

#include <cmath>

/// When it is dark on a day of the trip, and what that does to a walk. What is in the dark is told
/// by the clock: after civil dusk and before civil dawn.
namespace tumpline::planner {

/// The dark hours of one day, seconds after its midnight as its clock counts them. The dawn after
/// an evening is taken at the hour of the day's own.
struct Darkness {
    double dawn_s = 0.0;           ///< dark before; HUGE_VAL where there is no light all day
    double dusk_s = HUGE_VAL;      ///< dark from then on
    double next_dawn_s = HUGE_VAL; ///< until then

    [[nodiscard]] bool at(double after_midnight_s) const {
        return after_midnight_s < dawn_s ||
               (after_midnight_s >= dusk_s && after_midnight_s < next_dawn_s);
    }

    [[nodiscard]] bool all_day() const { return dawn_s == HUGE_VAL; }

    /// The next dawn or dusk after a moment; HUGE_VAL if there is none.
    [[nodiscard]] double next_change_s(double after_midnight_s) const;
};

/// Of a day of the trip (from 1) at a place.
[[nodiscard]] Darkness darkness_on(const Assumed& assumed, int day, const geo::Position& place);

/// Hours of a day in which nobody travels, seconds after its midnight.
struct Pause {
    double from_s = HUGE_VAL;
    double to_s = HUGE_VAL;

    [[nodiscard]] bool at(double after_midnight_s) const {
        return after_midnight_s >= from_s && after_midnight_s < to_s;
    }
};

/// A walk as it would be by day, put on the clock.
struct Walk {
    double start_s;        ///< after midnight
    double by_day_s;       ///< moving time in daylight
    double moved_before_s; ///< on the same day, for its rests
    double rest_per_hour_s;
    double dark_factor; ///< on the time in the dark
    Pause pause = {};
};

struct Walked {
    double moving_s;
    double dark_s;         ///< of it, in the dark
    double paused_s = 0.0; ///< besides
};

/// How long the walk takes, its hours in the dark at the night's pace. Rests come after each full
/// hour of moving on the day.
[[nodiscard]] Walked walked(const Walk& walk, const Darkness& darkness);

} // namespace tumpline::planner
