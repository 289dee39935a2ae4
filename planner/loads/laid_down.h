#pragma once

#include "planner/journey/schedule.h"
#include "planner/journey/segments.h"
#include "planner/loads/ledger.h"
#include "planner/route/route.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What lies somewhere until it is fetched. The one question of everybody else is: is this thing
/// with the party on this stretch?
namespace tumpline::planner {

/// One of Trip::leaves on the route and in the days of a plan.
struct LaidDown {
    std::optional<std::size_t> left_at;    ///< boundary; empty: its day does not come by there
    std::optional<std::size_t> fetched_at; ///< boundary; empty: no later pass, or not on its day
    std::vector<std::size_t> kit;          ///< of Trip::kit, what comes and is left; ascending
    std::vector<std::size_t> craft;        ///< ascending

    /// Whether it lies there while the party is on a stretch.
    [[nodiscard]] bool lies_on(std::size_t stretch) const {
        return left_at && stretch >= *left_at && (!fetched_at || stretch < *fetched_at);
    }

    /// Whether a night that is spent at a boundary is spent without it.
    [[nodiscard]] bool misses_night(std::size_t boundary) const {
        return left_at && boundary > *left_at && (!fetched_at || boundary < *fetched_at);
    }
};

/// A thing of the kit, or a boat.
struct ThingRef {
    Part part; ///< kit or craft
    std::size_t index;
};

/// Whether a thing is among what an entry leaves.
[[nodiscard]] bool holds(const LaidDown& laid, const ThingRef& thing);

/// Whether a thing is with the party on a stretch, as far as nothing else keeps it at home.
[[nodiscard]] bool
with_party(const std::vector<LaidDown>& laid, const ThingRef& thing, std::size_t stretch);

/// What the resolving of leaves looks at.
struct LeaveInputs {
    const Trip& trip;
    const Route& route;
    const Stretches& stretches;
    const std::vector<DaySpan>& days;
    const std::vector<bool>& brought; ///< per kit item
};

/// Each of Trip::leaves at its pass: on its day the first pass, else the one of its number, else
/// the first of all; fetched at the next pass, or at the first of its day after that. A thing that
/// an earlier entry has left and not yet fetched stays there.
[[nodiscard]] std::vector<LaidDown> laid_down(const LeaveInputs& inputs);

/// A thing that is to be left while it lies elsewhere.
struct LeftTwice {
    std::size_t leave; ///< index into Trip::leaves
    std::size_t earlier;
    std::string thing;
};

/// What `laid_down` did not leave because it lay elsewhere and an entry names it.
[[nodiscard]] std::vector<LeftTwice> left_twice(const LeaveInputs& inputs);

} // namespace tumpline::planner
