#include "cli/drawing/load_band.h"
#include "cli/drawing/load_band_graticule.h"
#include "cli/drawing/load_band_line.h"
#include "cli/drawing/load_band_places.h"
#include "cli/words/markup.h"
#include "cli/words/words.h"
#include "geo/ground/map_projection.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::Route;

/// More points than this say nothing more at any size of ours.
constexpr double most_points = 20000.0;
constexpr double width_quantum = 0.25; ///< changes of width that the eye takes as smooth
constexpr double thinnest = 1.2;       ///< an empty-handed stretch is still a line

double widest(const Drawing& drawing) {
    return drawing.width >= 500.0 ? 15.0 : 10.0;
}

/// Pixels of width per kilogram: the heaviest place is `widest`.
double width_per_kg(const std::vector<BandLeg>& band, const Drawing& drawing) {
    const double heaviest = heaviest_kg(band);
    return heaviest > 0.0 ? widest(drawing) / heaviest : 0.0;
}

struct RoutePoint {
    geo::Position at;
    double along_m;
};

/// The route's points, thinned along the line before anything is projected; the ends of legs stay.
std::vector<RoutePoint> route_points(const Route& route) {
    const double spacing_m = route.length_m / most_points;
    std::vector<RoutePoint> points;
    for (const planner::RouteLeg& leg : route.legs) {
        if (!leg.drawn())
            continue;
        const auto& ground = leg.line.points();
        const auto& along_m = leg.line.along_m();
        double last_m = 0.0;
        for (std::size_t i = 0; i < ground.size(); ++i) {
            const bool end = i == 0 || i + 1 == ground.size();
            if (!end && along_m[i] - last_m < spacing_m)
                continue;
            last_m = along_m[i];
            points.push_back({ground[i], std::min(leg.from_m + along_m[i], leg.to_m)});
        }
    }
    return points;
}

/// A map as high as this leaves room on a page for the profile, and fills a telephone.
double highest(double width) {
    return width >= 500.0 ? 0.68 * width : 1.15 * width;
}

/// From the ground to the drawing.
class Sheet {
  public:
    Sheet(const std::vector<RoutePoint>& points, const Drawing& drawing)
        : projection_(positions(points)), width_(drawing.width) {
        double east_m = 100.0; // half the extent; a single point gets a map of 200 m
        double north_m = 100.0;
        for (const RoutePoint& point : points) {
            const geo::MapPoint flat = projection_.to_map(point.at);
            east_m = std::max(east_m, std::abs(flat.east_m));
            north_m = std::max(north_m, std::abs(flat.north_m));
        }
        const double margin = 3.2 * drawing.text;
        const double most_high = highest(width_);
        pixels_per_m_ = std::min((width_ - 2.0 * margin) / (2.0 * east_m),
                                 (most_high - 2.0 * margin) / (2.0 * north_m));
        height_ = std::max(0.5 * width_, 2.0 * north_m * pixels_per_m_ + 2.0 * margin);
    }

    [[nodiscard]] DrawnPoint place(const geo::Position& at, double along_m) const {
        const geo::MapPoint flat = projection_.to_map(at);
        return {width_ / 2.0 + flat.east_m * pixels_per_m_,
                height_ / 2.0 - flat.north_m * pixels_per_m_,
                along_m};
    }

    [[nodiscard]] const geo::MapProjection& projection() const { return projection_; }

    [[nodiscard]] double pixels_per_m() const { return pixels_per_m_; }

    [[nodiscard]] double width() const { return width_; }

    [[nodiscard]] double height() const { return height_; }

  private:
    static std::vector<geo::Position> positions(const std::vector<RoutePoint>& points) {
        std::vector<geo::Position> all;
        all.reserve(points.size());
        for (const RoutePoint& point : points)
            all.push_back(point.at);
        return all;
    }

    geo::MapProjection projection_;
    double width_;
    double pixels_per_m_ = 1.0;
    double height_ = 1.0;
};

DrawnPoint between(const DrawnPoint& a, const DrawnPoint& b, double along_m) {
    const double length_m = b.along_m - a.along_m;
    const double share = length_m > 0.0 ? (along_m - a.along_m) / length_m : 0.0;
    return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), along_m};
}

