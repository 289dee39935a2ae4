#include "planner/decisions/drawn_flow.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

FlowScale::FlowScale(const RiverFlow& flow) : flow_(flow) {
    for (const FlowLevel level : flow_levels)
        if (flow.column(level))
            if (const std::optional<FlowState> state =
                    flow_state(flow, {.column = level, .reading = {}}))
                marks_.push_back({static_cast<double>(level), *state});
    readings_ = !marks_.empty() && std::all_of(marks_.begin(), marks_.end(), [&](const Mark& one) {
        const std::optional<GaugeReading>& first = marks_.front().state.reading;
        return one.state.reading && one.state.reading->stage == first->stage &&
               (one.state.reading->stage || one.state.reading->value > 0.0);
    });
}

double FlowScale::share_of(const Gap& gap, double reading) {
    const double low = gap.below.state.reading->value;
    const double high = gap.above.state.reading->value;
    if (high <= low)
        return 0.0;
    return gap.below.state.reading->stage ? (reading - low) / (high - low)
                                          : std::log(reading / low) / std::log(high / low);
}

double FlowScale::reading_at(const Gap& gap, double share) {
    const double low = gap.below.state.reading->value;
    const double high = gap.above.state.reading->value;
    return gap.below.state.reading->stage ? std::lerp(low, high, share)
                                          : low * std::pow(high / low, share);
}

std::optional<double> FlowScale::now() const {
    if (marks_.size() < 2)
        return std::nullopt;
    if (!flow_.now.reading) {
        const auto level = static_cast<double>(flow_.now.column.value_or(FlowLevel::normal));
        const bool known = std::any_of(
            marks_.begin(), marks_.end(), [&](const Mark& one) { return one.position == level; });
        return known ? std::optional(level) : std::nullopt;
    }
    const GaugeReading& now = *flow_.now.reading;
    if (!readings_ || now.stage != marks_.front().state.reading->stage ||
        now.value < marks_.front().state.reading->value ||
        now.value > marks_.back().state.reading->value)
        return std::nullopt;
    std::size_t above = 1;
    while (above + 1 < marks_.size() && marks_[above].state.reading->value < now.value)
        ++above;
    return std::lerp(marks_[above - 1].position,
                     marks_[above].position,
                     share_of({marks_[above - 1], marks_[above]}, now.value));
}

FlowState FlowScale::at(double position) const {
    const double held = std::clamp(position, marks_.front().position, marks_.back().position);
    std::size_t above = 1;
    while (above + 1 < marks_.size() && marks_[above].position < held)
        ++above;
    const Mark& low = marks_[above - 1];
    const Mark& high = marks_[above];
    if (held == low.position)
        return low.state;
    if (held == high.position)
        return high.state;
    const double share = (held - low.position) / (high.position - low.position);
    if (readings_) {
        const GaugeReading reading{.value = reading_at({low, high}, share),
                                   .stage = low.state.reading->stage};
        if (const std::optional<FlowState> state =
                flow_state(flow_, {.column = {}, .reading = reading}))
            return *state;
    }
    FlowState between = high.state;
    between.current_mps = std::lerp(low.state.current_mps, high.state.current_mps, share);
    between.reading = std::nullopt;
    if (low.state.river_class && high.state.river_class)
        between.river_class = std::max(*low.state.river_class, *high.state.river_class);
    else
        between.river_class = std::nullopt;
    between.estimated = low.state.estimated || high.state.estimated;
    return between;
}

double flow_shift(double normal) {
    constexpr double one_in_ten = 1.2815515655446004; // of a standard normal beyond this
    return normal / one_in_ten;
}

} // namespace tumpline::planner
