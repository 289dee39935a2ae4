#include "geo/ground/map_projection.h"

#include "geo/gate/proj_gate.h"

#include <fmt/format.h>
#include <proj.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <string>

namespace tumpline::geo {

namespace {

constexpr double degree = std::numbers::pi / 180.0;

/// The direction in which the points lie, seen from the Earth's centre; the first point where they
/// cancel out.
Position middle(const std::vector<Position>& points) {
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;
    for (const Position& point : points) {
        const double lat = point.lat_deg * degree;
        const double lon = point.lon_deg * degree;
        x += std::cos(lat) * std::cos(lon);
        y += std::cos(lat) * std::sin(lon);
        z += std::sin(lat);
    }
    const double across = std::hypot(x, y);
    if (std::hypot(across, z) < 1e-6 * static_cast<double>(points.size()))
        return points.front();
    return {std::atan2(z, across) / degree, std::atan2(y, x) / degree};
}

} // namespace

struct MapProjection::Projector {
    ProjContext context = make_proj_context();
    PJ* transformation = nullptr;

    explicit Projector(const Position& centre) {
        const std::string recipe =
            fmt::format("+proj=aeqd +lat_0={:.12f} +lon_0={:.12f} +ellps=WGS84",
                        centre.lat_deg,
                        centre.lon_deg);
        transformation = proj_create(context.get(), recipe.c_str());
        if (transformation == nullptr)
            throw std::runtime_error(fmt::format("PROJ refuses {}", recipe));
    }

    ~Projector() { proj_destroy(transformation); }

    Projector(const Projector&) = delete;
    Projector& operator=(const Projector&) = delete;
    Projector(Projector&&) = delete;
    Projector& operator=(Projector&&) = delete;
};

MapProjection::MapProjection(const std::vector<Position>& points) : centre_{0.0, 0.0} {
    if (points.empty())
        throw std::invalid_argument("a map needs a point");
    centre_ = middle(points);
    projector_ = std::make_unique<Projector>(centre_);
    MapPoint low = to_map(points.front());
    MapPoint high = low;
    for (const Position& position : points) {
        const MapPoint point = to_map(position);
        low = {std::min(low.east_m, point.east_m), std::min(low.north_m, point.north_m)};
        high = {std::max(high.east_m, point.east_m), std::max(high.north_m, point.north_m)};
    }
    // Points lie unevenly; the middle of their extent halves the largest distance from the centre.
    centre_ = to_ground({(low.east_m + high.east_m) / 2.0, (low.north_m + high.north_m) / 2.0});
    projector_ = std::make_unique<Projector>(centre_);
}

MapProjection::~MapProjection() = default;
MapProjection::MapProjection(MapProjection&&) noexcept = default;
MapProjection& MapProjection::operator=(MapProjection&&) noexcept = default;

MapPoint MapProjection::to_map(const Position& position) const {
    const PJ_COORD flat =
        proj_trans(projector_->transformation,
                   PJ_FWD,
                   proj_coord(position.lon_deg * degree, position.lat_deg * degree, 0.0, 0.0));
    return {flat.xy.x, flat.xy.y};
}

Position MapProjection::to_ground(const MapPoint& point) const {
    const PJ_COORD ground = proj_trans(
        projector_->transformation, PJ_INV, proj_coord(point.east_m, point.north_m, 0.0, 0.0));
    return {ground.lp.phi / degree, ground.lp.lam / degree};
}

} // namespace tumpline::geo
