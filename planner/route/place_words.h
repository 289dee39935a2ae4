#pragma once

#include "geo/tracks/track.h"
#include "planner/trip/trip.h"

#include <optional>
#include <string_view>

/// What people call things in track files, in words of a trip file.
namespace tumpline::planner {

/// The kind of place that a waypoint's type or else its name tells; empty if neither does.
/// Source: words of the trade, our own choice; docs/new.md.
[[nodiscard]] std::optional<PlaceKind> kind_of(const geo::Waypoint& waypoint);

/// The way of travel that a track's name tells. A water's name counts only where the name tells of
/// no way beside it or to it ("Lake trail", "to the river").
[[nodiscard]] std::optional<Travel> travel_from_name(std::string_view name);

/// What a track's type, or else its name, tells of other than walking and paddling: "a run", "a
/// ride", "skiing or skating", "a drive"; empty if it tells nothing of the kind.
[[nodiscard]] std::string_view other_than_walking(const geo::Track& track);

/// River, sea or lake, by words in a type or a name; empty if it tells none.
[[nodiscard]] std::optional<Water> water_from_name(std::string_view name);

} // namespace tumpline::planner
