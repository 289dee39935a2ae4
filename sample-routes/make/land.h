#pragma once

#include "sample-routes/make/lay_out.h"

#include <cstdint>
#include <filesystem>
#include <string>

namespace tumpline::samples {

/// Something in or beside a line of the route.
struct LandPoint {
    std::string name;
    std::string tag; ///< "waterway": "rapids", "waterfall" or "weir"
    std::size_t leg; ///< from 0
    double along_m;
};

/// What surrounds a route besides itself.
struct LandPlan {
    std::vector<LandPoint> points;
    std::uint64_t seed = 1;
};

/// Writes invented ground around a route as GeoJSON with the usual tags: a lake or a river under
/// every line of water, a path under every walk but for a stretch in its midst, streams across the
/// walks, a road at either end, and the points of the plan. The same on each run.
void write_land(const std::filesystem::path& file, const Layout& layout, const LandPlan& plan);

} // namespace tumpline::samples
