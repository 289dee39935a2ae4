#include "geo/layers/shore.h"

#include "geo/ground/map_projection.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <vector>

namespace tumpline::geo {

namespace {

/// A ring in a map whose centre is the place asked for: lines from the centre are geodesics.
using FlatRing = std::vector<MapPoint>;

/// A piece of a shore, seen from the place at (0, 0).
struct ShorePiece {
    const MapPoint& a;
    const MapPoint& b;
};

void each_piece(const std::vector<FlatRing>& rings,
                const std::function<void(const ShorePiece&)>& visit) {
    for (const FlatRing& ring : rings)
        for (std::size_t i = 0; i < ring.size(); ++i)
            visit({ring[i], ring[(i + 1) % ring.size()]});
}

/// Whether the origin lies inside, by the even-odd rule; a ray to the north is counted.
bool holds_origin(const std::vector<FlatRing>& rings) {
    bool inside = false;
    each_piece(rings, [&](const ShorePiece& piece) {
        const auto& [a, b] = piece;
        if ((a.east_m > 0.0) == (b.east_m > 0.0))
            return;
        const double north_m =
            a.north_m + (0.0 - a.east_m) / (b.east_m - a.east_m) * (b.north_m - a.north_m);
        inside = inside != (north_m > 0.0);
    });
    return inside;
}

/// Whether an area can hold a place at all: cheap, before anything is projected.
bool may_hold(const LandFeature& feature, const Position& place) {
    if (feature.kind != LayerKind::water || feature.shape != LandShape::area)
        return false;
    double west_deg = 360.0;
    double east_deg = -360.0;
    double south_deg = 90.0;
    double north_deg = -90.0;
    for (const auto& ring : feature.parts)
        for (const Position& at : ring) {
            const double off_deg = std::remainder(at.lon_deg - place.lon_deg, 360.0);
            west_deg = std::min(west_deg, off_deg);
            east_deg = std::max(east_deg, off_deg);
            south_deg = std::min(south_deg, at.lat_deg);
            north_deg = std::max(north_deg, at.lat_deg);
        }
    return west_deg <= 0.0 && east_deg >= 0.0 && south_deg <= place.lat_deg &&
           north_deg >= place.lat_deg;
}

/// The shores of every area of water that has the place in it, on a map about the place.
std::vector<std::vector<FlatRing>> waters_about(const MapLayers& land, const Position& place) {
    std::vector<std::vector<FlatRing>> waters;
    std::optional<MapProjection> projection;
    for (const LandFeature& feature : land.features) {
        if (!may_hold(feature, place))
            continue;
        if (!projection)
            projection.emplace(std::vector<Position>{place});
        std::vector<FlatRing> rings;
        for (const auto& ring : feature.parts) {
            FlatRing& flat = rings.emplace_back();
            flat.reserve(ring.size());
            for (const Position& at : ring)
                flat.push_back(projection->to_map(at));
        }
        if (holds_origin(rings))
            waters.push_back(std::move(rings));
    }
    return waters;
}

/// How far along a direction a piece of shore is met; infinite if it is not.
double met_m(const ShorePiece& piece, double bearing_deg) {
    const double bearing = bearing_deg * std::numbers::pi / 180.0;
    const double east = std::sin(bearing);
    const double north = std::cos(bearing);
    const auto& [a, b] = piece;
    const double across_a = a.east_m * north - a.north_m * east; // right of the direction
    const double across_b = b.east_m * north - b.north_m * east;
    if ((across_a > 0.0) == (across_b > 0.0))
        return std::numeric_limits<double>::infinity();
    const double share = across_a / (across_a - across_b);
    const double along_m = (a.east_m + share * (b.east_m - a.east_m)) * east +
                           (a.north_m + share * (b.north_m - a.north_m)) * north;
    return along_m >= 0.0 ? along_m : std::numeric_limits<double>::infinity();
}

double off_m(const ShorePiece& piece) {
    const auto& [a, b] = piece;
    const double east_m = b.east_m - a.east_m;
    const double north_m = b.north_m - a.north_m;
    const double squared = east_m * east_m + north_m * north_m;
    const double share =
        squared > 0.0 ? std::clamp(-(a.east_m * east_m + a.north_m * north_m) / squared, 0.0, 1.0)
                      : 0.0;
    return std::hypot(a.east_m + share * east_m, a.north_m + share * north_m);
}

/// The furthest that any of the waters reaches; each to its nearest piece of shore.
std::optional<double> reach_m(const MapLayers& land,
                              const Position& place,
                              const std::function<double(const ShorePiece&)>& distance_to) {
    std::optional<double> furthest_m;
    for (const std::vector<FlatRing>& rings : waters_about(land, place)) {
        double nearest_m = std::numeric_limits<double>::infinity();
        each_piece(rings, [&](const ShorePiece& piece) {
            nearest_m = std::min(nearest_m, distance_to(piece));
        });
        if (std::isfinite(nearest_m))
            furthest_m = std::max(furthest_m.value_or(0.0), nearest_m);
    }
    return furthest_m;
}

} // namespace

std::optional<double> fetch_m(const MapLayers& land, const Position& place, double bearing_deg) {
    return reach_m(land, place, [&](const ShorePiece& piece) { return met_m(piece, bearing_deg); });
}

std::optional<double> shore_m(const MapLayers& land, const Position& place) {
    return reach_m(land, place, off_m);
}

} // namespace tumpline::geo
