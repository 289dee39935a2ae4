#include "cli/drawing/route_map.h"

#include "cli/drawing/load_band_line.h"
#include "cli/drawing/load_band_map.h"
#include "cli/drawing/load_band_places.h"
#include "cli/drawing/map_foot.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <set>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::PlanDay;
using planner::Route;

/// More points than this say nothing more at any size of ours.
constexpr double most_points = 20000.0;
constexpr double page_width_m = 0.184; ///< of a drawing on paper, A4 and Letter alike
constexpr double highest_day = 0.56;   ///< of its width
constexpr double highest_short = 0.42; ///< of a day that is to stand on one sheet
constexpr double lowest_day = 0.26;

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

/// Those of a day, with its own ends.
std::vector<RoutePoint>
points_of(const std::vector<RoutePoint>& all, const Route& route, const PlanDay& day) {
    std::vector<RoutePoint> points;
    if (route.located(day.from_m))
        points.push_back({route.at(day.from_m), day.from_m});
    for (const RoutePoint& point : all)
        if (point.along_m > day.from_m && point.along_m < day.to_m)
            points.push_back(point);
    if (route.located(day.to_m))
        points.push_back({route.at(day.to_m), day.to_m});
    return points;
}

std::vector<geo::Position> positions(const std::vector<RoutePoint>& points) {
    std::vector<geo::Position> all;
    all.reserve(points.size());
    for (const RoutePoint& point : points)
        all.push_back(point.at);
    if (all.empty())
        all.push_back({0.0, 0.0});
    return all;
}

/// A map as high as this leaves room on a page for the profile, and fills a telephone.
double highest(double width) {
    return width >= 500.0 ? 0.68 * width : 1.15 * width;
}

/// Half the extent of points about the map's origin, metres.
geo::MapPoint reach(const geo::MapProjection& projection, const std::vector<RoutePoint>& points) {
    geo::MapPoint most{100.0, 100.0}; // a single point gets a map of 200 m
    for (const RoutePoint& point : points) {
        const geo::MapPoint flat = projection.to_map(point.at);
        most = {std::max(most.east_m, std::abs(flat.east_m)),
                std::max(most.north_m, std::abs(flat.north_m))};
    }
    return most;
}

/// A day of few legs has room on one sheet for its map, its tables and its profile.
double highest_of(const Plan& plan, const PlanDay& day) {
    constexpr auto few = 2;
    return std::ranges::count(plan.legs, day.day, &planner::PlanLeg::day) <= few ? highest_short
                                                                                 : highest_day;
}

/// The largest round scale at which a day and its names fit; `highest` is of the width.
double day_scale(const geo::MapPoint& reach, double highest) {
    constexpr std::array denominators{25e3,
                                      40e3,
                                      50e3,
                                      60e3,
                                      75e3,
                                      100e3,
                                      125e3,
                                      150e3,
                                      200e3,
                                      250e3,
                                      300e3,
                                      400e3,
                                      500e3,
                                      1e6,
                                      2e6,
                                      5e6};
    constexpr double margin = 36.0; // pixels
    const auto* const found = std::ranges::find_if(denominators, [&](double denominator) {
        const double pixels_per_m = wide_drawing / page_width_m / denominator;
        return 2.0 * reach.east_m * pixels_per_m <= wide_drawing - 2.0 * margin &&
               2.0 * reach.north_m * pixels_per_m <= highest * wide_drawing - 2.0 * margin;
    });
    return found == denominators.end() ? denominators.back() : *found;
}

