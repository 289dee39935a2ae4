#include "planner/solution/winds.h"

#include "planner/conditions/releases.h"

namespace tumpline::planner {

Winds::Winds(const Route& route, const Stretches& stretches, const Assumed& assumed)
    : route_(route), stretches_(stretches), assumed_(assumed), releases_(has_releases(route)),
      known_(stretches.stretches.size()) {}

WindMet Winds::met(const Weather& weather, std::size_t stretch) const {
    const double drawn = conditions_on(assumed_, stretch).wind;
    WindMet met;
    met.known = weather.wind_mps.has_value();
    met.blowing = !assumed_.forecast.even()
                      ? Blowing{drawn * weather.wind_mps.value_or(0.0), weather.wind_from_deg}
                      : Blowing{drawn * assumed_.weather.wind_mps, assumed_.weather.wind_from_deg};
    if (weather.gusts_mps)
        met.gusts_mps = drawn * *weather.gusts_mps;
    return met;
}

WindMet Winds::at(std::size_t stretch, const DayTime& when) const {
    const RouteLeg& leg = route_.legs[stretches_.stretches[stretch].leg.index()];
    WindMet found = met(assumed_.forecast.at({leg, when.day}, when.after_midnight_s), stretch);
    found.current_mps = current_mps(stretch, when.after_midnight_s);
    return found;
}

std::optional<double> Winds::current_mps(std::size_t stretch, double after_midnight_s) const {
    const RouteLeg& leg = route_.legs[stretches_.stretches[stretch].leg.index()];
    const std::optional<FlowState> state = released_at(leg, after_midnight_s);
    return state ? std::optional(state->current_mps) : std::nullopt;
}

void Winds::add_parts(const WindSpell& spell,
                      std::size_t stretch,
                      std::vector<WindSpell>& to) const {
    const RouteLeg& leg = route_.legs[stretches_.stretches[stretch].leg.index()];
    WindSpell part = spell;
    for (const double change_s : release_changes(leg)) {
        if (change_s <= part.from_s || change_s >= spell.to_s)
            continue;
        part.to_s = change_s;
        part.met.current_mps = current_mps(stretch, part.from_s);
        to.push_back(part);
        part.from_s = change_s;
        part.to_s = spell.to_s;
    }
    part.met.current_mps = current_mps(stretch, part.from_s);
    to.push_back(part);
}

std::vector<WindSpell> Winds::spells(std::size_t stretch, int day) const {
    const RouteLeg& leg = route_.legs[stretches_.stretches[stretch].leg.index()];
    std::vector<WindSpell> spells;
    for (const WeatherSpell& spell : assumed_.forecast.spells({leg, day})) {
        WindMet now = met(spell.weather, stretch);
        const bool same = !spells.empty() && spells.back().met.blowing == now.blowing &&
                          spells.back().met.gusts_mps == now.gusts_mps &&
                          spells.back().met.known == now.known;
        if (same)
            spells.back().to_s = spell.to_s;
        else
            spells.push_back({spell.from_s, spell.to_s, now});
    }
    if (!releases_)
        return spells;
    std::vector<WindSpell> parts;
    for (const WindSpell& spell : spells)
        add_parts(spell, stretch, parts);
    return parts;
}

const WindAlong& Winds::along(std::size_t stretch, HullKind kind, const Blowing& blowing) const {
    for (const std::unique_ptr<Known>& one : known_[stretch])
        if (one->kind == kind && one->blowing == blowing)
            return one->along;
    known_[stretch].push_back(std::make_unique<Known>(
        Known{kind, blowing, wind_along(stretches_.stretches[stretch], kind, blowing)}));
    return known_[stretch].back()->along;
}

} // namespace tumpline::planner
