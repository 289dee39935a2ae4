#pragma once

#include "cli/drawing/ground_picture.h"
#include "cli/drawing/load_band.h"
#include "cli/drawing/map_letters.h"
#include "geo/ground/map_projection.h"

#include <optional>
#include <string>
#include <vector>

namespace tumpline::cli {

/// A point of the route and where it lies along.
struct RoutePoint {
    geo::Position at;
    double along_m;
};

/// How much ground a book's maps can hold; the first is the richest.
struct GroundDetail {
    bool layers = true;
    double interval_m = 0.0;               ///< between contours; 0: none
    double tolerance = 0.25;               ///< pixels
    std::optional<double> corridor_m = {}; ///< contours only so near to the route
    planner::UnitSystem units = planner::UnitSystem::metric;
};

/// The map of the whole route or of a day of it, drawn at any size; the ground is drawn once.
class RouteMap {
  public:
    /// The whole route, as large as it fits.
    RouteMap(const planner::Plan& plan, const planner::Route& route);
    /// One day, at a round scale.
    RouteMap(const planner::Plan& plan, const planner::Route& route, const planner::PlanDay& day);

    /// The scale's denominator at the width of a page (184 mm).
    [[nodiscard]] double denominator() const;

    [[nodiscard]] const geo::MapProjection& projection() const { return projection_; }

    /// What of the ground is seen in any drawing.
    [[nodiscard]] GroundView ground_view() const;

    /// Heights there, on cells of so many pixels.
    [[nodiscard]] geo::HeightGrid heights(geo::Elevation& elevation, double cell_pixels) const;

    /// Lays contours and layers under the map. `heights` may be null.
    void lay_ground(const geo::HeightGrid* heights, const GroundDetail& detail);

    /// Lays the ground of another map of the same whole route under it.
    void lay_ground_of(const RouteMap& other);

    /// Lays a picture of the relief under it, drawn for the view of another map.
    void lay_relief(const GroundView& drawn_for);

    /// The ground as a <g> for the book's <defs>; empty if there is none.
    [[nodiscard]] std::string ground_markup() const;

    /// An <svg> element.
    [[nodiscard]] std::string draw(const Drawing& drawing, const Figures& shown) const;

    /// What the map's foot says besides: scale, contours.
    [[nodiscard]] std::string foot_text(const Figures& shown) const;

  private:
    struct Sheet;

    [[nodiscard]] Sheet sheet(const Drawing& drawing) const;
    [[nodiscard]] bool has_ground() const;
    [[nodiscard]] std::string ground_use(const Sheet& sheet) const;
    [[nodiscard]] MapLetters letters(const Sheet& sheet,
                                     const std::vector<DrawnPoint>& line,
                                     const Drawing& drawing,
                                     const Figures& shown) const;

    const planner::Plan& plan_;
    const planner::Route& route_;
    const planner::PlanDay* day_ = nullptr; ///< null: the whole route
    std::vector<RoutePoint> points_;        ///< of the route
    std::vector<RoutePoint> shown_points_;  ///< of the day, or the same
    geo::MapProjection projection_;
    geo::MapPoint half_;       ///< of the extent
    double day_highest_ = 0.0; ///< of the width
    double day_denominator_ = 0.0;
    GroundPicture contours_;
    GroundPicture land_;
    double interval_m_ = 0.0;
    std::string relief_; ///< a use of the picture in this map's wide pixels
};

} // namespace tumpline::cli
