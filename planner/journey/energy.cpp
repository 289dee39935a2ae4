#include "planner/journey/energy.h"

#include "planner/journey/pace.h"
#include "planner/models/compendium.h"
#include "planner/models/load_effect.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr double day_s = 86400.0;
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
                 const AssumedMember& member,
                 const Burden& burden) {
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
    return sum_j +
           met_energy_j(
               {.met = met_standing, .body_kg = member.body_kg, .duration_s = burden.waiting_s});
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
    const PaddlingEffort effort =
        paddling_effort({.calm_speed_mps = calm_mps,
                         .current_mps = stretch.current_mps,
                         .river_class = route.legs[stretch.leg].spec.river_class.value_or(0)});
    return met_energy_j({.met = paddling_met(effort),
                         .body_kg = assumed.members[m].body_kg,
                         .duration_s = moving_s});
}

} // namespace

Expenditure spend(const Route& route,
                  const Stretches& stretches,
                  const Assumed& assumed,
                  const Timeline& timeline,
                  const Burdens& burdens) {
    const std::size_t members = assumed.members.size();
    Expenditure spent;
    for (std::size_t i = 0; i < stretches.stretches.size(); ++i) {
        const Stretch& stretch = stretches.stretches[i];
        std::vector<double> each_j;
        for (std::size_t m = 0; m < members; ++m) {
            const AssumedMember member = member_on(assumed, i, m);
            const Burden& burden = burdens[i][m];
            const double moving_s = timeline.stretches[i].moving_s;
            switch (stretch.travel) {
            case Travel::walk: {
                const ChangingLoad carried{burden.start_kg, burden.end_kg};
                const double own_s = walk_s(stretch, member, assumed.models, carried);
                each_j.push_back(walk_changing_j(stretch, member, assumed.models, carried) +
                                 met_energy_j({.met = met_standing,
                                               .body_kg = member.body_kg,
                                               .duration_s = std::max(0.0, moving_s - own_s)}));
                break;
            }
            case Travel::portage:
                each_j.push_back(portage_j(stretch, assumed.models, member, burden));
                break;
            case Travel::paddle:
                each_j.push_back(paddle_j(route, stretch, assumed, m, moving_s));
                break;
            }
        }
        spent.stretch_j.push_back(std::move(each_j));
    }
    for (const DaySpan& day : timeline.days) {
        std::vector<double> each_j(members, 0.0);
        double moving_s = 0.0;
        double change_s = 0.0;
        double rest_s = 0.0;
        for (std::size_t i = day.first; i < day.last; ++i) {
            const StretchTime& time = timeline.stretches[i];
            moving_s += time.moving_s;
            change_s += time.change_s();
            rest_s += time.rest_s;
            for (std::size_t m = 0; m < members; ++m)
                each_j[m] += spent.stretch_j[i][m];
        }
        const double awake_s = std::max(0.0, day_s - sleep_s - moving_s - change_s - rest_s);
        const double in_camp_s = std::min(assumed.times.break_camp_s + evening_s, awake_s);
        for (std::size_t m = 0; m < members; ++m) {
            const double body_kg = assumed.members[m].body_kg;
            each_j[m] +=
                met_energy_j({.met = met_changeover, .body_kg = body_kg, .duration_s = change_s}) +
                met_energy_j({.met = met_standing, .body_kg = body_kg, .duration_s = rest_s}) +
                met_energy_j({.met = met_camp, .body_kg = body_kg, .duration_s = in_camp_s}) +
                met_energy_j(
                    {.met = met_standing, .body_kg = body_kg, .duration_s = awake_s - in_camp_s}) +
                met_energy_j({.met = met_sleep, .body_kg = body_kg, .duration_s = sleep_s});
        }
        spent.day_j.push_back(std::move(each_j));
    }
    return spent;
}

} // namespace tumpline::planner
