#pragma once

#include "geo/ground/map_projection.h"
#include "geo/layers/map_layers.h"
#include "geo/position.h"

#include <optional>
#include <vector>

namespace tumpline::geo {

/// The shores of the lakes that a line leads over, by the areas of water in the layers: on one map,
/// laid out once, so that many places of the line can be asked for.
class Shores {
  public:
    /// Throws std::invalid_argument if the line has no point.
    Shores(const MapLayers& land, const std::vector<Position>& line);

    /// From a place on a lake, how far open water reaches in the direction `bearing_deg` (from
    /// which the wind blows): to the first shore, an island's too. Empty if no area of water has
    /// the place in it.
    [[nodiscard]] std::optional<double> fetch_m(const Position& place, double bearing_deg) const;

    /// How far it is from a place on the water to the nearest shore; empty as above.
    [[nodiscard]] std::optional<double> shore_m(const Position& place) const;

  private:
    using Ring = std::vector<MapPoint>;

    /// An area of water with its islands, and its extent.
    struct Area {
        std::vector<Ring> rings;
        MapPoint least;
        MapPoint most;
    };

    template <typename Distance>
    std::optional<double> reach_m(const MapPoint& place, const Distance& distance_to) const;

    MapProjection projection_;
    std::vector<Area> areas_;
};

} // namespace tumpline::geo
