#include "geo/gate/to_wgs84.h"

#include <ogr_spatialref.h>

#include <cmath>

namespace tumpline::geo {

ToWgs84::ToWgs84(const OGRSpatialReference& from) {
    OGRSpatialReference source(from);
    OGRSpatialReference target;
    target.importFromEPSG(4326);
    source.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    target.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    if (source.IsSame(&target) == 0) {
        transform_.reset(OGRCreateCoordinateTransformation(&source, &target));
        usable_ = transform_ != nullptr;
    }
}

ToWgs84::~ToWgs84() = default;
ToWgs84::ToWgs84(ToWgs84&&) noexcept = default;
ToWgs84& ToWgs84::operator=(ToWgs84&&) noexcept = default;

std::optional<Position> ToWgs84::operator()(const Plane& given) const {
    double x = given.x;
    double y = given.y;
    if (transform_ != nullptr) {
        int done = 0;
        if (transform_->Transform(1, &x, &y, nullptr, &done) == 0 || done == 0)
            return std::nullopt;
    }
    if (std::isfinite(x) && std::abs(x) > 180.0 && std::abs(x) <= 360.0)
        x = std::remainder(x, 360.0); // a line that goes on beyond the antimeridian
    const Position at{.lat_deg = y, .lon_deg = x};
    return is_valid(at) ? std::optional(at) : std::nullopt;
}

} // namespace tumpline::geo
