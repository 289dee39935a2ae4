#include "sample-routes/make/ground.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace tumpline::samples {
namespace {

constexpr double metres_per_degree = 111'300.0; // near enough for drawing hills

/// A point of the route on a plane around its middle, metres.
struct Flat {
    double x_m;
    double y_m;
    double ground_m;
    double half_width_m;
};

struct Plane {
    double lat_deg;
    double lon_deg;

    [[nodiscard]] double x_m(double at_lon_deg) const {
        return (at_lon_deg - lon_deg) * metres_per_degree *
               std::cos(lat_deg * std::numbers::pi / 180.0);
    }

    [[nodiscard]] double y_m(double at_lat_deg) const {
        return (at_lat_deg - lat_deg) * metres_per_degree;
    }
};

/// Smooth random hills between -1 and 1: drawn values at the corners of a square net.
class Hills {
  public:
    Hills(std::uint64_t seed, double net_m) : seed_(seed), net_m_(net_m) {}

    [[nodiscard]] double at(double x_m, double y_m) const {
        const double column = std::floor(x_m / net_m_);
        const double row = std::floor(y_m / net_m_);
        const double u = smooth(x_m / net_m_ - column);
        const double v = smooth(y_m / net_m_ - row);
        const auto c = static_cast<std::int64_t>(column);
        const auto r = static_cast<std::int64_t>(row);
        return std::lerp(std::lerp(corner(c, r), corner(c + 1, r), u),
                         std::lerp(corner(c, r + 1), corner(c + 1, r + 1), u),
                         v);
    }

  private:
    static double smooth(double t) { return t * t * (3.0 - 2.0 * t); }

    [[nodiscard]] double corner(std::int64_t column, std::int64_t row) const {
        const auto mixed = static_cast<std::uint64_t>(column) * 0x9e3779b97f4a7c15ULL ^
                           static_cast<std::uint64_t>(row) * 0xc2b2ae3d27d4eb4fULL;
        return 2.0 * Draws(seed_ ^ mixed).uniform() - 1.0;
    }

    std::uint64_t seed_;
    double net_m_;
};

std::vector<Flat> flatten(const Layout& layout, const Plane& plane) {
    std::vector<Flat> way;
    for (const Line& line : layout.lines)
        for (std::size_t i = 0; i < line.points.size(); ++i) {
            const Point& point = line.points[i];
            const double share =
                static_cast<double>(i) / static_cast<double>(line.points.size() - 1);
            const double swell =
                std::sqrt(std::sin(std::numbers::pi * share)); // narrow at its ends
            way.push_back({plane.x_m(point.lon_deg),
                           plane.y_m(point.lat_deg),
                           point.ground_m,
                           line.half_width_m * (share > 0.0 && share < 1.0 ? swell : 0.0)});
        }
    return way;
}

struct Near {
    double off_m;        ///< from the way
    double floor_m;      ///< its height at the nearest point
    double half_width_m; ///< of the water there
    double around_m;     ///< mean height of the way, near points counting most
};

Near nearest(const std::vector<Flat>& way, double x_m, double y_m) {
    Near near{std::numeric_limits<double>::infinity(), 0.0, 0.0, 0.0};
    double best_m2 = near.off_m;
    double weights = 0.0;
    double sum = 0.0;
    for (std::size_t i = 1; i < way.size(); ++i) {
        const Flat& a = way[i - 1];
        const Flat& b = way[i];
        const double dx = b.x_m - a.x_m;
        const double dy = b.y_m - a.y_m;
        const double length_m2 = dx * dx + dy * dy;
        const double along = (x_m - a.x_m) * dx + (y_m - a.y_m) * dy;
        const double t = length_m2 > 0.0 ? std::clamp(along / length_m2, 0.0, 1.0) : 0.0;
        const double ex = x_m - a.x_m - t * dx;
        const double ey = y_m - a.y_m - t * dy;
        const double off_m2 = ex * ex + ey * ey;
        const double floor_m = a.ground_m + t * (b.ground_m - a.ground_m);
        const double weight = 1.0 / ((off_m2 + 1e4) * (off_m2 + 1e4));
        weights += weight;
        sum += weight * floor_m;
        if (off_m2 < best_m2) {
            best_m2 = off_m2;
            near.floor_m = floor_m;
            near.half_width_m = a.half_width_m + t * (b.half_width_m - a.half_width_m);
        }
    }
    near.off_m = std::sqrt(best_m2);
    near.around_m = sum / weights;
    return near;
}

} // namespace

Raster make_ground(const Layout& layout, std::uint64_t seed) {
    double south = 90.0, north = -90.0, west = 180.0, east = -180.0;
    for (const Line& line : layout.lines)
        for (const Point& point : line.points) {
            south = std::min(south, point.lat_deg);
            north = std::max(north, point.lat_deg);
            west = std::min(west, point.lon_deg);
            east = std::max(east, point.lon_deg);
        }
    constexpr double cell_lat_deg = 0.0004; // 44 m
    constexpr double margin_deg = 0.012;    // 1.3 km
    const double cell_lon_deg = 2.0 * cell_lat_deg;
    Raster raster{std::floor((west - 2.0 * margin_deg) * 100.0) / 100.0,
                  std::ceil((north + margin_deg) * 100.0) / 100.0,
                  cell_lon_deg,
                  cell_lat_deg,
                  0,
                  0,
                  {}};
    raster.columns =
        static_cast<int>(std::ceil((east + 2.0 * margin_deg - raster.west_deg) / cell_lon_deg));
    raster.rows =
        static_cast<int>(std::ceil((raster.north_deg - south + margin_deg) / cell_lat_deg));

    const Plane plane{(south + north) / 2.0, (west + east) / 2.0};
    const std::vector<Flat> way = flatten(layout, plane);
    const Hills broad(seed, 3100.0);
    const Hills narrow(seed + 1, 700.0);
    const Hills grain(seed + 2, 70.0); // noise of a raster hangs together over a cell or two
    for (int row = 0; row < raster.rows; ++row)
        for (int column = 0; column < raster.columns; ++column) {
            const double x_m = plane.x_m(raster.west_deg + (column + 0.5) * cell_lon_deg);
            const double y_m = plane.y_m(raster.north_deg - (row + 0.5) * cell_lat_deg);
            const Near near = nearest(way, x_m, y_m);
            const double shore_m = std::max(0.0, near.off_m - near.half_width_m);
            const double away = shore_m * shore_m / (shore_m * shore_m + 700.0 * 700.0);
            const double height_m =
                std::lerp(near.floor_m, near.around_m, away) + 430.0 * away +
                away * (240.0 * broad.at(x_m, y_m) + 45.0 * narrow.at(x_m, y_m)) +
                (shore_m > 0.0 ? 2.2 : 0.7) * grain.at(x_m, y_m);
            raster.heights_m.push_back(static_cast<std::int16_t>(std::lround(height_m)));
        }
    return raster;
}

} // namespace tumpline::samples
