#include "geo/layers/shore.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace tumpline::geo {

namespace {

/// A piece of a shore, seen from the place at (0, 0).
struct ShorePiece {
    MapPoint a;
    MapPoint b;
};

template <typename Rings, typename Visit>
void each_piece(const Rings& rings, const MapPoint& from, const Visit& visit) {
    const auto seen = [&](const MapPoint& point) {
        return MapPoint{point.east_m - from.east_m, point.north_m - from.north_m};
    };
    for (const auto& ring : rings)
        for (std::size_t i = 0; i < ring.size(); ++i)
            visit(ShorePiece{seen(ring[i]), seen(ring[(i + 1) % ring.size()])});
}

/// Whether a place lies inside, by the even-odd rule; a ray to the north is counted.
template <typename Rings> bool hold(const Rings& rings, const MapPoint& place) {
    bool inside = false;
    each_piece(rings, place, [&](const ShorePiece& piece) {
        const auto& [a, b] = piece;
        if ((a.east_m > 0.0) == (b.east_m > 0.0))
            return;
        const double north_m =
            a.north_m + (0.0 - a.east_m) / (b.east_m - a.east_m) * (b.north_m - a.north_m);
        inside = inside != (north_m > 0.0);
    });
    return inside;
}

/// How far along a direction of unit length a piece of shore is met; infinite if it is not.
double met_m(const ShorePiece& piece, const MapPoint& towards) {
    const auto& [a, b] = piece;
    const double side_a = towards.east_m * a.north_m - towards.north_m * a.east_m;
    const double side_b = towards.east_m * b.north_m - towards.north_m * b.east_m;
    if ((side_a > 0.0) == (side_b > 0.0))
        return std::numeric_limits<double>::infinity();
    const double share = side_a / (side_a - side_b);
    const double along_m = std::lerp(a.east_m, b.east_m, share) * towards.east_m +
                           std::lerp(a.north_m, b.north_m, share) * towards.north_m;
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

bool is_lake(const LandFeature& feature) {
    return feature.kind == LayerKind::water && feature.shape == LandShape::area;
}

/// An extent in degrees; longitudes are counted from one meridian, so that nothing tears.
class Extent {
  public:
    explicit Extent(double meridian_deg) : meridian_deg_(meridian_deg) {}

    void add(const std::vector<Position>& points) {
        for (const Position& at : points) {
            const double off_deg = std::remainder(at.lon_deg - meridian_deg_, 360.0);
            west_deg_ = std::min(west_deg_, off_deg);
            east_deg_ = std::max(east_deg_, off_deg);
            south_deg_ = std::min(south_deg_, at.lat_deg);
            north_deg_ = std::max(north_deg_, at.lat_deg);
        }
    }

    [[nodiscard]] bool meets(const Extent& other) const {
        return west_deg_ <= other.east_deg_ && east_deg_ >= other.west_deg_ &&
               south_deg_ <= other.north_deg_ && north_deg_ >= other.south_deg_;
    }

  private:
    double meridian_deg_;
    double west_deg_ = 360.0;
    double east_deg_ = -360.0;
    double south_deg_ = 90.0;
    double north_deg_ = -90.0;
};

} // namespace

Shores::Shores(const MapLayers& land, const std::vector<Position>& line) : projection_(line) {
    Extent around(line.front().lon_deg);
    around.add(line);
    for (const LandFeature& feature : land.features) {
        if (!is_lake(feature))
            continue;
        Extent lake(line.front().lon_deg);
        for (const auto& ring : feature.parts)
            lake.add(ring);
        if (!lake.meets(around))
            continue;
        constexpr double none = std::numeric_limits<double>::infinity();
        Area area{.rings = {}, .least = {none, none}, .most = {-none, -none}};
        for (const auto& ring : feature.parts) {
            Ring& flat = area.rings.emplace_back();
            flat.reserve(ring.size());
            for (const Position& at : ring) {
                const MapPoint point = projection_.to_map(at);
                area.least = {std::min(area.least.east_m, point.east_m),
                              std::min(area.least.north_m, point.north_m)};
                area.most = {std::max(area.most.east_m, point.east_m),
                             std::max(area.most.north_m, point.north_m)};
                flat.push_back(point);
            }
        }
        areas_.push_back(std::move(area));
    }
}

/// The furthest that any of the waters reaches; each to its nearest piece of shore.
template <typename Distance>
std::optional<double> Shores::reach_m(const MapPoint& place, const Distance& distance_to) const {
    std::optional<double> furthest_m;
    for (const Area& area : areas_) {
        if (place.east_m < area.least.east_m || place.east_m > area.most.east_m ||
            place.north_m < area.least.north_m || place.north_m > area.most.north_m ||
            !hold(area.rings, place))
            continue;
        double nearest_m = std::numeric_limits<double>::infinity();
        each_piece(area.rings, place, [&](const ShorePiece& piece) {
            nearest_m = std::min(nearest_m, distance_to(piece));
        });
        if (std::isfinite(nearest_m))
            furthest_m = std::max(furthest_m.value_or(0.0), nearest_m);
    }
    return furthest_m;
}

std::optional<double> Shores::fetch_m(const Position& place, double bearing_deg) const {
    // North of the ground is not north of the map everywhere: the direction is that of a step.
    constexpr double step_m = 1000.0;
    const MapPoint from = projection_.to_map(place);
    const MapPoint to = projection_.to_map(destination(place, bearing_deg, step_m));
    const double length_m = std::hypot(to.east_m - from.east_m, to.north_m - from.north_m);
    const MapPoint towards{(to.east_m - from.east_m) / length_m,
                           (to.north_m - from.north_m) / length_m};
    return reach_m(from, [&](const ShorePiece& piece) { return met_m(piece, towards); });
}

std::optional<double> Shores::shore_m(const Position& place) const {
    return reach_m(projection_.to_map(place), off_m);
}

} // namespace tumpline::geo
