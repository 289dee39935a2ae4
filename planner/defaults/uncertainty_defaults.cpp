#include "planner/defaults/uncertainty_defaults.h"

#include <fmt/format.h>

#include <optional>
#include <string>

namespace tumpline::planner {

std::string_view name_of(Assumption assumption) {
    switch (assumption) {
    case Assumption::pace_on_foot:
        return "pace_on_foot";
    case Assumption::pace_afloat:
        return "pace_afloat";
    case Assumption::day_form:
        return "day_form";
    case Assumption::wind:
        return "wind";
    case Assumption::current:
        return "current";
    case Assumption::changeovers:
        return "changeovers";
    case Assumption::drinking:
        return "drinking";
    case Assumption::eating:
        return "eating";
    }
    return "";
}

double AssumedSpread::of(Assumption assumption) const {
    switch (assumption) {
    case Assumption::pace_on_foot:
    case Assumption::pace_afloat:
        return pace;
    case Assumption::day_form:
        return day_form;
    case Assumption::wind:
        return wind;
    case Assumption::current:
        return current;
    case Assumption::changeovers:
        return changeovers;
    case Assumption::drinking:
        return drinking;
    case Assumption::eating:
        return eating;
    }
    return 0.0;
}

AssumedSpread assume_spread(const Spread& given) {
    AssumedSpread spread{};
    const auto fill = [&](const std::optional<double>& value, const char* key, double otherwise) {
        if (value)
            return *value;
        spread.defaults.push_back({fmt::format("/spread/{}", key),
                                   fmt::format("{}", otherwise),
                                   "common practice, no source"});
        return otherwise;
    };
    // Why these: docs/odds.md.
    spread.pace = fill(given.pace, "pace", 0.12);
    spread.day_form = fill(given.day_form, "day_form", 0.05);
    spread.wind = fill(given.wind, "wind", 0.5);
    spread.current = fill(given.current, "current", 0.25);
    spread.changeovers = fill(given.changeovers, "changeovers", 0.25);
    spread.drinking = fill(given.drinking, "drinking", 0.2);
    spread.eating = fill(given.eating, "eating", 0.1);
    return spread;
}

} // namespace tumpline::planner