/// The part of a line, given by distances along the route.
std::vector<DrawnPoint> cut(const std::vector<DrawnPoint>& line, const Stretch& stretch) {
    std::vector<DrawnPoint> part;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const DrawnPoint& a = line[i];
        const DrawnPoint& b = line[i + 1];
        if (b.along_m < stretch.from_m || a.along_m > stretch.to_m)
            continue;
        if (part.empty())
            part.push_back(between(a, b, std::max(a.along_m, stretch.from_m)));
        part.push_back(between(a, b, std::min(b.along_m, stretch.to_m)));
    }
    return part;
}

double quantised(double width) {
    return std::max(thinnest, std::round(width / width_quantum) * width_quantum);
}

/// One run of the band with the same width.
struct Run {
    double width;
    std::vector<DrawnPoint> line;
};

/// The band of one leg as runs of equal width, each a quantum from the next.
std::vector<Run>
runs(const std::vector<DrawnPoint>& line, const BandLeg& leg, double pixels_per_kg) {
    std::vector<Run> all;
    for (std::size_t i = 0; i + 1 < leg.points.size(); ++i) {
        const BandPoint& from = leg.points[i];
        const BandPoint& to = leg.points[i + 1];
        const double from_width = from.sum_kg() * pixels_per_kg;
        const double to_width = to.sum_kg() * pixels_per_kg;
        if (!(to.along_m > from.along_m))
            continue;
        const int pieces =
            1 + static_cast<int>(std::min(400.0, std::abs(to_width - from_width) / width_quantum));
        for (int piece = 0; piece < pieces; ++piece) {
            const auto along_m = [&](double share) {
                return from.along_m + share * (to.along_m - from.along_m);
            };
            const double width =
                quantised(from_width + (piece + 0.5) / pieces * (to_width - from_width));
            std::vector<DrawnPoint> part = cut(
                line, {along_m(piece / double(pieces)), along_m((piece + 1.0) / double(pieces))});
            if (part.size() < 2)
                continue;
            if (!all.empty() && all.back().width == width)
                all.back().line.insert(all.back().line.end(), part.begin() + 1, part.end());
            else
                all.push_back({width, std::move(part)});
        }
    }
    return all;
}

std::string band_markup(const Plan& plan,
                        const Route& route,
                        const std::vector<DrawnPoint>& line,
                        const Drawing& drawing) {
    const std::vector<BandLeg> band = load_band(plan);
    const double pixels_per_kg = width_per_kg(band, drawing);
    std::string markup;
    for (const BandLeg& leg : band) {
        if (!route.legs[plan.legs[leg.plan_leg].leg - 1].drawn())
            continue;
        const std::vector<Run> pieces = runs(line, leg, pixels_per_kg);
        if (pieces.empty())
            continue;
        const planner::PlanLeg& reported = plan.legs[leg.plan_leg];
        std::string casing;
        std::string colour;
        std::vector<DrawnPoint> middle;
        for (const Run& run : pieces) {
            const std::string data = path_data(simplified(run.line, resolved));
            casing += fmt::format(
                R"(<path d="{}" stroke-width="{}"/>)", data, coordinate(run.width + 1.6));
            colour += fmt::format(R"(<path d="{}" stroke-width="{:.2f}"/>)", data, run.width);
            middle.insert(middle.end(), run.line.begin(), run.line.end());
        }
        markup += fmt::format(
            R"(<g class="band {}" data-leg="{}"><title>{}: {}</title><g class="casing">{}</g><g class="fill">{}</g><path class="sign" d="{}" stroke-width="{}"/></g>)",
            word(leg.travel),
            leg.plan_leg,
            escaped(reported.name),
            travel_phrase(leg.travel),
            casing,
            colour,
            path_data(simplified(middle, resolved)),
            leg.travel == planner::Travel::portage ? coordinate(pieces.front().width) : "1.6");
    }
    return markup;
}

