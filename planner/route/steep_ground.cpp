#include "planner/route/steep_ground.h"

#include "geo/ground/height_grid.h"
#include "planner/models/avalanche.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

namespace tumpline::planner {

namespace {

constexpr double finest_cell_m = 25.0;
constexpr double look_m = 3000.0;      // away from the line
constexpr double piece_m = 5000.0;     // of the line, on one grid
constexpr double every_m = 50.0;       // along it
constexpr double joined_m = 150.0;     // parts no further apart are one
constexpr double least_above_m = 20.0; // no river bank; common practice, no source
constexpr int rays = 32;

double degrees(double rise_over_run) {
    return std::atan(rise_over_run) * 180.0 / std::numbers::pi;
}

/// What one point of the line has on it or above it.
struct Seen {
    bool known = false;
    bool on_line = false;
    double steepest_deg = 0.0; ///< 0: no such ground
    double nearest_m = 0.0;
};

/// The ground around a piece of a leg, and its slopes.
class GroundAround {
  public:
    GroundAround(const geo::Polyline& piece, geo::Elevation& elevation);

    [[nodiscard]] Seen seen_from(const geo::Position& place) const;

  private:
    struct Cell {
        int column;
        int row;
    };

    [[nodiscard]] bool holds(const Cell& cell) const {
        return cell.column > 0 && cell.row > 0 && cell.column + 1 < grid_.frame.columns &&
               cell.row + 1 < grid_.frame.rows;
    }

    [[nodiscard]] double height_m(const Cell& cell) const {
        return static_cast<double>(grid_.at(cell.column, cell.row));
    }

    /// By central differences; NaN beside unknown ground.
    [[nodiscard]] double slope_deg(const Cell& cell) const;
    [[nodiscard]] Cell cell_at(const geo::MapPoint& point) const;
    void look_along(double bearing_rad, const geo::MapPoint& from, Seen& seen) const;

