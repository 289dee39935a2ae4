#include "sample-routes/make/land.h"

#include <GeographicLib/Geodesic.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <numbers>
#include <vector>

namespace tumpline::samples {

namespace {

struct Spot {
    double lat_deg;
    double lon_deg;
};

/// How far and in which direction.
struct Shift {
    double azimuth_deg;
    double length_m;
};

Spot moved(const Spot& from, const Shift& shift) {
    Spot to{};
    GeographicLib::Geodesic::WGS84().Direct(
        from.lat_deg, from.lon_deg, shift.azimuth_deg, shift.length_m, to.lat_deg, to.lon_deg);
    return to;
}

Spot spot(const Point& point) {
    return {point.lat_deg, point.lon_deg};
}

double azimuth_deg(const Spot& from, const Spot& to) {
    double length_m = 0.0;
    double start_deg = 0.0;
    double end_deg = 0.0;
    GeographicLib::Geodesic::WGS84().Inverse(
        from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg, length_m, start_deg, end_deg);
    return start_deg;
}

/// The direction of a line at one of its points.
double heading_deg(const Line& line, std::size_t i) {
    const std::size_t last = line.points.size() - 1;
    return azimuth_deg(spot(line.points[i == last ? i - 1 : i]),
                       spot(line.points[i == last ? i : i + 1]));
}

/// Writes features one after the other.
class LandFile {
  public:
    explicit LandFile(const std::filesystem::path& file) : out_(file) {
        out_ << "{\"type\": \"FeatureCollection\", \"features\": [\n";
    }

    void line(const std::string& properties, const std::vector<Spot>& spots) {
        if (spots.size() > 1)
            feature(properties, "LineString", "[" + coordinates(spots) + "]");
    }

    void area(const std::string& properties, std::vector<Spot> ring) {
        ring.push_back(ring.front());
        feature(properties, "Polygon", "[[" + coordinates(ring) + "]]");
    }

    void point(const std::string& properties, const Spot& at) {
        feature(properties, "Point", coordinates({at}));
    }

    void finish() { out_ << "\n]}\n"; }

  private:
    static std::string coordinates(const std::vector<Spot>& spots) {
        std::string text;
        for (const Spot& at : spots)
            text +=
                fmt::format("{}[{:.5f}, {:.5f}]", text.empty() ? "" : ", ", at.lon_deg, at.lat_deg);
        return text;
    }

    void
    feature(const std::string& properties, const std::string& type, const std::string& written) {
        out_ << (first_ ? "" : ",\n")
             << fmt::format("{{\"type\": \"Feature\", \"properties\": {{{}}}, \"geometry\": "
                            "{{\"type\": \"{}\", \"coordinates\": {}}}}}",
                            properties,
                            type,
                            written);
        first_ = false;
    }

