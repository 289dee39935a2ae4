#include "planner/journey/energy.h"

#include "planner/defaults/led_boats.h"
#include "planner/journey/pace.h"
#include "planner/models/compendium.h"
#include "planner/models/load_effect.h"
#include "planner/quantities/quantities.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr double sleep_s = 8.0 * 3600.0;
constexpr double evening_s = 1.5 * 3600.0; // camp work after arriving; common practice, no source

/// One way over the ground of a stretch.
struct OneWay {
    const LcdaSums& sums;
    bool back;
};

/// Energy of walking a stretch once under a steady load.
double walk_j(const Stretch& stretch,
              const OneWay& way,
              const AssumedMember& member,
              const AssumedModels& models,
              double load_kg) {
    const double scale = load_factor(member, models, load_kg) * member.pace / stretch.time_factor;
    // Nobody moves more than twice their own mass; beyond, cost and speed stay where they are, so
    // that food for what cannot be carried does not ask for ever more food.
    const double borne_kg = std::clamp(load_kg, 0.0, heaviest_load_ratio * member.body_kg);
    Carrying who{.body_kg = member.body_kg,
                 .load_kg = borne_kg,
                 .speed_mps = 0.0,
                 .slope = 0.0,
                 .terrain = stretch.eta,
                 .resting_w = member.resting_w};
    if (models.energy == CarriageModel::lcda_backpacking_2022)
        return lcda_energy_j(way.sums, scale, who);
    double sum_j = 0.0;
    for (const SlopeStep& step : stretch.steps) {
        who.slope = way.back ? -step.slope : step.slope;
        who.speed_mps = scale * walking_speed_mps(models.walking, who.slope, stretch.footing);
        sum_j += carriage_w(models.energy, who) * step.length_m / who.speed_mps;
    }
    return sum_j;
}

/// The same under a load that changes evenly, by Simpson's rule.
double walk_changing_j(const Stretch& stretch,
                       const AssumedMember& member,
                       const AssumedModels& models,
                       const ChangingLoad& load) {
    const OneWay there{stretch.there, false};
    const double middle_kg = 0.5 * (load.start_kg + load.end_kg);
    return (walk_j(stretch, there, member, models, load.start_kg) +
            4.0 * walk_j(stretch, there, member, models, middle_kg) +
            walk_j(stretch, there, member, models, load.end_kg)) /
           6.0;
}

double portage_j(const Stretch& stretch,
                 const AssumedModels& models,
                 AssumedMember member,
                 const StretchTime& time,
                 const Burden& burden) {
    const double slower = time.by_day_s > 0.0 ? time.moving_s / time.by_day_s : 1.0;
    member.pace /= slower; // in the dark
    double sum_j = 0.0;
    double loaded = 0.0;
    for (const LadenPass& pass : burden.portaged) {
        sum_j += pass.share * walk_j(stretch, {stretch.there, false}, member, models, pass.mass_kg);
        loaded += pass.share;
    }
    if (loaded == 0.0)
        sum_j += walk_j(stretch, {stretch.there, false}, member, models, burden.worn_kg);
    const double empty = std::max(0.0, loaded - 1.0);
    if (empty > 0.0)
        sum_j += empty * walk_j(stretch, {stretch.back, true}, member, models, burden.worn_kg);
    return sum_j + met_energy_j({.met = met_standing,
                                 .body_kg = member.met_body_kg,
                                 .duration_s = slower * burden.waiting_s});
}

double paddle_j(const Route& route,
                const Stretch& stretch,
                const Assumed& assumed,
                std::size_t m,
                double moving_s) {
    double calm_mps = 0.0;
    for (const AssumedCraft& craft : assumed.craft)
        if (std::find(craft.crew.begin(), craft.crew.end(), m) != craft.crew.end())
            calm_mps = craft.calm_speed_mps;
    const PaddlingEffort effort = paddling_effort(
        {.calm_speed_mps = calm_mps,
         .current_mps = stretch.current_mps,
         .river_class = route.legs[stretch.leg.index()].spec.river_class.value_or(0)});
    return met_energy_j({.met = paddling_met(effort),
                         .body_kg = assumed.members[m].met_body_kg,
                         .duration_s = moving_s});
}

/// A stretch, its times and what each member bears on it.
struct StretchOnClock {
    std::size_t index;
    const StretchTime& time;
    const std::vector<Burden>& burdens;
};

