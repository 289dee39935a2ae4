#pragma once

#include "geo/ground/map_projection.h"

#include <cstddef>
#include <functional>
#include <unordered_map>
#include <vector>

namespace tumpline::geo {

/// A straight piece of a line on a map, and whose it is.
struct MapSegment {
    MapPoint a;
    MapPoint b;
    std::size_t owner;
};

/// Pieces of lines, found by where they lie.
class SegmentGrid {
  public:
    void add(const MapSegment& segment);

    /// Calls `visit` for every piece that may come within `reach_m` of `segment`, some of them
    /// twice; it answers whether to go on.
    void near(const MapSegment& segment,
              double reach_m,
              const std::function<bool(const MapSegment&)>& visit) const;

    /// How near the nearest piece comes to a point, if within `reach_m`; else `reach_m`.
    [[nodiscard]] double nearest_m(const MapPoint& point, double reach_m) const;

  private:
    std::vector<MapSegment> segments_;
    std::unordered_map<long long, std::vector<std::size_t>> cells_;
};

/// Where along the first of two pieces they cross, from 0 to 1; less than 0 if they do not.
[[nodiscard]] double crossing_share(const MapSegment& first, const MapSegment& second);

} // namespace tumpline::geo
