#include "planner/cautions/day_rule_cautions.h"

#include "planner/models/load_carriage.h"
#include "planner/models/walking_rules.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace tumpline::planner {

namespace {

constexpr double tranter_load_kg = 20.0;
constexpr double shortest_walk_s = 3600.0; // shorter days on foot need no rule
/// The constant runs 10 to 30 % above the sums, in the middle a fifth; how far from that they may
/// lie apart before an input is likely to be wrong (docs/models/load_carriage.md).
constexpr double usual_ratio = 1.2;
constexpr double energy_apart = 0.35;

/// One day on foot, the passes over its portages counted.
struct DayOnFoot {
    WalkTotals walk{};
    double moving_s = 0.0;
    double rough_m = 0.0;
    bool night = false;
};

/// A member's walks of one day on made paths, for the course constant.
struct OnPaths {
    DayWalk walk{};
    double energy_j = 0.0;
    bool all_paths = true;
};

class DayRules {
  public:
    DayRules(const Assembly& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    std::vector<Caution> run();

  private:
    [[nodiscard]] const TripLeg& spec(const PlanLeg& leg) const {
        return draft_.prepared.route.legs[leg.leg.index()].spec;
    }

    [[nodiscard]] DayOnFoot on_foot(int day) const;
    [[nodiscard]] OnPaths on_paths(int day, std::size_t member) const;
    void tranter(const PlanDay& day);
    void course_constant(const PlanDay& day);

    const Assembly& draft_;
    const Plan& plan_;
    std::vector<Caution> reported_;
};

bool made_path(const TripLeg& leg) {
    const Terrain terrain = leg.terrain.value_or(Terrain::path);
    return terrain == Terrain::path || terrain == Terrain::rough_path;
}

DayOnFoot DayRules::on_foot(int day) const {
    DayOnFoot sum;
    double dark_s = 0.0;
    for (const PlanLeg& leg : plan_.legs) {
        if (leg.day != day || !planner::on_foot(leg.travel))
            continue;
        const double there = 0.5 * (leg.lengths + 1.0);
        const double back = leg.lengths - there;
        sum.walk.length_m += leg.on_foot_m;
        sum.walk.ascent_m += there * leg.ascent_m + back * leg.descent_m;
        sum.walk.descent_m += there * leg.descent_m + back * leg.ascent_m;
        sum.moving_s += leg.moving_s;
        sum.rough_m += made_path(spec(leg)) ? 0.0 : leg.on_foot_m;
        dark_s += spec(leg).night.value_or(false) ? leg.moving_s : leg.dark_s;
    }
    sum.night = dark_s > 0.5 * sum.moving_s;
    return sum;
}

void DayRules::tranter(const PlanDay& day) {
    const DayOnFoot foot = on_foot(day.day);
    if (foot.moving_s < shortest_walk_s)
        return;
    const double naismith_s = naismith_metric_s(foot.walk);
    std::optional<double> slowest_s;
    std::string who;
    for (std::size_t m = 0; m < plan_.trip.party.size(); ++m) {
        const Member& member = plan_.trip.party[m];
        if (!member.fitness)
            continue;
        const bool laden = day.members[m].heaviest_kg >= tranter_load_kg;
        const bool rough = foot.rough_m > 0.5 * foot.walk.length_m;
        const auto fitness_s = static_cast<double>(member.fitness->count());
        const std::string as = fmt::format("{} ({} for 300 m of climb{}{}{})",
                                           member.name,
                                           show_duration(fitness_s),
                                           laden ? ", 20 kg and more" : "",
                                           foot.night ? ", in the dark" : "",
                                           rough ? ", off the path" : "");
        const std::optional<double> time_s = tranter_s(naismith_s,
                                                       fitness_s,
                                                       {.load_20_kg = laden,
                                                        .night_or_headwind = foot.night,
                                                        .bad_footing_levels = rough ? 1 : 0});
        if (!time_s) {
            reported_.push_back(
                {Level::caution,
                 "tranter-blank",
                 day.day,
                 std::nullopt,
                 fmt::format("Tranter's table leaves this day, {} by Naismith, blank "
                             "for {}: not to be attempted.",
                             show_duration(naismith_s),
                             as),
                 "Tranter1970"});
        } else if (!slowest_s || *time_s > *slowest_s) {
            slowest_s = time_s;
            who = as;
        }
    }
    if (slowest_s)
        reported_.push_back(
            {Level::note,
             "tranter-day",
             day.day,
             std::nullopt,
             fmt::format("By Tranter's corrections {} needs {} on foot for this day, "
                         "which is {} by Naismith; planned are {}.",
                         who,
                         show_duration(*slowest_s),
                         show_duration(naismith_s),
                         show_duration(foot.moving_s)),
             "Tranter1970"});
}

OnPaths DayRules::on_paths(int day, std::size_t member) const {
    OnPaths sum;
    double kg_s = 0.0;
    double moving_s = 0.0;
    for (const PlanLeg& leg : plan_.legs) {
        if (leg.day != day || leg.travel != Travel::walk)
            continue;
        sum.all_paths = sum.all_paths && made_path(spec(leg)) && !spec(leg).night.value_or(false) &&
                        leg.dark_s == 0.0;
        const MemberLoad& load = leg.loads[member];
        sum.walk.time_s += leg.moving_s + leg.rest_s;
        sum.walk.length_m += leg.to_m - leg.from_m;
        sum.walk.ascent_m += leg.ascent_m;
        sum.walk.descent_m += leg.descent_m;
        kg_s += leg.moving_s * (0.5 * (load.pack_start_kg + load.pack_end_kg) + load.worn_kg);
        moving_s += leg.moving_s;
        sum.energy_j += load.energy_j;
    }
    sum.walk.body_kg = draft_.prepared.assumed.members[member].body_kg;
    sum.walk.pack_kg = moving_s > 0.0 ? kg_s / moving_s : 0.0;
    return sum;
}

void DayRules::course_constant(const PlanDay& day) {
    const AssumedModels& models = draft_.prepared.assumed.models;
    if (models.energy == CarriageModel::compendium_met)
        return; // knows neither slope nor speed: the two have nothing in common
    double furthest = 0.0;
    std::string text;
    for (std::size_t m = 0; m < plan_.trip.party.size(); ++m) {
        const OnPaths paths = on_paths(day.day, m);
        if (!paths.all_paths || paths.walk.time_s < shortest_walk_s || paths.energy_j <= 0.0)
            continue;
        const double rule_j = yamamoto_course_j(paths.walk);
        const double apart = std::abs(rule_j / paths.energy_j / usual_ratio - 1.0);
        if (apart <= std::max(energy_apart, furthest))
            continue;
        furthest = apart;
        text = fmt::format("By the course constant the walks of this day cost {} {:.0f} kcal, by "
                           "{} {:.0f} kcal: usual is a fifth more by the constant. Check bodies, "
                           "loads and times.",
                           plan_.trip.party[m].name,
                           rule_j / j_per_kcal,
                           carriage_model_name(models.energy),
                           paths.energy_j / j_per_kcal);
    }
    if (!text.empty())
        reported_.push_back({Level::note,
                             "energy-by-other-rule",
                             day.day,
                             std::nullopt,
                             std::move(text),
                             "Yamamoto2006"});
}

std::vector<Caution> DayRules::run() {
    for (const PlanDay& day : plan_.days) {
        if (day.rest_day)
            continue;
        tranter(day);
        course_constant(day);
    }
    return std::move(reported_);
}

} // namespace

std::vector<Caution> day_rule_cautions(const Assembly& draft, const Plan& plan) {
    return DayRules(draft, plan).run();
}

} // namespace tumpline::planner