/// Moving on one stretch, per member.
std::vector<double> stretch_energy_j(const Route& route,
                                     const Stretches& stretches,
                                     const Assumed& assumed,
                                     const StretchOnClock& here) {
    const Stretch& stretch = stretches.stretches[here.index];
    std::vector<double> each_j;
    for (std::size_t m = 0; m < assumed.members.size(); ++m) {
        const AssumedMember member = member_on(assumed, here.index, m);
        const Burden& burden = here.burdens[m];
        switch (stretch.travel) {
        case Travel::walk: {
            const ChangingLoad carried{burden.start_kg, burden.end_kg};
            const AssumedMember together =
                at_party_pace(member, assumed.models, {stretch, carried, here.time.moving_s});
            each_j.push_back(walk_changing_j(stretch, together, assumed.models, carried));
            break;
        }
        case Travel::portage:
            each_j.push_back(portage_j(stretch, assumed.models, member, here.time, burden));
            break;
        case Travel::paddle:
            each_j.push_back(paddle_j(route, stretch, assumed, m, here.time.moving_s));
            break;
        case Travel::line:
        case Travel::wade:
        case Travel::pole:
            each_j.push_back(met_energy_j({.met = led_met(stretch.travel),
                                           .body_kg = member.met_body_kg,
                                           .duration_s = here.time.moving_s}));
            break;
        case Travel::ride:
            each_j.push_back(met_energy_j({.met = met_sitting,
                                           .body_kg = member.met_body_kg,
                                           .duration_s = here.time.moving_s}));
            break;
        }
    }
    return each_j;
}

/// Hours of a day that nobody moves in, and what is done in them.
struct StillHours {
    double change_s = 0.0;
    double rest_s = 0.0;
    double camp_s = 0.0; ///< camp work
    double stand_s = 0.0;
};

/// On the first day there is no camp to break, on the last none to pitch.
StillHours still_hours(const Timeline& timeline, const Assumed& assumed, std::size_t d) {
    StillHours still;
    double moving_s = 0.0;
    for (std::size_t i = timeline.days[d].first; i < timeline.days[d].last; ++i) {
        const StretchTime& time = timeline.stretches[i];
        moving_s += time.moving_s;
        still.change_s += time.change_s();
        still.rest_s += time.rest_s + time.halt_s;
    }
    const double awake_s =
        std::max(0.0, s_per_day - sleep_s - moving_s - still.change_s - still.rest_s);
    const double morning_s = d == 0 ? 0.0 : assumed.times.break_camp_s;
    const double after_s = d + 1 == timeline.days.size() ? 0.0 : evening_s;
    still.camp_s = std::min(morning_s + after_s, awake_s);
    still.stand_s = awake_s - still.camp_s;
    return still;
}

double still_j(const StillHours& hours, double body_kg) {
    const auto spell_j = [&](double met, double duration_s) {
        return met_energy_j({.met = met, .body_kg = body_kg, .duration_s = duration_s});
    };
    return spell_j(met_changeover, hours.change_s) + spell_j(met_standing, hours.rest_s) +
           spell_j(met_camp, hours.camp_s) + spell_j(met_standing, hours.stand_s) +
           spell_j(met_sleep, sleep_s);
}

} // namespace

Expenditure spend(const Route& route,
                  const Stretches& stretches,
                  const Assumed& assumed,
                  const Timeline& timeline,
                  const Burdens& burdens) {
    Expenditure spent;
    for (std::size_t i = 0; i < stretches.stretches.size(); ++i)
        spent.stretch_j.push_back(
            stretch_energy_j(route, stretches, assumed, {i, timeline.stretches[i], burdens[i]}));
    for (std::size_t d = 0; d < timeline.days.size(); ++d) {
        const DaySpan& day = timeline.days[d];
        const StillHours still = still_hours(timeline, assumed, d);
        std::vector<double> each_j;
        for (std::size_t m = 0; m < assumed.members.size(); ++m) {
            double sum_j = still_j(still, assumed.members[m].met_body_kg);
            for (std::size_t i = day.first; i < day.last; ++i)
                sum_j += spent.stretch_j[i][m];
            const LeastDay& least = assumed.members[m].least_day;
            each_j.push_back(
                std::max(sum_j, day.first < day.last ? least.of_travel_j : least.of_rest_j));
        }
        spent.day_j.push_back(std::move(each_j));
    }
    return spent;
}

} // namespace tumpline::planner