/// Blocks of ground within a distance of the route.
class Corridor {
  public:
    Corridor(const geo::MapProjection& projection,
             const std::vector<RoutePoint>& points,
             double half_width_m)
        : block_m_(half_width_m / 8.0) {
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            const geo::MapPoint a = projection.to_map(points[i].at);
            const geo::MapPoint b = projection.to_map(points[i + 1].at);
            const double length_m = std::hypot(b.east_m - a.east_m, b.north_m - a.north_m);
            const int pieces = 1 + static_cast<int>(length_m / (4.0 * block_m_));
            for (int piece = 0; piece <= pieces; ++piece)
                add({std::lerp(a.east_m, b.east_m, piece / double(pieces)),
                     std::lerp(a.north_m, b.north_m, piece / double(pieces))});
        }
    }

    [[nodiscard]] bool holds(const geo::MapPoint& point) const {
        return blocks_.contains(block(point));
    }

  private:
    using Block = std::pair<long, long>;

    [[nodiscard]] Block block(const geo::MapPoint& point) const {
        return {std::lround(point.east_m / block_m_), std::lround(point.north_m / block_m_)};
    }

    void add(const geo::MapPoint& middle) {
        const Block at = block(middle);
        if (!centres_.insert(at).second)
            return;
        for (long x = -8; x <= 8; ++x)
            for (long y = -8; y <= 8; ++y)
                if (x * x + y * y <= 64)
                    blocks_.insert({at.first + x, at.second + y});
    }

    double block_m_;
    std::set<Block> centres_;
    std::set<Block> blocks_;
};

} // namespace

/// From the ground to one drawing.
struct RouteMap::Sheet {
    const geo::MapProjection& projection;
    double width;
    double height;
    double pixels_per_m;

    [[nodiscard]] DrawnPoint place(const geo::Position& at, double along_m) const {
        const geo::MapPoint flat = projection.to_map(at);
        return {width / 2.0 + flat.east_m * pixels_per_m,
                height / 2.0 - flat.north_m * pixels_per_m,
                along_m};
    }

    [[nodiscard]] Frame frame() const { return {width, height, pixels_per_m}; }
};

RouteMap::RouteMap(const Plan& plan, const Route& route)
    : plan_(plan), route_(route), points_(route_points(route)), shown_points_(points_),
      projection_(positions(shown_points_)), half_(reach(projection_, shown_points_)) {}

RouteMap::RouteMap(const Plan& plan, const Route& route, const PlanDay& day)
    : plan_(plan), route_(route), day_(&day), points_(route_points(route)),
      shown_points_(points_of(points_, route, day)), projection_(positions(shown_points_)),
      half_(reach(projection_, shown_points_)), day_highest_(highest_of(plan, day)),
      day_denominator_(day_scale(half_, day_highest_)) {}

RouteMap::Sheet RouteMap::sheet(const Drawing& drawing) const {
    const geo::MapPoint& half = half_;
    if (day_ != nullptr) {
        const double pixels_per_m = drawing.width / page_width_m / day_denominator_;
        const double margin = 26.0 * drawing.width / wide_drawing;
        const double height = std::clamp(2.0 * half.north_m * pixels_per_m + 2.0 * margin,
                                         lowest_day * drawing.width,
                                         day_highest_ * drawing.width);
        return {projection_, drawing.width, height, pixels_per_m};
    }
    const double margin = 3.2 * drawing.text;
    const double pixels_per_m =
        std::min((drawing.width - 2.0 * margin) / (2.0 * half.east_m),
                 (highest(drawing.width) - 2.0 * margin) / (2.0 * half.north_m));
    return {projection_,
            drawing.width,
            std::max(0.5 * drawing.width, 2.0 * half.north_m * pixels_per_m + 2.0 * margin),
            pixels_per_m};
}

double RouteMap::denominator() const {
    return wide_drawing / page_width_m / ground_view().pixels_per_m;
}

GroundView RouteMap::ground_view() const {
    const Sheet wide = sheet({.width = wide_drawing, .text = 12.0, .id = {}});
    const Sheet narrow = sheet({.width = narrow_drawing, .text = 11.0, .id = {}});
    const double larger = wide.pixels_per_m / narrow.pixels_per_m;
    const double half_width = std::max(wide.width, narrow.width * larger) / 2.0;
    const double half_height = std::max(wide.height, narrow.height * larger) / 2.0;
    return {.projection = projection_,
            .pixels_per_m = wide.pixels_per_m,
            .width = wide.width,
            .height = wide.height,
            .window = {wide.width / 2.0 - half_width,
                       wide.height / 2.0 - half_height,
                       wide.width / 2.0 + half_width,
                       wide.height / 2.0 + half_height},
            .id = day_ == nullptr ? std::string("g") : fmt::format("g{}", day_->day)};
}