    std::ofstream out_;
    bool first_ = true;
};

/// The shore of a lake along a line of water, wider in its midst.
std::vector<Spot> shore(const Line& water, Draws& draws) {
    const double half_m = water.half_width_m > 0.0 ? water.half_width_m : 160.0;
    const std::size_t count = water.points.size();
    std::vector<Spot> ring;
    for (int side = 0; side < 2; ++side)
        for (std::size_t j = 0; j < count; ++j) {
            const std::size_t i = side == 0 ? j : count - 1 - j;
            const double share = static_cast<double>(i) / static_cast<double>(count - 1);
            const double swell =
                0.25 + 0.75 * std::sin(std::numbers::pi * std::clamp(share, 0.02, 0.98));
            const double wide_m = half_m * swell * (0.9 + 0.5 * draws.uniform());
            ring.push_back(moved(spot(water.points[i]),
                                 {heading_deg(water, i) + (side == 0 ? -90.0 : 90.0), wide_m}));
        }
    return ring;
}

/// A stream that comes down across a way.
std::vector<Spot> stream(const Line& way, std::size_t at, Draws& draws) {
    const double across_deg = heading_deg(way, at) + 90.0;
    std::vector<Spot> line;
    for (int i = -10; i <= 10; ++i)
        line.push_back(moved(moved(spot(way.points[at]), {across_deg, 120.0 * i}),
                             {across_deg + 90.0, i == 0 ? 0.0 : 60.0 * draws.normal()}));
    return line;
}

/// The path under a walk, but for a stretch in its midst.
void write_path(LandFile& file, const Line& way, Draws& draws) {
    std::vector<Spot> path;
    const std::size_t count = way.points.size();
    for (std::size_t i = 0; i < count; ++i) {
        const bool gap = i > count / 2 && i < count / 2 + count / 8;
        if (gap && !path.empty()) {
            file.line("\"highway\": \"path\"", path);
            path.clear();
        }
        if (!gap)
            path.push_back(
                moved(spot(way.points[i]), {heading_deg(way, i) + 90.0, 4.0 * draws.normal()}));
    }
    file.line("\"highway\": \"path\"", path);
}

void write_water(LandFile& file, const Line& water, Draws& draws) {
    constexpr double river_m = 60.0; // half the width, up to which water is a river
    const std::string name = fmt::format("\"name\": \"{}\"", water.name);
    if (water.half_width_m > 0.0 && water.half_width_m < river_m) {
        std::vector<Spot> line;
        for (const Point& point : water.points)
            line.push_back(spot(point));
        file.line("\"waterway\": \"river\", " + name, line);
    } else {
        file.area("\"natural\": \"water\", " + name, shore(water, draws));
    }
}

void write_road(LandFile& file, const Spot& end, double away_deg) {
    std::vector<Spot> road;
    for (int i = 0; i <= 12; ++i)
        road.push_back(moved(end, {away_deg + 4.0 * i, 250.0 * i}));
    file.line("\"highway\": \"unclassified\"", road);
    file.area("\"building\": \"yes\"",
              {moved(end, {away_deg + 90.0, 60.0}),
               moved(end, {away_deg + 90.0, 80.0}),
               moved(end, {away_deg + 80.0, 82.0}),
               moved(end, {away_deg + 78.0, 62.0})});
}

} // namespace

void write_land(const std::filesystem::path& file, const Layout& layout, const LandPlan& plan) {
    Draws draws(plan.seed);
    LandFile land(file);
    for (const Line& line : layout.lines) {
        if (line.type == "paddle") {
            write_water(land, line, draws);
            continue;
        }
        write_path(land, line, draws);
        constexpr std::size_t points_a_stream = 45;
        for (std::size_t at = 30; at + 5 < line.points.size(); at += points_a_stream)
            land.line("\"waterway\": \"stream\"", stream(line, at, draws));
    }
    const Line& first = layout.lines.front();
    const Line& last = layout.lines.back();
    write_road(land, spot(first.points.front()), heading_deg(first, 0) + 180.0);
    write_road(land, spot(last.points.back()), heading_deg(last, last.points.size() - 1));
    for (const LandPoint& point : plan.points) {
        const Line& line = layout.lines.at(point.leg);
        std::size_t nearest = 0;
        double along_m = 0.0;
        for (std::size_t i = 1; i < line.points.size() && along_m < point.along_m; ++i) {
            double step_m = 0.0;
            GeographicLib::Geodesic::WGS84().Inverse(line.points[i - 1].lat_deg,
                                                     line.points[i - 1].lon_deg,
                                                     line.points[i].lat_deg,
                                                     line.points[i].lon_deg,
                                                     step_m);
            along_m += step_m;
            nearest = i;
        }
        land.point(
            fmt::format("\"waterway\": \"{}\"{}",
                        point.tag,
                        point.name.empty() ? "" : fmt::format(", \"name\": \"{}\"", point.name)),
            spot(line.points[nearest]));
    }
    land.finish();
}

} // namespace tumpline::samples
