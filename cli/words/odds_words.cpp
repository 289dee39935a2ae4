#include "cli/words/odds_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::cli {

using planner::Assumption;

std::string_view assumption_words(Assumption assumption) {
    switch (assumption) {
    case Assumption::pace_on_foot:
        return "pace on foot";
    case Assumption::pace_afloat:
        return "pace afloat";
    case Assumption::day_form:
        return "day-to-day variation";
    case Assumption::wind:
        return "wind";
    case Assumption::current:
        return "current";
    case Assumption::changeovers:
        return "transitions";
    case Assumption::drinking:
        return "drinking";
    case Assumption::eating:
        return "eating";
    }
    return "";
}

std::string chance_words(double chance, std::size_t draws) {
    if (chance <= 0.0)
        return "none";
    if (chance >= 1.0)
        return "all";
    const double hundred = 100.0 * chance;
    if (hundred < 1.0)
        return draws >= 1000 ? fmt::format("{:.1f} %", std::max(0.1, hundred)) : "< 1 %";
    return fmt::format("{:.0f} %", std::min(99.0, hundred));
}

} // namespace tumpline::cli
