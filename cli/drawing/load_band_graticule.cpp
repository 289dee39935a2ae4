#include "cli/drawing/load_band_graticule.h"

#include "cli/drawing/load_band_line.h"
#include "cli/drawing/map_labels.h"
#include "cli/words/markup.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <vector>

namespace tumpline::cli {

namespace {

/// Steps in degrees that read well in degrees and minutes.
constexpr std::array<double, 16> steps_deg{1.0 / 60.0,
                                           2.0 / 60.0,
                                           5.0 / 60.0,
                                           10.0 / 60.0,
                                           15.0 / 60.0,
                                           20.0 / 60.0,
                                           30.0 / 60.0,
                                           1.0,
                                           2.0,
                                           5.0,
                                           10.0,
                                           15.0,
                                           20.0,
                                           30.0,
                                           45.0,
                                           90.0};

/// What of the ground the frame shows; longitudes count from the centre's, so that nothing jumps.
struct Extent {
    double south_deg, north_deg;
    double west_deg, east_deg; ///< relative to the centre
};

Extent shown_by(const geo::MapProjection& projection, const Frame& frame) {
    const double centre_lon_deg = projection.centre().lon_deg;
    Extent range{90.0, -90.0, 360.0, -360.0};
    constexpr int cells = 24;
    for (int row = 0; row <= cells; ++row) {
        for (int column = 0; column <= cells; ++column) {
            const geo::Position at = projection.to_ground(
                {(double(column) / cells - 0.5) * frame.width / frame.pixels_per_m,
                 (double(row) / cells - 0.5) * frame.height / frame.pixels_per_m});
            const double lon_deg = std::remainder(at.lon_deg - centre_lon_deg, 360.0);
            range.south_deg = std::min(range.south_deg, at.lat_deg);
            range.north_deg = std::max(range.north_deg, at.lat_deg);
            range.west_deg = std::min(range.west_deg, lon_deg);
            range.east_deg = std::max(range.east_deg, lon_deg);
        }
    }
    for (const double pole_deg : {-90.0, 90.0}) {
        const geo::MapPoint pole = projection.to_map({pole_deg, 0.0});
        if (std::abs(pole.east_m) * frame.pixels_per_m < frame.width / 2.0 &&
            std::abs(pole.north_m) * frame.pixels_per_m < frame.height / 2.0) {
            range.west_deg = -180.0;
            range.east_deg = 180.0;
            (pole_deg < 0.0 ? range.south_deg : range.north_deg) = pole_deg;
        }
    }
    return range;
}

double step_for(double span_deg) {
    for (const double step_deg : steps_deg)
        if (span_deg / step_deg <= 5.0)
            return step_deg;
    return steps_deg.back();
}

std::string angle(double degrees, const char* letters) {
    const long minutes = std::lround(std::abs(degrees) * 60.0);
    const char letter = minutes == 0 ? ' ' : letters[degrees < 0.0 ? 1 : 0];
    return minutes % 60 == 0 ? fmt::format("{}° {}", minutes / 60, letter)
                             : fmt::format("{}° {:02}' {}", minutes / 60, minutes % 60, letter);
}

struct Grid {
    const geo::MapProjection& projection;
    const Frame& frame;
    double text;

