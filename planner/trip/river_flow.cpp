#include "planner/trip/river_flow.h"

#include "planner/models/hydraulic_geometry.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace tumpline::planner {

namespace {

constexpr double m3_per_ft3 = m_per_foot * m_per_foot * m_per_foot;

/// A current carried from the column nearest in discharge; empty without one in range.
std::optional<double> carried_current(const RiverFlow& flow, const GaugeReading& to) {
    std::optional<double> current_mps;
    double nearest = 0.0;
    for (const std::optional<FlowColumn>& one : flow.columns) {
        if (to.stage || !one || !one->current_mps || !one->reading || one->reading->stage)
            continue;
        const double ratio = to.value / one->reading->value;
        const double away = std::abs(std::log(ratio));
        if (!at_a_station_covers(ratio) || (current_mps && away >= nearest))
            continue;
        nearest = away;
        current_mps = *one->current_mps * at_a_station_ratio(ratio, default_velocity_exponent);
    }
    return current_mps;
}

std::optional<FlowState> column_state(const RiverFlow& flow, const FlowColumn& column) {
    FlowState state;
    state.reading = column.reading;
    state.river_class = column.river_class ? column.river_class : flow.leg_class;
    std::optional<double> current_mps = column.current_mps;
    if (!current_mps && column.reading) {
        current_mps = carried_current(flow, *column.reading);
        state.estimated = true;
    }
    if (!current_mps)
        return std::nullopt;
    state.current_mps = *current_mps;
    return state;
}

/// The harder of two classes; not known if either is not.
std::optional<RiverClass> harder_class(const FlowState& one, const FlowState& other) {
    if (!one.river_class || !other.river_class)
        return std::nullopt;
    return std::max(*one.river_class, *other.river_class);
}

/// Beyond the last column by hydraulic geometry.
std::optional<FlowState>
beyond_state(const RiverFlow& flow, const GaugeReading& at, const FlowState& nearest) {
    const std::optional<double> current_mps = carried_current(flow, at);
    if (!current_mps)
        return std::nullopt;
    return FlowState{.current_mps = *current_mps,
                     .reading = at,
                     .river_class = nearest.river_class,
                     .estimated = true,
                     .beyond = true};
}

std::optional<FlowState> reading_state(const RiverFlow& flow, const GaugeReading& at) {
    std::vector<FlowState> known;
    for (const std::optional<FlowColumn>& one : flow.columns)
        if (one && one->reading && one->reading->stage == at.stage)
            if (const std::optional<FlowState> state = column_state(flow, *one))
                known.push_back(*state);
    if (known.empty())
        return std::nullopt;
    const auto above = std::find_if(known.begin(), known.end(), [&](const FlowState& one) {
        return one.reading->value >= at.value;
    });
    if (above != known.end() && above->reading->value == at.value)
        return *above;
    if (above == known.begin() || above == known.end())
        return beyond_state(flow, at, above == known.end() ? known.back() : known.front());
    const FlowState& below = *std::prev(above);
    const double share =
        (at.value - below.reading->value) / (above->reading->value - below.reading->value);
    return FlowState{.current_mps = std::lerp(below.current_mps, above->current_mps, share),
                     .reading = at,
                     .river_class = harder_class(below, *above),
                     .estimated = below.estimated || above->estimated,
                     .beyond = false};
}

constexpr std::array<std::string_view, flow_levels.size()> level_names{"low", "normal", "high"};

} // namespace

std::optional<FlowState> flow_state(const RiverFlow& flow, const FlowNow& now) {
    if (now.reading)
        return reading_state(flow, *now.reading);
    const FlowLevel level = now.column.value_or(FlowLevel::normal);
    return flow.column(level) ? column_state(flow, *flow.column(level)) : std::nullopt;
}

std::optional<bool> is_runnable(const RiverFlow& flow, const FlowState& state) {
    if (!flow.runnable || !state.reading || state.reading->stage != (*flow.runnable)[0].stage)
        return std::nullopt;
    return state.reading->value >= (*flow.runnable)[0].value &&
           state.reading->value <= (*flow.runnable)[1].value;
}

std::optional<RiverClass> hardest_class(const RiverFlow& flow) {
    const std::optional<FlowState> now = flow_state(flow, flow.now);
    std::optional<RiverClass> hardest = now ? now->river_class : std::nullopt;
    for (const Release& release : flow.times) {
        const std::optional<FlowState> state = flow_state(flow, release.now);
        if (state && state->river_class && hardest)
            hardest = std::max(*hardest, *state->river_class);
        else
            hardest = std::nullopt;
    }
    return hardest;
}

void set_flow(TripLeg& leg) {
    if (!leg.flow)
        return;
    if (const std::optional<FlowState> state = flow_state(*leg.flow, leg.flow->now))
        leg.current_mps = state->current_mps;
    leg.river_class = hardest_class(*leg.flow);
}

void set_flows(Trip& trip) {
    for (TripLeg& leg : trip.route.legs) {
        if (!leg.flow)
            continue;
        leg.flow->leg_class = leg.river_class;
        leg.water = Water::river;
        set_flow(leg);
    }
}

void ask_flow(TripLeg& leg, FlowLevel level) {
    if (!leg.flow || !leg.flow->column(level))
        return;
    leg.flow->now = {.column = level, .reading = {}};
    leg.flow->times.clear();
    leg.flow->asked = true;
    set_flow(leg);
}

void ask_flow(Trip& trip, FlowLevel level) {
    trip.flow_asked = level;
    for (TripLeg& leg : trip.route.legs)
        ask_flow(leg, level);
}

std::string_view word(FlowLevel level) {
    return level_names[static_cast<std::size_t>(level)];
}

std::optional<FlowLevel> read_flow_level(std::string_view text) {
    const auto* const found = std::find(level_names.begin(), level_names.end(), text);
    if (found == level_names.end())
        return std::nullopt;
    return flow_levels[static_cast<std::size_t>(found - level_names.begin())];
}

UnitText reading_words(const GaugeReading& reading) {
    if (reading.stage)
        return {fmt::format("{:.2f} m", reading.value),
                fmt::format("{:.2f} ft", reading.value / m_per_foot)};
    const auto shown = [](double value) {
        return show_number(value, value < 10.0 ? 2 : value < 100.0 ? 1 : 0);
    };
    return {fmt::format("{} m3/s", shown(reading.value)),
            fmt::format("{} ft3/s", shown(reading.value / m3_per_ft3))};
}

UnitText level_words(const FlowNow& now) {
    if (now.reading)
        return reading_words(*now.reading);
    return word(now.column.value_or(FlowLevel::normal));
}

} // namespace tumpline::planner
