#include "planner/solution/moving_times.h"

#include <algorithm>

namespace tumpline::planner {

MovingTimes::MovingTimes(const Route& route, const Stretches& stretches, const Assumed& assumed)
    : stretches_(stretches.stretches), assumed_(assumed), winds_(route, stretches, assumed) {}

/// Those of the day, with the current of the hour in place of the leg's.
Conditions MovingTimes::conditions_met(std::size_t i, const WindMet& met) const {
    Conditions conditions = conditions_on(assumed_, i);
    const double usual_mps = stretches_[i].current_mps;
    if (met.current_mps && usual_mps != 0.0)
        conditions.current *= *met.current_mps / usual_mps;
    return conditions;
}

/// The slowest sets the pace.
double
MovingTimes::of(std::size_t i, const Loads& loads, const WindMet& met, Afloat& afloat) const {
    const Stretch& stretch = stretches_[i];
    const StretchLoads& load = loads.stretches[i];
    double slowest_s = 0.0;
    switch (stretch.travel) {
    case Travel::walk:
        for (std::size_t m = 0; m < assumed_.members.size(); ++m)
            slowest_s = std::max(
                slowest_s,
                walk_s(stretch,
                       member_on(assumed_, i, m),
                       assumed_.models,
                       {load.start_kg[m] + load.worn_kg[m], load.end_kg[m] + load.worn_kg[m]}));
        break;
    case Travel::portage:
        slowest_s = loads.portages[i]->moving_s;
        break;
    case Travel::paddle:
        for (std::size_t c = 0; c < assumed_.craft.size(); ++c) {
            const AssumedCraft& craft = assumed_.craft[c];
            const Paddle one = paddle(stretch,
                                      {craft, load.all_up_kg[c]},
                                      assumed_.models.paddling,
                                      winds_.along(i, craft.kind, met.blowing),
                                      conditions_met(i, met));
            if (one.moving_s > slowest_s) {
                slowest_s = one.moving_s;
                afloat.slowest = c;
                afloat.paddle = one;
            }
        }
        if (assumed_.craft.empty()) // a stop says so; the time stays finite
            slowest_s = stretch.length_m() / default_calm_speed_mps(HullKind::packraft);
        break;
    case Travel::line:
    case Travel::wade:
    case Travel::pole:
        slowest_s = led_s(stretch, assumed_, i);
        break;
    case Travel::ride:
        slowest_s = stretch.lasts_s;
        break;
    }
    return slowest_s;
}

std::vector<double> MovingTimes::of_all(const Loads& loads,
                                        const Timeline& reached,
                                        std::vector<Afloat>& afloat) const {
    constexpr double noon_s = 43'200.0;
    const std::size_t count = stretches_.size();
    const bool timed = reached.stretches.size() == count;
    std::vector<double> moving_s(count);
    for (std::size_t i = 0; i < count; ++i) {
        WindMet met;
        if (stretches_[i].afloat()) {
            const StretchTime* const time = timed ? &reached.stretches[i] : nullptr;
            met =
                winds_.at(i,
                          time != nullptr ? DayTime{time->day, 0.5 * (time->start_s + time->end_s)}
                                          : DayTime{1, noon_s});
        }
        moving_s[i] = of(i, loads, met, afloat[i]);
        afloat[i].met = met;
    }
    return moving_s;
}

void MovingTimes::set_spells(const Loads& loads, Timeline& timeline) {
    if (!winds_.changes())
        return;
    in_spells_.assign(stretches_.size(), {});
    for (const DaySpan& day : timeline.days)
        for (std::size_t i = day.first; i < day.last; ++i) {
            if (!stretches_[i].afloat())
                continue;
            StretchTime& time = timeline.stretches[i];
            for (const WindSpell& spell : winds_.spells(i, day.day)) {
                InSpell& one = in_spells_[i].emplace_back(InSpell{spell, {}});
                one.afloat.met = spell.met;
                time.spells.push_back({spell.to_s, of(i, loads, spell.met, one.afloat)});
            }
        }
}

/// None where the clock met no spell: on foot, or where the weather does not change.
std::optional<Afloat> MovingTimes::met_by(const StretchTime& time,
                                          const std::vector<InSpell>& spells) {
    const double from_s = time.start_s + time.before.lasts_s;
    const double to_s = time.end_s - time.after.lasts_s;
    const InSpell* longest = nullptr;
    const InSpell* strongest = nullptr;
    double longest_s = 0.0;
    double head_mps_s = 0.0;
    double sum_s = 0.0;
    bool known = true;
    bool stopped = false;
    bool by_current = false;
    for (const InSpell& one : spells) {
        const double here_s = std::min(to_s, one.spell.to_s) - std::max(from_s, one.spell.from_s);
        if (here_s <= 0.0)
            continue;
        if (here_s > longest_s) {
            longest = &one;
            longest_s = here_s;
        }
        if (strongest == nullptr ||
            one.spell.met.strongest_mps() > strongest->spell.met.strongest_mps())
            strongest = &one;
        known = known && one.spell.met.known;
        stopped = stopped || one.afloat.paddle.stopped;
        by_current = by_current || one.afloat.paddle.by_current;
        head_mps_s += one.afloat.paddle.head_wind_mps * here_s;
        sum_s += here_s;
    }
    if (longest == nullptr)
        return std::nullopt;
    Afloat all = longest->afloat;
    all.met = strongest->spell.met;
    all.met.current_mps = longest->spell.met.current_mps;
    all.met.known = known;
    all.paddle.stopped = stopped;
    all.paddle.by_current = by_current;
    all.paddle.moving_s = time.moving_s;
    all.paddle.head_wind_mps = head_mps_s / sum_s;
    return all;
}

void MovingTimes::note_winds_met(const Timeline& timeline, std::vector<Afloat>& afloat) const {
    for (std::size_t i = 0; i < in_spells_.size(); ++i)
        if (const std::optional<Afloat> met = met_by(timeline.stretches[i], in_spells_[i]))
            afloat[i] = *met;
}

} // namespace tumpline::planner