    geo::MapProjection projection_;
    geo::HeightGrid grid_;
};

geo::GridFrame
frame_around(const geo::Polyline& piece, const geo::MapProjection& projection, double cell_m) {
    double east_m = -HUGE_VAL, west_m = HUGE_VAL, north_m = -HUGE_VAL, south_m = HUGE_VAL;
    for (const geo::Position& point : piece.points()) {
        const geo::MapPoint at = projection.to_map(point);
        east_m = std::max(east_m, at.east_m);
        west_m = std::min(west_m, at.east_m);
        north_m = std::max(north_m, at.north_m);
        south_m = std::min(south_m, at.north_m);
    }
    const double margin_m = look_m + 2.0 * cell_m;
    return {.north_west = {west_m - margin_m, north_m + margin_m},
            .cell_m = cell_m,
            .columns = static_cast<int>(std::ceil((east_m - west_m + 2.0 * margin_m) / cell_m)),
            .rows = static_cast<int>(std::ceil((north_m - south_m + 2.0 * margin_m) / cell_m))};
}

GroundAround::GroundAround(const geo::Polyline& piece, geo::Elevation& elevation)
    : projection_(piece.points()),
      grid_(geo::sampled_heights(
          elevation,
          projection_,
          frame_around(piece, projection_, std::max(finest_cell_m, elevation.cell_m())))) {}

double GroundAround::slope_deg(const Cell& cell) const {
    const auto rise = [&](const Cell& a, const Cell& b) {
        return (height_m(a) - height_m(b)) / (2.0 * grid_.frame.cell_m);
    };
    const double east = rise({cell.column + 1, cell.row}, {cell.column - 1, cell.row});
    const double north = rise({cell.column, cell.row - 1}, {cell.column, cell.row + 1});
    return degrees(std::hypot(east, north));
}

GroundAround::Cell GroundAround::cell_at(const geo::MapPoint& point) const {
    const geo::GridFrame& frame = grid_.frame;
    return {
        static_cast<int>(std::floor((point.east_m - frame.north_west.east_m) / frame.cell_m)),
        static_cast<int>(std::floor((frame.north_west.north_m - point.north_m) / frame.cell_m))};
}

/// Outwards from the line, until the ground is not known.
void GroundAround::look_along(double bearing_rad, const geo::MapPoint& from, Seen& seen) const {
    const double start_m = height_m(cell_at(from));
    double highest_m = start_m;
    for (int step = 1; step * grid_.frame.cell_m <= look_m; ++step) {
        const double away_m = step * grid_.frame.cell_m;
        const Cell cell = cell_at({from.east_m + away_m * std::sin(bearing_rad),
                                   from.north_m + away_m * std::cos(bearing_rad)});
        if (!holds(cell) || std::isnan(height_m(cell)))
            return;
        const double above_m = height_m(cell) - start_m;
        if (height_m(cell) < highest_m) // behind higher ground
            continue;
        highest_m = height_m(cell);
        if (above_m < least_above_m || !may_reach({.away_m = away_m, .below_m = above_m}))
            continue;
        const double slope = slope_deg(cell);
        if (!may_release(slope)) // nor where it is NaN
            continue;
        if (seen.steepest_deg == 0.0 || away_m < seen.nearest_m)
            seen.nearest_m = away_m;
        seen.steepest_deg = std::max(seen.steepest_deg, slope);
    }
}

Seen GroundAround::seen_from(const geo::Position& place) const {
    Seen seen;
    const geo::MapPoint from = projection_.to_map(place);
    const Cell here = cell_at(from);
    if (!holds(here) || std::isnan(height_m(here)))
        return seen;
    seen.known = true;
    const double slope = slope_deg(here);
    if (may_release(slope)) {
        seen.on_line = true;
        seen.steepest_deg = slope;
        return seen;
    }
    for (int ray = 0; ray < rays; ++ray)
        look_along(2.0 * std::numbers::pi * ray / rays, from, seen);
    return seen;
}

/// Adds a point to the parts of a leg: to the last one, if that is of its kind and near.
void add_point(std::vector<SteepPart>& parts, const SteepPart& point) {
    if (!parts.empty() && parts.back().leg == point.leg && parts.back().on_line == point.on_line &&
        point.from_m - parts.back().to_m <= joined_m) {
        SteepPart& part = parts.back();
        part.to_m = point.to_m;
        part.steepest_deg = std::max(part.steepest_deg, point.steepest_deg);
        part.nearest_m = std::min(part.nearest_m, point.nearest_m);
    } else {
        parts.push_back(point);
    }
}

/// Returns whether all heights along the leg are known.
bool look_along_leg(const Route& route,
                    std::size_t index,
                    geo::Elevation& elevation,
                    std::vector<SteepPart>& parts) {
    const RouteLeg& leg = route.legs[index];
    const double length_m = leg.line.length_m();
    const int points = std::max(1, static_cast<int>(std::ceil(length_m / every_m)));
    const int in_piece = static_cast<int>(piece_m / every_m);
    std::optional<GroundAround> ground;
    bool known = true;
    for (int k = 0; k <= points; ++k) {
        const double at_m = length_m * k / points;
        if (k % in_piece == 0 && (k < points || !ground))
            ground.emplace(leg.line.cut(at_m, at_m + piece_m + every_m), elevation);
        const Seen seen = ground->seen_from(leg.line.at(at_m));
        known = known && seen.known;
        const double half_m = 0.5 * length_m / points;
        if (seen.steepest_deg > 0.0)
            add_point(parts,
                      {.leg = LegNumber::of_index(index),
                       .from_m = leg.from_m + std::max(0.0, at_m - half_m),
                       .to_m = leg.from_m + std::min(length_m, at_m + half_m),
                       .on_line = seen.on_line,
                       .steepest_deg = seen.steepest_deg,
                       .nearest_m = seen.nearest_m});
    }
    return known;
}

} // namespace

bool speaks_of_snow(const Trip& trip) {
    return trip.weather.snow.value_or(false) || trip.weather.snow_depth_m.value_or(0.0) > 0.0 ||
           std::any_of(trip.route.legs.begin(), trip.route.legs.end(), [](const TripLeg& leg) {
               return leg.terrain == Terrain::snow;
           });
}

SteepGround steep_ground(const Route& route, geo::Elevation& elevation) {
    SteepGround steep{
        .cell_m = std::max(finest_cell_m, elevation.cell_m()), .parts = {}, .known = {}};
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const RouteLeg& leg = route.legs[i];
        const bool looked = on_foot(leg.travel) && leg.drawn();
        steep.known.push_back(looked && look_along_leg(route, i, elevation, steep.parts));
    }
    return steep;
}

} // namespace tumpline::planner
