#pragma once

#include "planner/conditions/forecast.h"
#include "planner/defaults/defaults.h"
#include "planner/models/walking_speed.h"

#include <optional>

namespace tumpline::planner {

/// What ground, snow and dark do to time and effort on foot.
struct GroundMet {
    Footing footing = Footing::on_path;
    double time_factor = 1.0;
    double dark_factor = 1.0; ///< on the time after dusk and before dawn, besides
    double eta = 1.0;
    std::optional<double> snow_m = {}; ///< depth of the snow, where the weather tells it
    double sinks_m = 0.0;              ///< of it, at each step
};

/// Of a leg on a day. Snow of a known depth lies on any ground: the slower of both sets the time,
/// the harder of both the effort. A leg's own `footprint` stands in place of what the depth says.
[[nodiscard]] GroundMet ground_met(const LegOnDay& where, const Assumed& assumed);

} // namespace tumpline::planner
