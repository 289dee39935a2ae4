#include "planner/journey/pace.h"

#include "planner/models/load_effect.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace tumpline::planner {

namespace {

constexpr double slowest_way_mps =
    0.3; // below it a leg is a portage or a stop (docs/models/paddling.md)

double over_changing_load(double unloaded_s,
                          const AssumedMember& member,
                          const AssumedModels& models,
                          const ChangingLoad& load) {
    const double start = load_factor(member, models, load.start_kg);
    const double end = load_factor(member, models, load.end_kg);
    const double middle = load_factor(member, models, 0.5 * (load.start_kg + load.end_kg));
    return unloaded_s * (1.0 / start + 4.0 / middle + 1.0 / end) / 6.0;
}

} // namespace

double load_factor(const AssumedMember& member, const AssumedModels& models, double load_kg) {
    if (!models.load_effect)
        return 1.0;
    return load_factor(LoadEffect::equal_effort,
                       std::max(0.0, load_kg) / member.body_kg,
                       walking_model_load_ratio(models.walking));
}

double walk_s(const Stretch& stretch,
              const AssumedMember& member,
              const AssumedModels& models,
              const ChangingLoad& load) {
    const double unloaded_s = stretch.there.time_s * stretch.time_factor / member.pace;
    return over_changing_load(unloaded_s, member, models, load);
}

double walk_back_s(const Stretch& stretch,
                   const AssumedMember& member,
                   const AssumedModels& models,
                   const ChangingLoad& load) {
    const double unloaded_s = stretch.back.time_s * stretch.time_factor / member.pace;
    return over_changing_load(unloaded_s, member, models, load);
}

AssumedMember member_on(const Assumed& assumed, std::size_t stretch, std::size_t member) {
    AssumedMember today = assumed.members[member];
    const Departures& departures = assumed.departures;
    if (!departures.day_of.empty())
        today.pace *= departures.days[departures.day_of[stretch]].pace[member];
    return today;
}

double led_s(const Stretch& stretch, const Assumed& assumed, std::size_t index) {
    double slowest = 1.0;
    const Departures& departures = assumed.departures;
    if (!departures.day_of.empty()) {
        const std::vector<double>& pace = departures.days[departures.day_of[index]].pace;
        if (!pace.empty())
            slowest = *std::min_element(pace.begin(), pace.end());
    }
    return stretch.length_m() / (stretch.led_mps * slowest);
}

AssumedMember
at_party_pace(AssumedMember member, const AssumedModels& models, const PartyWalk& walk) {
    const double own_s = walk_s(walk.stretch, member, models, walk.load);
    if (own_s > 0.0 && walk.moving_s > 0.0)
        member.pace *= own_s / walk.moving_s;
    return member;
}

Conditions conditions_on(const Assumed& assumed, std::size_t stretch) {
    const Departures& departures = assumed.departures;
    if (departures.day_of.empty())
        return {};
    const DayDeparture& day = departures.days[departures.day_of[stretch]];
    return {.wind = day.wind,
            .calm_speed = day.calm_speed,
            .current = departures.current_of.empty() ? departures.current
                                                     : departures.current_of[stretch]};
}

WindAlong wind_along(const Stretch& stretch,
                     HullKind kind,
                     const Assumed& assumed,
                     const Conditions& conditions) {
    return wind_along(
        stretch, kind, {conditions.wind * assumed.weather.wind_mps, assumed.weather.wind_from_deg});
}

WindAlong wind_along(const Stretch& stretch, HullKind kind, const Blowing& blowing) {
    const double wind_mps = blowing.wind_mps * (1.0 - stretch.shelter);
    WindAlong winds;
    winds.reserve(stretch.courses.size());
    for (const Course& course : stretch.courses) {
        const Wind wind{.speed_mps = wind_mps, .from_deg = course.wind_from_deg(blowing.from_deg)};
        winds.push_back(wind_on_course(kind, course.bearing_deg, wind));
    }
    return winds;
}

Paddle paddle(const Stretch& stretch,
              const AssumedCraft& craft,
              const Assumed& assumed,
              double all_up_kg,
              const Conditions& conditions) {
    return paddle(stretch,
                  {craft, all_up_kg},
                  assumed.models.paddling,
                  wind_along(stretch, craft.kind, assumed, conditions),
                  conditions);
}

Paddle paddle(const Stretch& stretch,
              const LoadedCraft& loaded,
              PaddlingModel model,
              const WindAlong& winds,
              const Conditions& conditions) {
    Paddle result{};
    const AssumedCraft& craft = loaded.craft;
    const double calm_mps = conditions.calm_speed * craft.calm_speed_mps *
                            load_speed_factor(loaded.all_up_kg, craft.reference_kg);
    const double current_mps = conditions.current * stretch.current_mps;
    double through_s = 0.0;
    for (std::size_t c = 0; c < stretch.courses.size(); ++c) {
        const Course& course = stretch.courses[c];
        const double speed_mps =
            model == PaddlingModel::power_balance ? made_good_under(winds[c], calm_mps) : calm_mps;
        const std::optional<double> over_ground_mps = made_good_mps(speed_mps, current_mps);
        if (!over_ground_mps) {
            result.stopped = true;
            result.by_current = result.by_current || !made_good_mps(calm_mps, current_mps);
        }
        result.moving_s += course.length_m / over_ground_mps.value_or(slowest_way_mps);
        result.head_wind_mps += winds[c].head_mps * course.length_m;
        through_s += speed_mps * course.length_m;
    }
    const double length_m = stretch.length_m();
    if (length_m > 0.0) {
        result.head_wind_mps /= length_m;
        result.through_water_mps = through_s / length_m;
    }
    return result;
}

} // namespace tumpline::planner