geo::HeightGrid RouteMap::heights(geo::Elevation& elevation, double cell_pixels) const {
    return view_heights(ground_view(), elevation, route_.land.get(), cell_pixels);
}

void RouteMap::lay_ground(const geo::HeightGrid* heights, const GroundDetail& detail) {
    const GroundView view = ground_view();
    contours_ = {};
    land_ = {};
    interval_m_ = 0.0;
    if (heights != nullptr && detail.interval_m > 0.0 && !heights->empty()) {
        interval_m_ = detail.interval_m;
        geo::HeightGrid near = *heights;
        if (detail.corridor_m) {
            const Corridor corridor(projection_, shown_points_, *detail.corridor_m);
            geo::keep_only(near, [&](const geo::MapPoint& point) { return corridor.holds(point); });
        }
        contours_ = contour_picture(view, near, {interval_m_, detail.tolerance, detail.units});
    }
    if (detail.layers && route_.land != nullptr)
        land_ = land_picture(view, *route_.land);
}

void RouteMap::lay_ground_of(const RouteMap& other) {
    contours_ = other.contours_;
    land_ = other.land_;
    interval_m_ = other.interval_m_;
    relief_ = other.relief_;
}

void RouteMap::lay_relief(const GroundView& drawn_for) {
    const GroundView view = ground_view();
    // The two planes differ by a turn and a shift: what three points of the one are in the other.
    const auto here = [&](double x, double y) {
        return view.place(
            projection_.to_map(drawn_for.projection.to_ground(drawn_for.flat({x, y, 0.0}))));
    };
    const double middle_x = drawn_for.width / 2.0;
    const double middle_y = drawn_for.height / 2.0;
    const DrawnPoint middle = here(middle_x, middle_y);
    constexpr double arm = 100.0;
    const DrawnPoint right = here(middle_x + arm, middle_y);
    const DrawnPoint below = here(middle_x, middle_y + arm);
    const double a = (right.x - middle.x) / arm;
    const double b = (right.y - middle.y) / arm;
    const double c = (below.x - middle.x) / arm;
    const double d = (below.y - middle.y) / arm;
    relief_ = fmt::format(
        R"(<use href="#relief" transform='matrix({:.5f} {:.5f} {:.5f} {:.5f} {:.2f} {:.2f})'/>)",
        a,
        b,
        c,
        d,
        middle.x - a * middle_x - c * middle_y,
        middle.y - b * middle_x - d * middle_y);
}

bool RouteMap::has_ground() const {
    return !contours_.markup.empty() || !land_.markup.empty() || !relief_.empty();
}

std::string RouteMap::ground_markup() const {
    if (!has_ground())
        return {};
    return fmt::format(R"(<g id="{}" class="land">{}{}{}</g>)",
                       ground_view().id,
                       relief_,
                       contours_.markup,
                       land_.markup);
}

/// The ground, cut to the frame; lines keep their width at every size.
std::string RouteMap::ground_use(const Sheet& sheet) const {
    if (!has_ground())
        return {};
    const GroundView view = ground_view();
    const double scale = sheet.pixels_per_m / view.pixels_per_m;
    const std::string id = fmt::format("{}-{:.0f}", view.id, sheet.width);
    return fmt::format(
        R"(<clipPath id="{0}"><path d="M1 1H{1}V{2}H1z"/></clipPath><g clip-path='url(#{0})'><use href="#{3}" style="--k:{4:.3f}" transform='translate({5} {6})scale({7:.5f})translate({8} {9})'/></g>)",
        id,
        coordinate(sheet.width - 1.0),
        coordinate(sheet.height - 1.0),
        view.id,
        1.0 / scale,
        coordinate(sheet.width / 2.0),
        coordinate(sheet.height / 2.0),
        scale,
        coordinate(-view.width / 2.0),
        coordinate(-view.height / 2.0));
}

