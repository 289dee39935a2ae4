#include "cli/drawing/ground_picture.h"
#include "geo/ground/contours.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tumpline::cli {

namespace {

constexpr double foot_m = 0.3048;
constexpr std::array metric_steps{5.0, 10.0, 20.0, 50.0, 100.0, 200.0};
constexpr std::array imperial_steps{
    20.0 * foot_m, 40.0 * foot_m, 80.0 * foot_m, 200.0 * foot_m, 400.0 * foot_m, 800.0 * foot_m};
constexpr int lines_an_index = 5;
constexpr double least_ring = 6.0;     ///< pixels of length; smaller ones are noise
constexpr double labelled_from = 78.0; ///< pixels of a line's length
constexpr double label_window = 32.0;

/// Ticks on the low side of a line, which lies on its left.
std::string low_ticks(const std::vector<DrawnPoint>& line) {
    constexpr double apart = 9.0;
    constexpr double length = 2.6;
    std::string data;
    for (const Run& run : along(line, apart)) {
        const double turn = run.angle_deg * std::numbers::pi / 180.0;
        data += fifths(
            {run.middle,
             {run.middle.x + length * std::sin(turn), run.middle.y - length * std::cos(turn), 0.0}},
            false);
    }
    return data;
}

/// Whether a closed line goes round counter-clockwise on the sheet: lower ground lies inside.
bool round_hollow(const std::vector<DrawnPoint>& ring) {
    double twice_area = 0.0;
    for (std::size_t i = 0; i + 1 < ring.size(); ++i)
        twice_area += ring[i].x * ring[i + 1].y - ring[i + 1].x * ring[i].y;
    return twice_area < 0.0; // y points down
}

} // namespace

std::span<const double> contour_steps_m(planner::UnitSystem units) {
    return units == planner::UnitSystem::metric ? std::span<const double>(metric_steps)
                                                : std::span<const double>(imperial_steps);
}

std::string contour_figure(double height_m, planner::UnitSystem units) {
    return fmt::format("{:.0f}",
                       units == planner::UnitSystem::metric ? height_m : height_m / foot_m);
}

GroundPicture
contour_picture(const GroundView& view, const geo::HeightGrid& heights, const ContourLook& look) {
    std::string lines;
    std::string index_lines;
    GroundPicture picture;
    for (const geo::ContourLine& contour : geo::contours(geo::smoothed(heights), look.interval_m)) {
        std::vector<DrawnPoint> line;
        line.reserve(contour.points.size());
        for (const geo::MapPoint& point : contour.points)
            line.push_back(view.place(point));
        const double length = drawn_length(line);
        const bool closed = contour.closed();
        if (length < least_ring)
            continue;
        const bool index = std::lround(contour.height_m / look.interval_m) % lines_an_index == 0;
        const std::vector<DrawnPoint> thin = simplified(line, look.tolerance);
        std::string& into = index ? index_lines : lines;
        into += fifths(thin, false);
        if (closed && round_hollow(line))
            into += low_ticks(line);
        if (index && length > labelled_from)
            picture.names.push_back({contour_figure(contour.height_m, look.units),
                                     "height",
                                     straight_runs(line, {label_window, 1.2, true})});
    }
    if (!lines.empty() || !index_lines.empty())
        picture.markup = fmt::format(
            R"(<g class="contours" transform='scale(.2)'><path class="thin" d="{}"/><path class="thick" d="{}"/></g>)",
            lines,
            index_lines);
    return picture;
}

geo::HeightGrid view_heights(const GroundView& view,
                             geo::Elevation& heights,
                             const geo::MapLayers* land,
                             double cell_pixels) {
    const Window& window = view.window;
    const double cell_m = std::max(cell_pixels / view.pixels_per_m, heights.cell_m());
    const geo::MapPoint north_west = view.flat({window.left, window.top, 0.0});
    const auto cells = [&](double pixels) {
        return std::max(3, static_cast<int>(std::ceil(pixels / view.pixels_per_m / cell_m)));
    };
    geo::HeightGrid grid = geo::sampled_heights(
        heights,
        view.projection,
        {north_west, cell_m, cells(window.right - window.left), cells(window.bottom - window.top)});
    if (land == nullptr)
        return grid;
    for (const geo::LandFeature& feature : land->features) {
        if (feature.kind != geo::LayerKind::water || feature.shape != geo::LandShape::area)
            continue;
        std::vector<std::vector<geo::MapPoint>> rings;
        for (const auto& ring : feature.parts) {
            std::vector<geo::MapPoint>& flat = rings.emplace_back();
            flat.reserve(ring.size());
            for (const geo::Position& at : ring)
                flat.push_back(view.projection.to_map(at));
        }
        geo::make_unknown(grid, rings);
    }
    return grid;
}

} // namespace tumpline::cli
