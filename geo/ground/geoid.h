#pragma once

#include "geo/position.h"

#include <optional>

namespace tumpline::geo {

/// Height of the geoid (EGM96) above the WGS84 ellipsoid; empty where PROJ's grid is not at hand.
[[nodiscard]] std::optional<double> geoid_height_m(const Position& position);

} // namespace tumpline::geo
