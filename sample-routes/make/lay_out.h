#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Invented routes, laid out on the ellipsoid so that their lengths and climbs are known
/// beforehand.
namespace tumpline::samples {

inline constexpr double rod_m = 5.0292; // 16.5 international feet

struct Height {
    double along_m;
    double height_m;
};

/// One leg as it is wanted.
struct LegPlan {
    std::string name;
    std::string type; ///< as it stands in the file: "walk", "portage", "paddle"
    double length_m;
    double bearing_deg; ///< at its start, before it winds
    double bend_deg;    ///< turned clockwise by its end
    double wiggle_deg;  ///< how far it winds to either side
    double step_m;      ///< about the distance between points; made to fit the length
    std::vector<Height>
        heights; ///< straight lines between these; the first at 0, the last at the end
    double half_width_m = 0.0; ///< of the water; 0 on land
};

/// A named point beside a leg.
struct PlacePlan {
    std::string name;
    std::string type; ///< the kind of place, as the trip file calls it
    std::size_t leg;  ///< from 0
    double along_m;   ///< of that leg
    double aside_m;   ///< to the right of the way; negative to the left
};

struct RoutePlan {
    double lat_deg; ///< of the start
    double lon_deg;
    std::vector<LegPlan> legs;
    std::vector<PlacePlan> places;
    double noise_m = 0.0; ///< standard deviation of the heights written with the points
    std::uint64_t seed = 1;
};

struct Point {
    double lat_deg;
    double lon_deg;
    double ground_m;   ///< the height wanted
    double recorded_m; ///< the same with noise, as a receiver would have it
    std::optional<std::chrono::sys_seconds> time = {};
};

struct Line {
    std::string name;
    std::string type;
    double half_width_m;
    std::vector<Point> points;
};

struct Waypoint {
    std::string name;
    std::string type;
    double lat_deg;
    double lon_deg;
    double height_m;
};

struct Layout {
    std::vector<Line> lines;
    std::vector<Waypoint> waypoints;
};

/// Lays the legs end to end. All steps of a leg are geodesics of one length, laid by
/// GeographicLib, so that a leg is as long as wanted to the rounding of its coordinates (1e-6 deg).
[[nodiscard]] Layout lay_out(const RoutePlan& plan);

/// How a shore path runs beside a line of water.
struct ShorePath {
    std::string name;
    double aside_m; ///< to the right of the line; negative to the left
    double above_m; ///< the water, at its humps
    int humps;
};

/// A walk from a line's start to its end that keeps `aside_m` from it in between.
[[nodiscard]] Line shore_path(const Line& water, const ShorePath& path);

/// Height wanted at a distance along a leg.
[[nodiscard]] double height_at(const LegPlan& leg, double along_m);

/// Seeded draws that are the same on every machine.
class Draws {
  public:
    explicit Draws(std::uint64_t seed) : state_(seed) {}

    double uniform(); ///< in [0, 1)
    double normal();  ///< mean 0, standard deviation 1, within 6

  private:
    std::uint64_t state_;
};

} // namespace tumpline::samples
