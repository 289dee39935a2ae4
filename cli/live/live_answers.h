#pragma once

#include "cli/live/live_trip.h"
#include "cli/live/loopback_server.h"
#include "planner/quantities/quantities.h"

#include <functional>
#include <optional>
#include <vector>

/// Between HTTP and the planner: what each path answers (docs/live.md, "The HTTP contract").
namespace tumpline::cli {

/// The page's files, and what it asks. `units`: as the command line said; `end` ends the server.
[[nodiscard]] std::vector<LiveRoute>
live_routes(LiveTrip& trip, std::optional<planner::UnitSystem> units, std::function<void()> end);

/// Tells when the trip file was changed.
[[nodiscard]] LiveEvents live_events(const LiveTrip& trip);

} // namespace tumpline::cli
