#pragma once

#include "geo/position.h"
#include "planner/plan.h"
#include "planner/route/route.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What every exported file shows of a plan: the lines of its legs, its places and nights.
namespace tumpline::cli {

struct ExportPoint {
    geo::Position at;
    std::optional<double> height_m; ///< above the geoid, of the profile
};

using ExportLine = std::vector<ExportPoint>;

/// The track's own points between the ends of `leg`, its ends put in where a night cuts it; two
/// points at least. Empty if the route has no such leg, or that leg no line.
[[nodiscard]] ExportLine export_line(const planner::PlanLeg& leg, const planner::Route& route);

/// The parts of `line` on either side of the 180th meridian. Each crossing lies in both, with the
/// longitude of its own side, on the straight line of longitude and latitude between the points.
/// Source: [RFC7946, sections 3.1.1 and 3.1.9].
[[nodiscard]] std::vector<ExportLine> cut_at_antimeridian(const ExportLine& line);

/// A place of the route, or a night.
struct ExportPlace {
    std::string name;
    std::string_view kind; ///< a word of the trip file, or "night"
    geo::Position at;
    std::optional<double> height_m;
    double along_m = 0.0;    ///< of the first pass
    int passes = 1;          ///< how often the route comes by
    std::vector<int> nights; ///< days after which one sleeps here
    bool dry = false;        ///< a night without water
    std::string note;
    std::vector<const planner::LaidThings*> left = {}; ///< of the plan: what is left here
};

/// Nights first, then places in route order; without those that have no position, on legs without
/// a line. A camp in which one sleeps is told as a night.
[[nodiscard]] std::vector<ExportPlace> export_places(const planner::Plan& plan,
                                                     const planner::Route& route);

/// What is left at a place and fetched, one sentence each: "left on day 2: red boat, 2.0 kg of food
/// (5.3 kg); fetched on day 4"; empty where nothing is.
[[nodiscard]] std::vector<std::string> export_left(const ExportPlace& place,
                                                   const planner::Plan& plan);

/// The leg's name, the day beside it if a night cuts the leg.
[[nodiscard]] std::string export_name(const planner::PlanLeg& leg);

/// Cautions of that leg on that day, one line each.
[[nodiscard]] std::vector<std::string> export_cautions(const planner::Plan& plan,
                                                       const planner::PlanLeg& leg);

/// Degrees with nine decimals at most (0.1 mm on the ground), never an exponent.
void append_degrees(std::string& text, double degrees);

/// The same of a longitude that must be less than 180: it becomes -180. Source: [GPX11].
void append_gpx_longitude(std::string& text, double lon_deg);

/// Metres with two decimals at most, never an exponent.
void append_metres(std::string& text, double metres);

} // namespace tumpline::cli
