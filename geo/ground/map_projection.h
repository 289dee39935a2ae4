#pragma once

#include "geo/position.h"

#include <memory>
#include <vector>

namespace tumpline::geo {

/// A point of a flat map, metres east and north of the map's centre.
struct MapPoint {
    double east_m;
    double north_m;
};

/// A flat map fitted to a set of points: PROJ's azimuthal equidistant projection of WGS84 about
/// the middle of their extent. Length and direction of every line from the centre are those of the
/// geodesic; elsewhere, `r` from the centre, lines across that direction come out longer by the
/// factor (r/R)/sin(r/R): 0.1 % at 500 km. Nothing tears at the 180th meridian or at a pole.
/// Source: [Snyder1987], chapter 25.
class MapProjection {
  public:
    /// Fits the map. Throws std::invalid_argument on an empty list.
    explicit MapProjection(const std::vector<Position>& points);
    ~MapProjection();
    MapProjection(MapProjection&& other) noexcept;
    MapProjection& operator=(MapProjection&& other) noexcept;
    MapProjection(const MapProjection&) = delete;
    MapProjection& operator=(const MapProjection&) = delete;

    [[nodiscard]] MapPoint to_map(const Position& position) const;

    [[nodiscard]] Position to_ground(const MapPoint& point) const;

    /// The point of the ground at the map's origin.
    [[nodiscard]] const Position& centre() const noexcept { return centre_; }

  private:
    struct Projector;
    Position centre_;
    std::unique_ptr<Projector> projector_;
};

} // namespace tumpline::geo
