#include "sample-routes/make/lay_out.h"

#include <GeographicLib/Geodesic.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tumpline::samples {
namespace {

double rounded(double degrees) {
    return std::round(degrees * 1e6) / 1e6;
}

/// How a leg winds: three waves of about 0.7, 2.3 and 5.5 km with drawn phases, between -1 and 1.
class Winding {
  public:
    explicit Winding(Draws& draws) {
        for (double& phase : phases_)
            phase = 2.0 * std::numbers::pi * draws.uniform();
    }

    [[nodiscard]] double at(double along_m) const {
        constexpr std::array<double, 3> wave_m{700.0, 2300.0, 5500.0};
        constexpr std::array<double, 3> share{0.3, 0.4, 0.3};
        double sum = 0.0;
        for (std::size_t i = 0; i < wave_m.size(); ++i)
            sum += share[i] * std::sin(2.0 * std::numbers::pi * along_m / wave_m[i] + phases_[i]);
        return sum;
    }

  private:
    std::array<double, 3> phases_{};
};

} // namespace

double Draws::uniform() { // splitmix64, public domain
    state_ += 0x9e3779b97f4a7c15ULL;
    std::uint64_t bits = state_;
    bits = (bits ^ (bits >> 30U)) * 0xbf58476d1ce4e5b9ULL;
    bits = (bits ^ (bits >> 27U)) * 0x94d049bb133111ebULL;
    bits ^= bits >> 31U;
    return static_cast<double>(bits >> 11U) * 0x1p-53;
}

double Draws::normal() { // sum of twelve uniform draws: close enough for noise
    double sum = -6.0;
    for (int i = 0; i < 12; ++i)
        sum += uniform();
    return sum;
}

double height_at(const LegPlan& leg, double along_m) {
    const std::vector<Height>& heights = leg.heights;
    for (std::size_t i = 1; i < heights.size(); ++i)
        if (along_m <= heights[i].along_m) {
            const Height& a = heights[i - 1];
            const Height& b = heights[i];
            const double share = (along_m - a.along_m) / (b.along_m - a.along_m);
            return a.height_m + share * (b.height_m - a.height_m);
        }
    return heights.back().height_m;
}

Layout lay_out(const RoutePlan& plan) {
    const GeographicLib::Geodesic& earth = GeographicLib::Geodesic::WGS84();
    Draws draws(plan.seed);
    Layout layout;
    double lat_deg = plan.lat_deg;
    double lon_deg = plan.lon_deg;
    for (std::size_t leg_index = 0; leg_index < plan.legs.size(); ++leg_index) {
        const LegPlan& leg = plan.legs[leg_index];
        const Winding winding(draws);
        const int steps = std::max(2, static_cast<int>(std::lround(leg.length_m / leg.step_m)));
        const double step_m = leg.length_m / steps;
        Line line{leg.name, leg.type, leg.half_width_m, {}};
        const auto bearing_deg = [&](double along_m) {
            return leg.bearing_deg + leg.bend_deg * along_m / leg.length_m +
                   leg.wiggle_deg * winding.at(along_m);
        };
        for (int i = 0; i <= steps; ++i) {
            const double along_m = i * step_m;
            const double ground_m = height_at(leg, along_m);
            line.points.push_back(
                {rounded(lat_deg),
                 rounded(lon_deg),
                 ground_m,
                 std::round(10.0 * (ground_m + plan.noise_m * draws.normal())) / 10.0});
            for (const PlacePlan& place : plan.places) {
                if (place.leg != leg_index || std::lround(place.along_m / step_m) != i)
                    continue;
                double place_lat = 0.0;
                double place_lon = 0.0;
                earth.Direct(lat_deg,
                             lon_deg,
                             bearing_deg(along_m) + 90.0,
                             place.aside_m,
                             place_lat,
                             place_lon);
                layout.waypoints.push_back({place.name,
                                            place.type,
                                            rounded(place_lat),
                                            rounded(place_lon),
                                            std::round(ground_m)});
            }
            if (i < steps)
                earth.Direct(lat_deg,
                             lon_deg,
                             bearing_deg(along_m + step_m / 2.0),
                             step_m,
                             lat_deg,
                             lon_deg);
        }
        layout.lines.push_back(std::move(line));
    }
    return layout;
}

Line shore_path(const Line& water, const ShorePath& path) {
    const GeographicLib::Geodesic& earth = GeographicLib::Geodesic::WGS84();
    Line shore{path.name, "walk", 0.0, {}};
    const std::size_t last = water.points.size() - 1;
    for (std::size_t i = 0; i <= last; ++i) {
        const Point& here = water.points[i];
        const Point& before = water.points[i > 0 ? i - 1 : 0];
        const Point& after = water.points[std::min(i + 1, last)];
        double length_m = 0.0;
        double course_deg = 0.0;
        double end_course_deg = 0.0;
        earth.Inverse(before.lat_deg,
                      before.lon_deg,
                      after.lat_deg,
                      after.lon_deg,
                      length_m,
                      course_deg,
                      end_course_deg);
        const double share = static_cast<double>(i) / static_cast<double>(last);
        const double aside = std::min(1.0, 10.0 * std::min(share, 1.0 - share)); // leaves and joins
        double lat_deg = 0.0;
        double lon_deg = 0.0;
        earth.Direct(
            here.lat_deg, here.lon_deg, course_deg + 90.0, aside * path.aside_m, lat_deg, lon_deg);
        const double ground_m =
            std::round(here.ground_m +
                       path.above_m * std::abs(std::sin(std::numbers::pi * path.humps * share)));
        shore.points.push_back({rounded(lat_deg), rounded(lon_deg), ground_m, ground_m});
    }
    return shore;
}

} // namespace tumpline::samples
