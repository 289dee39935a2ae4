#include "cli/drawing/utm_grid.h"

#include "cli/drawing/load_band_line.h"
#include "cli/words/text_width.h"
#include "geo/ground/grid_reference.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <vector>

namespace tumpline::cli {

namespace {

/// Eastings and northings of a map's frame.
struct GridExtent {
    double west_m, east_m, south_m, north_m;
};

/// Draws the lines of one zone.
class GridLines {
  public:
    GridLines(const geo::MapProjection& projection,
              const Frame& frame,
              const geo::GridPlace& middle,
              Labels& labels)
        : projection_(projection), frame_(frame), middle_(middle), labels_(labels) {}

    [[nodiscard]] std::string drawn(double text);

  private:
    /// A point of the zone, by metres.
    struct At {
        double easting_m;
        double northing_m;
    };

    [[nodiscard]] std::optional<GridExtent> extent() const;
    void line(const At& from, const At& to, long kilometres);
    void name(const DrawnPoint& edge, const char* style, long kilometres);

    const geo::MapProjection& projection_;
    const Frame& frame_;
    const geo::GridPlace& middle_;
    Labels& labels_;
    double text_ = 0.0;
    std::string lines_;
    std::string names_;
};

std::optional<GridExtent> GridLines::extent() const {
    GridExtent range{1e9, -1e9, 1e9, -1e9};
    for (const double x : {-0.5, 0.0, 0.5})
        for (const double y : {-0.5, 0.0, 0.5}) {
            const std::optional<geo::GridPlace> place =
                geo::grid_place(projection_.to_ground({x * frame_.width / frame_.pixels_per_m,
                                                       y * frame_.height / frame_.pixels_per_m}),
                                middle_.zone);
            if (!place || place->north != middle_.north)
                return std::nullopt;
            range = {std::min(range.west_m, place->easting_m),
                     std::max(range.east_m, place->easting_m),
                     std::min(range.south_m, place->northing_m),
                     std::max(range.north_m, place->northing_m)};
        }
    return range;
}

void GridLines::name(const DrawnPoint& edge, const char* style, long kilometres) {
    const std::string words = std::to_string(kilometres);
    const double w = text_ * width_em(words);
    const bool top = std::string_view(style) == "mid";
    const double x = top ? edge.x : frame_.width - 3.0;
    const double y = top ? text_ + 1.0 : edge.y - 2.0;
    if (!labels_.take_if_free({top ? x - w / 2.0 : x - w, y - text_, w, 1.2 * text_}))
        return;
    names_ += fmt::format(R"(<text class="{}" x="{}" y="{}" font-size="{}">{}</text>)",
                          style,
                          coordinate(x),
                          coordinate(y),
                          coordinate(text_),
                          words);
}

void GridLines::line(const At& from, const At& to, long kilometres) {
    constexpr int pieces = 8;
    std::vector<DrawnPoint> points;
    for (int i = 0; i <= pieces; ++i) {
        geo::GridPlace place = middle_;
        place.easting_m = std::lerp(from.easting_m, to.easting_m, i / double(pieces));
        place.northing_m = std::lerp(from.northing_m, to.northing_m, i / double(pieces));
        const std::optional<geo::Position> at = geo::from_grid(place);
        if (!at)
            return;
        const geo::MapPoint flat = projection_.to_map(*at);
        points.push_back({frame_.width / 2.0 + flat.east_m * frame_.pixels_per_m,
                          frame_.height / 2.0 - flat.north_m * frame_.pixels_per_m,
                          0.0});
    }
    lines_ += path_data(simplified(points, resolved));
    const bool upright = from.easting_m == to.easting_m;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) { // where it leaves the frame
        const DrawnPoint& a = points[i];
        const DrawnPoint& b = points[i + 1];
        const double share = upright ? a.y / (a.y - b.y) : (frame_.width - a.x) / (b.x - a.x);
        if (!(share >= 0.0 && share < 1.0))
            continue;
        const DrawnPoint edge{std::lerp(a.x, b.x, share), std::lerp(a.y, b.y, share), 0.0};
        const double along = upright ? edge.x : edge.y;
        const double most = upright ? frame_.width : frame_.height;
        if (along > 2.5 * text_ && along < most - 2.5 * text_)
            name(edge, upright ? "mid" : "end", kilometres);
    }
}

std::string GridLines::drawn(double text) {
    text_ = text;
    const std::optional<GridExtent> range = extent();
    if (!range)
        return {};
    const double step_m = utm_step_m(frame_.pixels_per_m);
    const auto first = [&](double from_m) { return static_cast<long>(std::ceil(from_m / step_m)); };
    for (long i = first(range->west_m); static_cast<double>(i) * step_m <= range->east_m; ++i) {
        const double easting_m = static_cast<double>(i) * step_m;
        line({easting_m, range->south_m},
             {easting_m, range->north_m},
             std::lround(easting_m / 1000.0));
    }
    for (long i = first(range->south_m); static_cast<double>(i) * step_m <= range->north_m; ++i) {
        const double northing_m = static_cast<double>(i) * step_m;
        line({range->west_m, northing_m},
             {range->east_m, northing_m},
             std::lround(northing_m / 1000.0));
    }
    return fmt::format(R"(<g class="utm"><path d="{}"/>{}</g>)", lines_, names_);
}

} // namespace

double utm_step_m(double pixels_per_m) {
    constexpr std::array steps_m{1000.0, 2000.0, 5000.0, 10'000.0, 20'000.0, 50'000.0, 100'000.0};
    constexpr double least_pixels = 60.0;
    const auto* const found = std::ranges::find_if(
        steps_m, [&](double step_m) { return step_m * pixels_per_m >= least_pixels; });
    return found == steps_m.end() ? steps_m.back() : *found;
}

std::string
utm_grid(const geo::MapProjection& projection, const Frame& frame, double text, Labels& labels) {
    const std::optional<geo::GridPlace> middle = geo::grid_place(projection.centre());
    if (!middle || middle->zone == 0)
        return {};
    return GridLines(projection, frame, *middle, labels).drawn(text);
}

} // namespace tumpline::cli
