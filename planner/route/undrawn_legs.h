#pragma once

#include "planner/route/leg_chain.h"
#include "planner/route/route.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

/// Legs without a track, known by their length: a sheet from a guidebook.
namespace tumpline::planner {

/// Puts the one point of each leg without a line where the leg goes from, or where the line ahead
/// ends, or the line after it begins, or where it goes to; else `somewhere` on the trip. It is for
/// the sun only. False if there is no such place at all.
[[nodiscard]] bool
put_undrawn(std::vector<LooseLeg>& legs,
            const std::function<std::optional<geo::Position>(const std::string&)>& position_of,
            const std::optional<geo::Position>& somewhere);

/// Legs without a line between two lines whose ends lie further apart than the legs are long.
struct ShortLegs {
    std::string before, after; ///< names of the legs with a line
    double length_m;           ///< of those between them
    double apart_m;
};

[[nodiscard]] std::vector<ShortLegs> too_short_between(const Route& route);

} // namespace tumpline::planner
