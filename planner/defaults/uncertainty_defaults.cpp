#include "planner/defaults/uncertainty_defaults.h"

#include "planner/models/paddling.h"
#include "planner/models/walking_speed.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
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
        return 0.5 * (on_foot.slower + on_foot.faster);
    case Assumption::pace_afloat:
        return 0.5 * (afloat.slower + afloat.faster);
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

PaceKnown pace_known(const Trip& trip, const Assumed& assumed) {
    return {.on_foot = std::all_of(
                trip.party.begin(),
                trip.party.end(),
                [](const Member& member) { return member.pace || member.level_speed_mps; }),
            .afloat = !assumed.craft.empty() &&
                      std::none_of(assumed.craft.begin(), assumed.craft.end(), [](const auto& c) {
                          return c.usual_speed;
                      })};
}

AssumedSpread assume_spread(const Spread& given, PaceKnown known) {
    AssumedSpread spread{};
    const auto fill = [&](const std::optional<double>& value, const char* key, double otherwise) {
        if (value)
            return *value;
        spread.defaults.push_back({fmt::format("/spread/{}", key),
                                   fmt::format("{}", otherwise),
                                   "common practice, no source"});
        return otherwise;
    };
    const auto between_people = [&](const TimeBand& band, const char* where) {
        const PaceSpread sides{.slower = std::log(band.high), .faster = -std::log(band.low)};
        spread.defaults.push_back(
            {"/spread/pace",
             fmt::format("{:.2f} slower, {:.2f} faster {}", sides.slower, sides.faster, where),
             std::string(band.basis)});
        return sides;
    };
    // Why these: docs/odds.md.
    constexpr double known_pace = 0.12;
    const double pace = given.pace || known.on_foot || known.afloat
                            ? fill(given.pace, "pace", known_pace)
                            : known_pace;
    spread.on_foot = {pace, pace};
    spread.afloat = {pace, pace};
    if (!given.pace && !known.on_foot)
        spread.on_foot = between_people(walking_time_band(), "on foot");
    if (!given.pace && !known.afloat)
        spread.afloat = between_people(paddling_time_band(), "afloat");
    spread.day_form = fill(given.day_form, "day_form", 0.05);
    spread.wind = fill(given.wind, "wind", 0.5);
    spread.current = fill(given.current, "current", usual_current_spread);
    spread.changeovers = fill(given.changeovers, "changeovers", 0.25);
    spread.drinking = fill(given.drinking, "drinking", 0.2);
    spread.eating = fill(given.eating, "eating", 0.1);
    return spread;
}

} // namespace tumpline::planner
