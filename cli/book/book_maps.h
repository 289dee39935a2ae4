#pragma once

#include "cli/drawing/route_map.h"
#include "geo/ground/elevation.h"

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::cli {

/// The maps of a book: the whole route and, where the trip names a raster or layers, each day. How
/// much ground they carry follows from how large the book may become.
class BookMaps {
  public:
    /// `elevation` is null where the trip names no raster.
    BookMaps(const planner::Plan& plan,
             const planner::Route& route,
             geo::Elevation* elevation,
             planner::UnitSystem units);

    [[nodiscard]] const RouteMap& whole() const { return whole_; }

    /// Null where there is no map of that day.
    [[nodiscard]] const RouteMap* of_day(int day) const;

    /// What the maps share, for the book's <defs>.
    [[nodiscard]] std::string defs() const;

    /// Gives up a step of detail; false where nothing is left to give up.
    bool give_up();

    /// What was given up, for people; empty if nothing.
    [[nodiscard]] std::string given_up() const;

    /// Whose data the maps show, one each.
    [[nodiscard]] const std::vector<std::string>& credits() const { return credits_; }

    /// Whether anything but the route is drawn.
    [[nodiscard]] bool has_ground() const { return !defs().empty(); }

  private:
    struct Day {
        int day;
        RouteMap map;
        geo::HeightGrid heights;
    };

    void sample(geo::Elevation& elevation);
    void shade();
    void lay();
    [[nodiscard]] double interval_m(double denominator, int coarser) const;

    RouteMap whole_;
    std::deque<Day> days_; ///< a map does not move once it is made
    geo::HeightGrid heights_;
    double steep_ = 0.0;
    planner::UnitSystem units_;
    std::string relief_; ///< the picture, as an element
    std::size_t step_ = 0;
    std::vector<std::string> credits_;
};

} // namespace tumpline::cli
