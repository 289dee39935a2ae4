#pragma once

#include "geo/layers/map_layers.h"
#include "geo/position.h"

#include <optional>

namespace tumpline::geo {

/// From a place on a lake, how far open water reaches in the direction `bearing_deg` (from which
/// the wind blows): to the first shore, an island's too. Empty if no area of water in the layers
/// has the place in it.
[[nodiscard]] std::optional<double>
fetch_m(const MapLayers& land, const Position& place, double bearing_deg);

/// How far it is from a place on the water to the nearest shore; empty as above.
[[nodiscard]] std::optional<double> shore_m(const MapLayers& land, const Position& place);

} // namespace tumpline::geo
