#pragma once

#include "planner/defaults/defaults.h"
#include "planner/journey/darkness.h"
#include "planner/journey/segments.h"

#include <algorithm>
#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// What a night takes from arriving to setting off: eight hours of sleep and three of camp work;
/// common practice, no source.
inline constexpr double least_night_s = 11.0 * 3600.0;

enum class EventKind {
    set_off,
    boots_to_boat,
    boat_to_boots,
    landing,
    scout,
    rest,
    halt,
    fill_water,
    resupply,
    cache,
    arrive
};

/// The stretches of one day, [first, last); none on a rest day.
struct DaySpan {
    int day; ///< from 1, rest days counted
    bool rest_day;
    std::size_t first;
    std::size_t last;
    bool waiting = false; ///< a day without travel on which one waits for a connection
};

/// What happens before or after moving on a stretch.
struct Change {
    std::optional<EventKind> kind;
    double lasts_s = 0.0;
};

/// How long the whole of a stretch would take if one spell of the weather lasted.
struct SpellPace {
    double until_s; ///< after the day's midnight; the last has no end
    double whole_s;
};

/// One stretch on the clock.
struct StretchTime {
    int day = 0;
    double by_day_s = 0.0;       ///< moving, were it all in daylight
    double moving_s = 0.0;       ///< by the clock: in the dark at the night's pace
    double dark_s = 0.0;         ///< of that, after dusk and before dawn
    double moved_before_s = 0.0; ///< moving on the same day before this stretch
    Change before;
    Change after;
    double scout_s = 0.0;
    int rests = 0;
    double rest_s = 0.0;
    double halt_s = 0.0;           ///< at midday, in the heat
    double halt_at_s = 0.0;        ///< when that begins
    std::vector<SpellPace> spells; ///< afloat, where the weather changes with the hour
    double start_s = 0.0;          ///< after local midnight of the day, change before included
    double end_s = 0.0;            ///< change after included

    [[nodiscard]] double change_s() const { return before.lasts_s + after.lasts_s + scout_s; }

    [[nodiscard]] double still_s() const { return rest_s + halt_s + change_s(); }
};

struct Timeline {
    std::vector<DaySpan> days;
    std::vector<StretchTime> stretches;
    /// Per day, after local midnight; on rest days the set-off time, on the last day of waiting
    /// that of the departure.
    std::vector<double> arrive_s;
    std::optional<double> waits_s = {}; ///< for a connection, on the last day, awake

    [[nodiscard]] int waiting_days() const {
        return static_cast<int>(std::count_if(
            days.begin(), days.end(), [](const DaySpan& day) { return day.waiting; }));
    }
};

/// How the boats go over a portage, or that a stretch is none.
enum class BoatState { none, rolled, whole };

/// The changes that the order of travel asks for, with the nights given. `boats[i]` says how the
/// boats go over stretch i if it is a portage.
void set_changes(std::vector<StretchTime>& times,
                 const Stretches& route,
                 const std::vector<DaySpan>& days,
                 const std::vector<BoatState>& boats,
                 const Assumed& assumed);

/// Whether the boats are on the water or inflated when each stretch begins (before its change).
[[nodiscard]] std::vector<bool> afloat_before(const Stretches& route,
                                              const std::vector<BoatState>& boats);

/// Days cut at the given boundaries (ascending, neither start nor finish), rest days put in.
[[nodiscard]] std::vector<DaySpan> days_at(const std::vector<std::size_t>& nights,
                                           std::size_t stretches,
                                           const std::vector<int>& rest_days_after);

/// What nights by hours are chosen by.
struct HoursWished {
    double hours_s; ///< of moving, on a day
    const std::vector<int>& rest_days_after;
    std::function<bool(int day, std::size_t boundary)> dark_all_day;
};

/// Nights by hours: each day goes on to the last boundary where one may sleep within the moving
/// hours wished; to a camp if one lies in the later half of the day's hours. `by_day_s` are moving
/// times in daylight; a day without any light is walked at the night's pace.
[[nodiscard]] std::vector<std::size_t> nights_by_hours(const Route& route,
                                                       const Stretches& stretches,
                                                       const std::vector<double>& by_day_s,
                                                       const HoursWished& wished);

/// Moving time of a stretch whose weather changes with the hour: each part at the pace of its own.
[[nodiscard]] double through_spells_s(const std::vector<SpellPace>& spells, const Walk& walk);

/// Puts moving, changes and rests on the clock of each day; `darkness` is each day's own.
void run_clock(Timeline& timeline,
               const Stretches& route,
               const std::vector<Darkness>& darkness,
               const Assumed& assumed);

} // namespace tumpline::planner
