#pragma once

#include <cstddef>
#include <functional>
#include <vector>

/// Where to sleep, as an exact dynamic programme over days. It knows stops and costs, not trips;
/// planner/solution/night_costs.h says what a day costs (docs/nights.md).
namespace tumpline::planner {

/// What a day costs, in hours that one would rather not have had.
struct DayCost {
    double over_wish = 0.0; ///< moving longer than wished
    double uneven = 0.0;    ///< away from the wish either way, squared
    double late = 0.0;      ///< arriving close to dusk or after it
    double dry_camp = 0.0;
    double carried = 0.0; ///< food and water carried far on foot for the night
    double missed = 0.0;  ///< appointments that are not hard

    [[nodiscard]] double sum() const {
        return over_wish + uneven + late + dry_camp + carried + missed;
    }

    DayCost& operator+=(const DayCost& other);
};

/// What no day may break. As bits, so that a set of them is a number.
enum class NightLimit : unsigned {
    most_hours = 1U << 0U,
    dusk = 1U << 1U,
    camp_closed = 1U << 2U,
    camp_full = 1U << 3U,
    water = 1U << 4U,
    supply_closed = 1U << 5U,
    appointment = 1U << 6U,
    most_days = 1U << 7U
};

using NightLimits = unsigned;

[[nodiscard]] constexpr NightLimits bit(NightLimit limit) {
    return static_cast<NightLimits>(limit);
}

/// One day of travel between two stops.
struct NightSpan {
    std::size_t from;
    std::size_t to;
    int travel_day; ///< from 1, rest days not counted
};

/// What the programme must know of a day.
struct NightDay {
    DayCost cost;             ///< every term 0 or more
    NightLimits broken = 0;   ///< whatever the days before were
    double to_source_l = 0.0; ///< drunk by each up to the day's first source; all of it without one
    bool source = false;      ///< vessels can be filled on the way or at the end
    double after_source_l = 0.0; ///< drunk from the last source on, the night after it included
    /// A day from the same stop to a later one costs no less than this; HUGE_VAL: it would break
    /// the limit of hours as this one does.
    double longer_costs_at_least = 0.0;
};

struct NightProgramme {
    std::size_t stops; ///< 0 is the start, the last one the finish, between them one may sleep
    double room_l;     ///< in each one's vessels, the reserve left out; HUGE_VAL: no limit
    std::function<NightDay(const NightSpan&)> day;
    /// What a day between two stops costs at least, whichever day it is; left out: nothing.
    std::function<double(std::size_t from, std::size_t to)> least = {};
    NightLimits waived = 0; ///< limits that may be broken
};

/// One way to cut the route into days.
struct NightChoice {
    std::vector<std::size_t> stops; ///< ascending, without start and finish
    double cost;                    ///< sum over the days, in their order
};

/// The `how_many` cheapest choices that keep every limit which is not waived, cheapest first; of
/// equals the one that stops earlier at the first difference. Fewer if there are no more.
///
/// States are (stop, days so far); between sources the water drunk since the last one is carried
/// along as a second figure, and a way is dropped only if enough others are as cheap and as wet.
/// Ways that cannot be finished under a bound, by what the rest of the route costs at least, are
/// left out, and the bound is raised until the answer lies under it: exact, and quick where days
/// are many.
[[nodiscard]] std::vector<NightChoice> best_nights(const NightProgramme& programme,
                                                   std::size_t how_many);

} // namespace tumpline::planner
