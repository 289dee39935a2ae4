#include "planner/out_of_range.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::planner {

void Beyond::see(double value, double length_m) {
    const bool below = least_ && value < *least_;
    const bool above = most_ && value > *most_;
    if (!below && !above)
        return;
    lowest_ = std::min(lowest_, value);
    highest_ = std::max(highest_, value);
    length_m_ += length_m;
}

std::string Beyond::worst(ShowFigure show) const {
    const bool below = least_ && lowest_ < *least_;
    const bool above = most_ && highest_ > *most_;
    if (below && above)
        return fmt::format("{} and {}", show(lowest_), show(highest_));
    return show(below ? lowest_ : highest_);
}

std::string Beyond::range(ShowFigure show) const {
    if (least_ && most_) {
        const std::string from = show(*least_);
        const std::string to = show(*most_);
        const std::size_t unit = from.find(' ');
        const bool same_unit = unit != std::string::npos && to.ends_with(from.substr(unit));
        return fmt::format("{} to {}", same_unit ? from.substr(0, unit) : from, to);
    }
    return least_ ? "from " + show(*least_) : "up to " + show(most_.value_or(0.0));
}

void Outside::add(std::string_view quantity, const Beyond& beyond, ShowFigure show) {
    if (!beyond.any())
        return;
    const std::string over =
        beyond.length_m() > 0.0 ? fmt::format(" over {:.0f} m", beyond.length_m()) : "";
    said_.push_back(
        fmt::format("{} {}{} (covers {})", quantity, beyond.worst(show), over, beyond.range(show)));
}

std::string Outside::text(std::string_view model) const {
    return fmt::format("Outside the range of {}: {}.", model, fmt::join(said_, "; "));
}

} // namespace tumpline::planner
