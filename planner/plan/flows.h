#pragma once

#include "planner/plan/verdict.h"
#include "planner/quantities/leg_number.h"
#include "planner/trip/river_flow.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// The levels of rivers, as the plan takes them, as data.
namespace tumpline::planner {

/// What the river of a leg carries while one is on it.
struct PlanFlow {
    std::string gauge;
    FlowNow now;                        ///< outside the releases
    bool asked = false;                 ///< a level in place of what the trip file takes
    std::vector<FlowState> states = {}; ///< met, in order; more than one where a dam changes it
    std::optional<std::array<GaugeReading, 2>> runnable = {};
};

/// A leg at one level of all rivers; times are summed over its days.
struct FlowLeg {
    LegNumber leg = {}; ///< of the route
    std::string name;
    double current_mps = 0.0;
    double moving_s = 0.0;
    std::optional<GaugeReading> reading = {};
    std::optional<RiverClass> river_class = {};
    bool estimated = false;
    std::optional<bool> runnable = {};
    bool asked = false; ///< false: no such level is given, and it carries what it carries now
};

struct FlowMargin {
    std::string what;
    double spare_s = 0.0; ///< beyond the margin
    double margin_s = 0.0;
};

/// The whole trip at one level of its rivers.
struct FlowPlan {
    FlowLevel level = FlowLevel::normal;
    double moving_s = 0.0;
    int days = 0;
    std::vector<FlowLeg> legs = {}; ///< those whose river has levels
    std::vector<std::optional<double>> before_dusk_s =
        {}; ///< day by day, of arriving; empty: no dusk
    std::vector<FlowMargin> appointments = {};
    VerdictLevel verdict = VerdictLevel::clear;
    std::vector<std::string> titles = {}; ///< of its cautions, worst first
};

} // namespace tumpline::planner
