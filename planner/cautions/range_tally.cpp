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

void Beyond::see(double value, double length_m) {
    const bool below = least_ && value < *least_;
    const bool above = most_ && value > *most_;
    if (!below && !above)
        return;
    lowest_ = std::min(lowest_, value);
    highest_ = std::max(highest_, value);
    length_m_ += length_m;
}

Wording Beyond::worst(ShowFigure show) const {
    const bool below = least_ && lowest_ < *least_;
    const bool above = most_ && highest_ > *most_;
    if (below && above)
        return worded("{} and {}", show(lowest_), show(highest_));
    return show(below ? lowest_ : highest_);
}

Wording Beyond::range(ShowFigure show) const {
    if (!least_)
        return worded("up to {}", show(most_.value_or(0.0)));
    if (!most_)
        return worded("from {}", show(*least_));
    const Wording from = show(*least_);
    const Wording to = show(*most_);
    return {fmt::format("{} to {}", before_unit(from.metric, to.metric), to.metric),
            fmt::format("{} to {}", before_unit(from.imperial, to.imperial), to.imperial)};
}

void Outside::add(std::string_view quantity, const Beyond& beyond, ShowFigure show) {
    if (!beyond.any())
        return;
    const Wording over = beyond.length_m() > 0.0
                             ? worded(" over {}", both(show_distance, beyond.length_m()))
                             : Wording("");
    said_.push_back(
        worded("{} {}{} (covers {})", quantity, beyond.worst(show), over, beyond.range(show)));
}

Wording Outside::text(std::string_view model) const {
    Wording all("");
    for (const Wording& one : said_)
        all = all.metric.empty() ? one : worded("{}; {}", all, one);
    return worded("Outside the range of {}: {}.", model, all);
}

} // namespace tumpline::planner
