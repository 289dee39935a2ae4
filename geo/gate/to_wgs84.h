#pragma once

#include "geo/position.h"

#include <memory>
#include <optional>

class OGRCoordinateTransformation;
class OGRSpatialReference;

namespace tumpline::geo {

/// Brings coordinates of one system to WGS 84, longitude first.
class ToWgs84 {
  public:
    explicit ToWgs84(const OGRSpatialReference& from);
    ~ToWgs84();
    ToWgs84(ToWgs84&& other) noexcept;
    ToWgs84& operator=(ToWgs84&& other) noexcept;

    /// Whether the system can be turned into longitude and latitude.
    [[nodiscard]] bool usable() const { return usable_; }

    /// A point in the coordinates of the given system.
    struct Plane {
        double x;
        double y;
    };

    /// Empty where the transformation has no answer or the answer is out of bounds.
    [[nodiscard]] std::optional<Position> operator()(const Plane& given) const;

  private:
    std::unique_ptr<OGRCoordinateTransformation> transform_; ///< null: it is WGS 84
    bool usable_ = true;
};

} // namespace tumpline::geo