/// Everything on the map that is read, its marks those of the day or of the whole route.
MapLetters RouteMap::letters(const Sheet& sheet,
                             const std::vector<DrawnPoint>& line,
                             const Drawing& drawing,
                             const Figures& shown) const {
    const auto place = [&](double along_m) { return sheet.place(route_.at(along_m), along_m); };
    std::vector<Mark> all = marks(plan_, route_, place);
    if (day_ != nullptr)
        std::erase_if(all, [&](const Mark& mark) {
            return mark.at.along_m < day_->from_m - 1.0 || mark.at.along_m > day_->to_m + 1.0;
        });
    return map_letters({.projection = projection_,
                        .frame = sheet.frame(),
                        .line = line,
                        .marks = std::move(all),
                        .day = day_,
                        .ground = ground_view(),
                        .pictures = {&land_, &contours_}},
                       drawing,
                       shown);
}

std::string RouteMap::draw(const Drawing& drawing, const Figures& shown) const {
    if (points_.empty() || shown_points_.empty()) // no leg of it has a line
        return {};
    const Sheet on = sheet(drawing);
    std::vector<DrawnPoint> line;
    line.reserve(shown_points_.size());
    for (const RoutePoint& point : shown_points_)
        line.push_back(on.place(point.at, point.along_m));
    line = simplified(line, resolved / 2.0); // half here, half in each run
    std::string rest;                        // the other days' way
    if (day_ != nullptr) {
        constexpr std::size_t enough =
            3000; // points of the whole; the day itself has all of its own
        const std::size_t stride = 1 + points_.size() / enough;
        std::vector<DrawnPoint> whole;
        for (std::size_t i = 0; i < points_.size(); i += stride)
            whole.push_back(on.place(points_[i].at, points_[i].along_m));
        const Window window{0.0, 0.0, on.width, on.height};
        for (const std::vector<DrawnPoint>& run : inside(whole, window))
            rest += path_data(simplified(run, resolved));
        rest = fmt::format(R"(<path class="rest" d="{}"/>)", rest);
    }
    const MapLetters read = letters(on, line, drawing, shown);
    return fmt::format(
        R"(<svg class="map{}" viewBox="0 0 {} {}" role="img" aria-labelledby="{}-t"><title id="{}-t">{}</title><rect class="sheet" x="0.5" y="0.5" width="{}" height="{}"/>{}{}{}{}{}{}</svg>)",
        day_ == nullptr ? "" : " of-day",
        coordinate(on.width),
        coordinate(on.height + 3.0 * drawing.text),
        drawing.id,
        drawing.id,
        day_ == nullptr ? "Map of the route as a band as wide as the load, north up"
                        : fmt::format("Map of day {}, north up", day_->day),
        coordinate(on.width - 1.0),
        coordinate(on.height - 1.0),
        ground_use(on),
        read.degrees,
        rest,
        band_markup(plan_, route_, line, drawing),
        read.names,
        map_foot(projection_, on.frame(), drawing, shown));
}

std::string RouteMap::foot_text(const Figures& shown) const {
    std::string words;
    if (day_ != nullptr)
        words = fmt::format("1:{} on A4 and Letter. ", grouped(denominator()));
    if (interval_m_ > 0.0) {
        const bool metric = shown.units() == planner::UnitSystem::metric;
        const char* unit = metric ? "m" : "ft";
        words += fmt::format("Contours every {} {}, thick every {} {}, ticked round hollows. ",
                             contour_figure(interval_m_, shown.units()),
                             unit,
                             contour_figure(5.0 * interval_m_, shown.units()),
                             unit);
    }
    return words;
}

std::string
map_drawing(const Plan& plan, const Route& route, const Drawing& drawing, const Figures& shown) {
    return RouteMap(plan, route).draw(drawing, shown);
}

} // namespace tumpline::cli
