#pragma once

#include "geo/profiles/profile.h"

#include <optional>

namespace tumpline::planner {

/// By how much the ground under a line rises from its first fifth to its last, metres, by heights
/// that no river has flattened; empty unless it is more than their noise, which is taken to be the
/// threshold of their source. The lower quartile of each fifth counts, since banks and trees only
/// ever stand above the water; what a fifth's middle lacks to the ends is added.
[[nodiscard]] std::optional<double> rise_beyond_noise_m(const geo::Profile& ground);

} // namespace tumpline::planner
