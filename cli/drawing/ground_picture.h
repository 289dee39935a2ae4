#pragma once

#include "cli/drawing/ground_lines.h"
#include "geo/ground/elevation.h"
#include "geo/ground/height_grid.h"
#include "geo/ground/map_projection.h"
#include "geo/layers/map_layers.h"
#include "planner/quantities/quantities.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// The ground that a map's band lies on: contours, water, ways. Drawn once in the pixels of the
/// wide drawing, about the projection's origin in its middle; smaller drawings use it again.
namespace tumpline::cli {

/// Which part of the ground, and how large.
struct GroundView {
    const geo::MapProjection& projection;
    double pixels_per_m;
    double width;
    double height;
    Window window;  ///< all that any drawing shows of it
    std::string id; ///< of the ground in the book

    [[nodiscard]] DrawnPoint place(const geo::MapPoint& flat) const {
        return {width / 2.0 + flat.east_m * pixels_per_m,
                height / 2.0 - flat.north_m * pixels_per_m,
                0.0};
    }

    [[nodiscard]] geo::MapPoint flat(const DrawnPoint& point) const {
        return {(point.x - width / 2.0) / pixels_per_m, (height / 2.0 - point.y) / pixels_per_m};
    }
};

/// A name that wants to stand along a line or beside a point.
struct GroundName {
    std::string text;
    const char* kind;       ///< its style
    std::vector<Run> tries; ///< where it may stand, the best first
    bool beside = false;    ///< beside the first of them instead of upon one
};

/// A picture of the ground.
struct GroundPicture {
    std::string markup; ///< what stands in a <g>; empty: nothing is known
    std::vector<GroundName> names;
};

/// Heights on a grid of the view, its cells so many pixels wide, but never finer than the raster's;
/// water in the layers is unknown.
[[nodiscard]] geo::HeightGrid view_heights(const GroundView& view,
                                           geo::Elevation& heights,
                                           const geo::MapLayers* land,
                                           double cell_pixels);

/// Steps between contours that readers of one system of units count in, metres.
[[nodiscard]] std::span<const double> contour_steps_m(planner::UnitSystem units);

/// A contour's figure in that system: metres or feet.
[[nodiscard]] std::string contour_figure(double height_m, planner::UnitSystem units);

/// How contours are drawn.
struct ContourLook {
    double interval_m;
    double tolerance; ///< pixels that a drawn line may leave the true one by
    planner::UnitSystem units;
};

/// Hairlines, every fifth thicker and with its height, its top up-hill; ticks on the low side of
/// rings around hollows.
[[nodiscard]] GroundPicture
contour_picture(const GroundView& view, const geo::HeightGrid& heights, const ContourLook& look);

/// Everything of the layers in its order: protected ground, water, rivers, buildings, roads, paths,
/// rapids and falls. Told apart by sign, not by colour alone.
[[nodiscard]] GroundPicture land_picture(const GroundView& view, const geo::MapLayers& land);

} // namespace tumpline::cli
