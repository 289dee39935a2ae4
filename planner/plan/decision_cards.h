#pragma once

#include "geo/light/time_zone.h"
#include "planner/quantities/leg_number.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// When not to go on, and what is done instead, as data.
namespace tumpline::planner {

/// The latest start on a leg that keeps one of the day's ends.
struct LatestStart {
    geo::sys_seconds at{};
    std::string keeps;   ///< "dusk", or the name of an appointment
    bool passed = false; ///< the plan itself starts later
};

/// What is asked before one sets out on a leg of a river or a lake.
struct DecisionCard {
    LegNumber leg = {}; ///< of the route
    int day = 1;
    std::string name;
    std::string at; ///< where one decides: the place at the leg's start, or "km 12.3"
    double along_m = 0.0;
    std::string gauge;
    std::optional<GaugeReading> below;    ///< do not go on below
    std::optional<GaugeReading> above;    ///< nor above
    std::optional<FlowLevel> not_at = {}; ///< nor at this level, which has no reading
    std::string above_why;                ///< "it is not runnable", "class III is more than ..."
    bool reading_known = false;           ///< a range or a class tells of readings at all
    std::optional<LatestStart> latest;
    std::optional<double> wind_mps;   ///< nor in more wind than that over open water
    std::string wind_craft;           ///< whose ceiling it is
    std::vector<std::string> instead; ///< alternatives laid for this leg, by their names
    std::string wait_at;              ///< the day's last night, or where one decides
    std::string back_to;              ///< nearest exit behind; may be empty
    std::optional<double> back_s;
};

} // namespace tumpline::planner