    [[nodiscard]] std::optional<DrawnPoint> place(const geo::Position& at) const {
        const geo::MapPoint flat = projection.to_map(at);
        const double x = frame.width / 2.0 + flat.east_m * frame.pixels_per_m;
        const double y = frame.height / 2.0 - flat.north_m * frame.pixels_per_m;
        if (!(x >= 0.0 && y >= 0.0 && x <= frame.width && y <= frame.height))
            return std::nullopt;
        return DrawnPoint{x, y, 0.0};
    }
};

/// A line of the grid from samples, its parts inside the frame; where it ends, within a sample.
std::vector<std::vector<DrawnPoint>> inside(const Grid& grid,
                                            const std::vector<geo::Position>& samples) {
    std::vector<std::vector<DrawnPoint>> parts(1);
    for (const geo::Position& sample : samples) {
        if (const std::optional<DrawnPoint> point = grid.place(sample))
            parts.back().push_back(*point);
        else if (!parts.back().empty())
            parts.emplace_back();
    }
    if (parts.back().empty())
        parts.pop_back();
    return parts;
}

constexpr int samples_per_line = 240;

std::vector<geo::Position> meridian(double lon_deg, const Extent& range) {
    std::vector<geo::Position> line;
    for (int i = 0; i <= samples_per_line; ++i)
        line.push_back(
            {range.south_deg + (range.north_deg - range.south_deg) * i / double(samples_per_line),
             lon_deg});
    return line;
}

std::vector<geo::Position> parallel(double lat_deg, double centre_lon_deg, const Extent& range) {
    std::vector<geo::Position> line;
    for (int i = 0; i <= samples_per_line; ++i)
        line.push_back(
            {lat_deg,
             std::remainder(centre_lon_deg + range.west_deg +
                                (range.east_deg - range.west_deg) * i / double(samples_per_line),
                            360.0)});
    return line;
}

/// Where the name of a line stands that meets the frame at `end`, if there is room.
std::optional<std::string>
name_markup(const Grid& grid, const DrawnPoint& end, const std::string& name, Labels& labels) {
    const double text = grid.text;
    const bool at_foot = end.y > grid.frame.height - 1.5 * text;
    const bool at_left = end.x < 1.5 * text && end.y < grid.frame.height - 2.2 * text;
    const double wide = text * width_em(name);
    if ((!at_foot && !at_left) || grid.frame.width - end.x - 5.0 < wide)
        return std::nullopt;
    const bool foot = at_foot && !at_left;
    const double above = end.y - 3.0; // below the line where it runs along the upper edge
    const double x = foot ? end.x + 3.0 : 5.0;
    const double y = foot ? grid.frame.height - 5.0 : above >= text ? above : end.y + text;
    if (!labels.take_if_free({x, y - text, wide, 1.2 * text}))
        return std::nullopt;
    return fmt::format(R"(<text x="{}" y="{}" font-size="{}">{}</text>)",
                       coordinate(x),
                       coordinate(y),
                       coordinate(text),
                       name);
}

/// The lines and, for the first part of each that has room, its name where it meets the frame.
std::string line_markup(const Grid& grid,
                        const std::vector<geo::Position>& samples,
                        const std::string& name,
                        Labels& labels) {
    std::string markup;
    bool named = false;
    for (const std::vector<DrawnPoint>& part : inside(grid, samples)) {
        if (part.size() < 2)
            continue;
        markup += fmt::format(R"(<path d="{}"/>)", path_data(simplified(part, resolved)));
        if (named)
            continue;
        // South end of a meridian, west end of a parallel.
        if (const auto words = name_markup(grid, part.front(), name, labels)) {
            named = true;
            markup += *words;
        }
    }
    return markup;
}

} // namespace

std::string
graticule(const geo::MapProjection& projection, const Frame& frame, double text, Labels& labels) {
    const Extent range = shown_by(projection, frame);
    const Grid grid{projection, frame, text};
    const double centre_lon_deg = projection.centre().lon_deg;
    std::string markup = R"(<g class="grid">)";
    const double lon_step_deg = step_for(range.east_deg - range.west_deg);
    const auto first = [](double from, double step) { return std::ceil(from / step) * step; };
    const double west_deg = centre_lon_deg + range.west_deg;
    const int meridians =
        static_cast<int>(std::floor((range.east_deg - range.west_deg) / lon_step_deg)) + 1;
    for (int i = 0; i < meridians; ++i) {
        const double lon_deg = first(west_deg, lon_step_deg) + i * lon_step_deg;
        if (lon_deg > centre_lon_deg + range.east_deg)
            continue;
        const double named_deg = std::remainder(lon_deg, 360.0);
        markup += line_markup(grid, meridian(named_deg, range), angle(named_deg, "EW"), labels);
    }
    const double lat_step_deg = step_for(range.north_deg - range.south_deg);
    const int parallels =
        static_cast<int>(std::floor((range.north_deg - range.south_deg) / lat_step_deg)) + 1;
    for (int i = 0; i < parallels; ++i) {
        const double lat_deg = first(range.south_deg, lat_step_deg) + i * lat_step_deg;
        if (lat_deg > range.north_deg)
            continue;
        markup += line_markup(
            grid, parallel(lat_deg, centre_lon_deg, range), angle(lat_deg, "NS"), labels);
    }
    return markup + "</g>";
}

} // namespace tumpline::cli