/// North arrow and scale bar in a strip under the frame.
std::string foot_markup(const Sheet& sheet, const Drawing& drawing, const Figures& shown) {
    const bool metric = shown.units() == planner::UnitSystem::metric;
    const double unit_m = metric ? 1000.0 : planner::m_per_mile;
    const double step = round_step(0.18 * sheet.width() / sheet.pixels_per_m() / unit_m);
    const double half = step * unit_m * sheet.pixels_per_m() / 2.0;
    const double y = sheet.height() + 1.3 * drawing.text;
    const std::string name = metric ? (step >= 1.0 ? fmt::format("{:.0f} km", step)
                                                   : fmt::format("{:.0f} m", step * 1000.0))
                                    : fmt::format("{:g} mi", step);
    const bool polar = std::abs(sheet.projection().centre().lat_deg) > 89.0;
    std::string north;
    if (!polar)
        north = fmt::format(
            R"(<g class="north" transform='translate({},{})'><path d="M0 -{}l{} {}l-{} -{}l-{} {}z"/><text x="0" y="{}" font-size="{}">N</text></g>)",
            coordinate(sheet.width() - 1.2 * drawing.text),
            coordinate(y),
            coordinate(0.9 * drawing.text),
            coordinate(0.45 * drawing.text),
            coordinate(1.2 * drawing.text),
            coordinate(0.45 * drawing.text),
            coordinate(0.35 * drawing.text),
            coordinate(0.45 * drawing.text),
            coordinate(0.35 * drawing.text),
            coordinate(1.3 * drawing.text),
            coordinate(drawing.text));
    return fmt::format(
        R"(<g class="scale" transform='translate(1,{})'><path class="bar" d="M0 0h{}v5h-{}z"/><path class="bar hollow" d="M{} 0h{}v5h-{}z"/><text x="{}" y="7" font-size="{}">{}</text></g>{})",
        coordinate(y),
        coordinate(half),
        coordinate(half),
        coordinate(half),
        coordinate(half),
        coordinate(half),
        coordinate(2.0 * half + 8.0),
        coordinate(drawing.text),
        name,
        north);
}

} // namespace

std::string
map_drawing(const Plan& plan, const Route& route, const Drawing& drawing, const Figures& shown) {
    const std::vector<RoutePoint> points = route_points(route);
    if (points.empty())
        return {};
    const Sheet sheet(points, drawing);
    std::vector<DrawnPoint> line;
    line.reserve(points.size());
    for (const RoutePoint& point : points)
        line.push_back(sheet.place(point.at, point.along_m));
    line = simplified(line, resolved / 2.0); // half here, half in each run
    const Frame frame{sheet.width(), sheet.height(), sheet.pixels_per_m()};
    const double foot = 3.0 * drawing.text;
    const auto place = [&](double along_m) { return sheet.place(route.at(along_m), along_m); };
    std::vector<Mark> places = marks(plan, route, place);
    std::erase_if(places, [&](const Mark& mark) { return !route.located(mark.at.along_m); });
    return fmt::format(
        R"(<svg class="map" viewBox="0 0 {} {}" role="img" aria-labelledby="{}-t"><title id="{}-t">Map of the route as a band as wide as the load, north up</title><rect class="sheet" x="0.5" y="0.5" width="{}" height="{}"/>{}{}{}{}</svg>)",
        coordinate(sheet.width()),
        coordinate(sheet.height() + foot),
        drawing.id,
        drawing.id,
        coordinate(sheet.width() - 1.0),
        coordinate(sheet.height() - 1.0),
        graticule(sheet.projection(), frame, drawing.text),
        band_markup(plan, route, line, drawing),
        places_markup(std::move(places), line, frame, drawing),
        foot_markup(sheet, drawing, shown));
}

std::vector<BandKey> band_key(const Plan& plan, const Drawing& drawing, const Figures& shown) {
    const std::vector<BandLeg> band = load_band(plan);
    const double pixels_per_kg = width_per_kg(band, drawing);
    if (pixels_per_kg <= 0.0)
        return {};
    const double unit_kg =
        shown.units() == planner::UnitSystem::metric ? 1.0 : planner::kg_per_pound;
    const double top = round_step(0.45 * heaviest_kg(band) / unit_kg);
    std::vector<BandKey> key;
    for (const double step : {top, top / 2.0, top / 4.0})
        key.push_back({shown.units() == planner::UnitSystem::metric ? fmt::format("{:g} kg", step)
                                                                    : fmt::format("{:g} lb", step),
                       step * unit_kg * pixels_per_kg});
    return key;
}

} // namespace tumpline::cli
