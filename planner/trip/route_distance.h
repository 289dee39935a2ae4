#pragma once

#include "planner/trip/trip.h"

#include <optional>
#include <string>
#include <string_view>

/// Distances along the route as guidebooks and river maps give them.
namespace tumpline::planner {

/// What a distance along the route looks like, for messages.
inline constexpr std::string_view route_distance_form =
    "a distance along the route, such as \"km 41\", \"mi 30.5\", \"km 3.2 of LEG\" or "
    "\"km 2 before the end of LEG\"";

/// Reads "km 41", "mi 30.5", "km 3.2 of Lower river", "mi 2 before the end" (of the route) and
/// "mi 2 before the end of Lower river"; empty if it is none of them.
[[nodiscard]] std::optional<RouteDistance> read_route_distance(std::string_view text);

/// The same in words, kilometres: "km 3.2 of Lower river".
[[nodiscard]] std::string show_route_distance(const RouteDistance& along);

} // namespace tumpline::planner
