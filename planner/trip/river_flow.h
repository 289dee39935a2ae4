#pragma once

#include "planner/quantities/unit_text.h"
#include "planner/trip/trip.h"

#include <optional>
#include <string_view>

/// What a river does at one level, by the columns of its leg.
namespace tumpline::planner {

/// A river at one level.
struct FlowState {
    double current_mps = 0.0;
    std::optional<GaugeReading> reading = {};
    std::optional<RiverClass> river_class = {};
    bool estimated = false; ///< current by hydraulic geometry from another level
    bool beyond = false;    ///< the reading lies outside those of the columns
};

/// Empty where the columns do not tell a current at that level.
[[nodiscard]] std::optional<FlowState> flow_state(const RiverFlow& flow, const FlowNow& now);

/// Whether a level's reading lies in the runnable range; empty where nobody can say.
[[nodiscard]] std::optional<bool> is_runnable(const RiverFlow& flow, const FlowState& state);

/// Puts into each leg the current and the class of what its river carries now. The class is the
/// hardest of now and the releases.
void set_flows(Trip& trip);
void set_flow(TripLeg& leg);

/// Makes `level` what a leg's river carries at all hours, if there is such a column.
void ask_flow(TripLeg& leg, FlowLevel level);
/// The same for every leg of a trip.
void ask_flow(Trip& trip, FlowLevel level);

/// The hardest class at the levels of a day, releases included.
[[nodiscard]] std::optional<RiverClass> hardest_class(const RiverFlow& flow);

[[nodiscard]] std::string_view word(FlowLevel level);
[[nodiscard]] std::optional<FlowLevel> read_flow_level(std::string_view text);

/// "21 m3/s"; "742 ft3/s"; of a stage "1.40 m"; "4.59 ft".
[[nodiscard]] UnitText reading_words(const GaugeReading& reading);
/// "high", "21 m3/s".
[[nodiscard]] UnitText level_words(const FlowNow& now);

} // namespace tumpline::planner
