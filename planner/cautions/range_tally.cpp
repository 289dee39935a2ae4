#include "planner/cautions/range_tally.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::planner {

namespace {

/// "-40.0" of "-40.0 %" before "+40.0 %": a unit that both have is said once.
std::string_view before_unit(std::string_view from, std::string_view to) {
    const std::size_t unit = from.find(' ');
    const bool same = unit != std::string_view::npos && to.ends_with(from.substr(unit));
    return same ? from.substr(0, unit) : from;
}

} // namespace

void RangeExcess::see(double value, double length_m) {
    const bool below = least_ && value < *least_;
    const bool above = most_ && value > *most_;
    if (!below && !above)
        return;
    lowest_ = std::min(lowest_, value);
    highest_ = std::max(highest_, value);
    length_m_ += length_m;
}

UnitText RangeExcess::worst(ShowFigure show) const {
    const bool below = least_ && lowest_ < *least_;
    const bool above = most_ && highest_ > *most_;
    if (below && above)
        return format_both("{} and {}", show(lowest_), show(highest_));
    return show(below ? lowest_ : highest_);
}

UnitText RangeExcess::range(ShowFigure show) const {
    if (!least_)
        return format_both("up to {}", show(most_.value_or(0.0)));
    if (!most_)
        return format_both("from {}", show(*least_));
    const UnitText from = show(*least_);
    const UnitText to = show(*most_);
    return {fmt::format("{} to {}", before_unit(from.metric, to.metric), to.metric),
            fmt::format("{} to {}", before_unit(from.imperial, to.imperial), to.imperial)};
}

void RangeTally::add(std::string_view quantity, const RangeExcess& beyond, ShowFigure show) {
    if (!beyond.any())
        return;
    const UnitText over = beyond.length_m() > 0.0
                              ? format_both(" over {}", in_both(show_distance, beyond.length_m()))
                              : UnitText("");
    reported_.push_back(
        format_both("{} {}{} (covers {})", quantity, beyond.worst(show), over, beyond.range(show)));
}

UnitText RangeTally::text(std::string_view model) const {
    UnitText all("");
    for (const UnitText& one : reported_)
        all = all.metric.empty() ? one : format_both("{}; {}", all, one);
    return format_both("Outside the range of {}: {}.", model, all);
}

} // namespace tumpline::planner
