#include "planner/cautions/model_range_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/cautions/range_tally.h"
#include "planner/journey/pace.h"
#include "planner/models/catalogue.h"
#include "planner/models/drinking.h"
#include "planner/models/food.h"
#include "planner/models/load_effect.h"
#include "planner/models/paddling.h"
#include "planner/models/river.h"
#include "planner/models/terrain.h"
#include "planner/quantities/milligrams.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

namespace tumpline::planner {

namespace {

UnitText as_slope(double slope) {
    return fmt::format("{:+.1f} %", 100.0 * slope);
}

UnitText as_speed(double mps) {
    return {fmt::format("{:.3g} m/s", mps), fmt::format("{:.3g} mph", mps * s_per_h / m_per_mile)};
}

UnitText as_mass(double kg) {
    return {fmt::format("{:.1f} kg", kg), fmt::format("{:.0f} lb", kg / kg_per_pound)};
}

UnitText as_ratio(double ratio) {
    return fmt::format("{:.2f} of body mass", ratio);
}

UnitText as_factor(double factor) {
    return fmt::format("{:.1f}", factor);
}

UnitText as_degrees(double degrees_c) {
    return in_both(show_temperature, degrees_c);
}

UnitText as_depth(double depth_m) {
    return {fmt::format("{:.2f} m", depth_m), fmt::format("{:.1f} ft", depth_m / m_per_foot)};
}

UnitText as_density(double j_per_kg) {
    return {fmt::format("{:.1f} kcal/g", j_per_kg / j_per_kcal / 1000.0),
            fmt::format("{:.0f} kcal/oz", j_per_kg / j_per_kcal * kg_per_ounce)};
}

UnitText as_ration(double kg) {
    return {fmt::format("{:.2f} kg a day", kg), fmt::format("{:.2f} lb a day", kg / kg_per_pound)};
}

/// A load on somebody's back and body over a stretch, there or on the way back for the next one.
struct Borne {
    std::size_t stretch;
    std::size_t member;
    double load_kg;
    bool back;
};

class Ranges {
  public:
    Ranges(const Assembly& draft, const Plan& plan)
        : draft_(draft), plan_(plan), assumed_(draft.prepared.assumed),
          stretches_(draft.settled.stretches_met(draft.prepared).stretches) {}

    std::vector<Caution> run();

  private:
    void add(const RangeTally& outside, std::string_view family, std::string_view model);
    void leg_on_foot(const std::vector<std::size_t>& pieces);
    void walking(const std::vector<std::size_t>& pieces, const std::vector<Borne>& loads);
    void carriage(const std::vector<Borne>& loads);
    void leg_afloat(const std::vector<std::size_t>& pieces);
    void river(const std::vector<std::size_t>& pieces);
    void people_and_boats();
    void provisions();
    void drinking();
    [[nodiscard]] std::vector<Borne> loads_on(const std::vector<std::size_t>& pieces) const;

    [[nodiscard]] std::string chosen(std::string_view family) const {
        for (const ModelUsed& used : assumed_.models_used)
            if (used.family == family)
                return used.name;
        return {};
    }

    const Assembly& draft_;
    const Plan& plan_;
    const Assumed& assumed_;
    const std::vector<Stretch>& stretches_;
    CautionList list_;
};

void Ranges::add(const RangeTally& outside, std::string_view family, std::string_view model) {
    if (outside.empty())
        return;
    std::string_view source = common_practice;
    for (const ModelEntry& entry : model_catalogue())
        if (entry.family == family && entry.name == model)
            source = entry.source;
    list_.add(Level::note, "outside-model-range", outside.text(model), source);
}

/// Everything borne on foot over these stretches of one leg.
std::vector<Borne> Ranges::loads_on(const std::vector<std::size_t>& pieces) const {
    std::vector<Borne> all;
    for (const std::size_t i : pieces) {
        const StretchLoads& load = draft_.settled.loads.stretches[i];
        for (std::size_t m = 0; m < assumed_.members.size(); ++m) {
            const double worn_kg = load.worn_kg[m];
            if (stretches_[i].travel == Travel::walk) {
                all.push_back({i, m, load.max_kg[m] + worn_kg, false});
                all.push_back({i, m, load.end_kg[m] + worn_kg, false});
                continue;
            }
            std::size_t carries = 0;
            for (const PortageLoad& one : draft_.settled.loads.portages[i]->relay.loads) {
                if (one.rolls() || one.pieces.empty() || (one.bearer != m && one.relay != m))
                    continue;
                ++carries;
                all.push_back({i, m, mg_to_kg(one.mass_mg) + worn_kg, false});
            }
            if (carries == 0)
                all.push_back({i, m, worn_kg, false});
            if (carries > 1)
                all.push_back({i, m, worn_kg, true});
        }
    }
    return all;
}

void Ranges::walking(const std::vector<std::size_t>& pieces, const std::vector<Borne>& loads) {
    const WalkingModel model = assumed_.models.walking;
    RangeTally outside;
    if (const std::optional<SlopeReach> reach = walking_slope_reach(model)) {
        RangeExcess slope(reach->steepest_down, reach->steepest_up);
        for (const std::size_t i : pieces)
            for (const SlopeStep& step : stretches_[i].steps)
                slope.see(step.slope, step.length_m);
        outside.add("slope", slope, as_slope);
    }
    if (const auto reach = walking_load_reach_kg(model)) {
        RangeExcess load(reach->first, reach->second);
        for (const Borne& borne : loads)
            load.see(borne.load_kg);
        outside.add("load", load, as_mass);
    }
    add(outside, "walking", walking_model_name(model));
    if (!assumed_.models.load_effect)
        return;
    RangeExcess ratio(std::nullopt, equal_effort_most_ratio);
    for (const Borne& borne : loads)
        ratio.see(borne.load_kg / assumed_.members[borne.member].body_kg);
    RangeTally heavy;
    heavy.add("load", ratio, as_ratio);
    add(heavy, "load_effect", chosen("load_effect"));
}

void Ranges::carriage(const std::vector<Borne>& loads) {
    const CarriageModel model = assumed_.models.energy;
    const CarriageRange range = carriage_range(model);
    RangeExcess ratio(std::nullopt, range.most_load_ratio);
    RangeExcess load(std::nullopt, range.most_load_kg);
    RangeExcess terrain(std::nullopt, range.most_terrain);
    RangeExcess speed(range.least_speed_mps, range.most_speed_mps);
    RangeExcess slope(range.steepest_down, range.steepest_up);
    for (const Borne& borne : loads) {
        const Stretch& stretch = stretches_[borne.stretch];
        const AssumedMember member = member_on(assumed_, borne.stretch, borne.member);
        const double scale =
            load_factor(member, assumed_.models, borne.load_kg) * member.pace / stretch.time_factor;
        ratio.see(borne.load_kg / member.body_kg);
        load.see(borne.load_kg);
        terrain.see(stretch.eta);
        for (const SlopeStep& step : stretch.steps) {
            const double here = borne.back ? -step.slope : step.slope;
            slope.see(here);
            speed.see(scale * walking_speed_mps(assumed_.models.walking, here, stretch.footing));
        }
    }
    RangeTally outside;
    outside.add("load", ratio, as_ratio);
    outside.add("load", load, as_mass);
    outside.add("speed", speed, as_speed);
    outside.add("slope", slope, as_slope);
    outside.add("ground", terrain, as_factor);
    add(outside, "energy", carriage_model_name(model));
}

void Ranges::leg_on_foot(const std::vector<std::size_t>& pieces) {
    const std::vector<Borne> loads = loads_on(pieces);
    walking(pieces, loads);
    carriage(loads);
    const TripLeg& spec = draft_.prepared.route.legs[stretches_[pieces.front()].leg.index()].spec;
    if (spec.terrain == Terrain::snow && spec.footprint_m) {
        RangeExcess depth(std::nullopt, deepest_footprint_m);
        depth.see(*spec.footprint_m);
        RangeTally outside;
        outside.add("footprints", depth, as_depth);
        add(outside, "terrain", "ground-factors");
    }
}

void Ranges::river(const std::vector<std::size_t>& pieces) {
    const Stretch& head = stretches_[pieces.front()];
    const RouteLeg& leg = draft_.prepared.route.legs[head.leg.index()];
    if (head.estimate) {
        const Bed& bed = head.estimate->bed;
        RangeTally outside;
        if (!estimated_current_covers(bed)) {
            RangeExcess slope(std::nullopt, jarrett_most_slope);
            slope.see(bed.slope);
            RangeExcess depth(jarrett_least_radius_m, jarrett_most_radius_m);
            depth.see(bed.depth_m);
            outside.add("slope", slope, as_slope);
            outside.add("depth", depth, as_depth);
        }
        add(outside, "river", "jarrett-1985");
    }
    if (leg.profile.heights_m.empty())
        return;
    const double length_m = leg.to_m - leg.from_m;
    const double slope =
        std::abs(leg.profile.heights_m.front() - leg.profile.heights_m.back()) / length_m;
    const double reach_m = gradient_reach_m(slope);
    if (slope > 0.0 && length_m < reach_m)
        list_.add(Level::note,
                  "gradient-short",
                  format_both("The gradient of {} is measured over {}: heights tell it over {} and "
                              "more, so that it may be noise here.",
                              in_both(show_gradient, slope),
                              in_both(show_distance, length_m),
                              in_both(show_distance, reach_m)),
                  "docs/models/river.md");
}

void Ranges::leg_afloat(const std::vector<std::size_t>& pieces) {
    const bool balance = assumed_.models.paddling == PaddlingModel::power_balance;
    RangeExcess head(-strongest_tail_mps, strongest_head_mps);
    RangeExcess wind(std::nullopt, constant_most_wind_mps);
    for (const std::size_t i : pieces) {
        const Stretch& stretch = stretches_[i];
        const Blowing& blowing = draft_.settled.afloat[i].met.blowing;
        const double here_mps = blowing.wind_mps * (1.0 - stretch.shelter);
        for (const Course& course : stretch.courses) {
            const double from_deg = course.wind_from_deg(blowing.from_deg);
            head.see(
                headwind_mps({.speed_mps = here_mps, .from_deg = from_deg}, course.bearing_deg),
                course.length_m);
            wind.see(here_mps, course.length_m);
        }
    }
    RangeTally outside;
    if (balance)
        outside.add("head wind", head, as_speed);
    else
        outside.add("wind", wind, as_speed);
    add(outside, "paddling", chosen("paddling"));
    if (draft_.prepared.route.legs[stretches_[pieces.front()].leg.index()].spec.on_water() ==
        Water::river)
        river(pieces);
}

void Ranges::people_and_boats() {
    if (plan_.totals.paddle_m <= 0.0)
        return;
    RangeTally fast;
    for (std::size_t c = 0; c < assumed_.craft.size(); ++c) {
        const AssumedCraft& craft = assumed_.craft[c];
        if (calm_speed_covers(craft.kind, craft.calm_speed_mps))
            continue;
        RangeExcess speed(std::nullopt, hull_speed_mps(hull(craft.kind).length_m));
        speed.see(craft.calm_speed_mps);
        fast.add(
            fmt::format("calm speed of {},", draft_.prepared.trip.craft[c].name), speed, as_speed);
    }
    if (!fast.empty())
        list_.add(
            Level::note,
            "outside-model-range",
            format_both("{} Beyond it such a boat climbs its own bow wave (Froude number 0.40); "
                        "nobody keeps that up for hours.",
                        fast.text(chosen("paddling"))),
            "docs/models/paddling.md");
}

void Ranges::provisions() {
    const Trip& trip = draft_.prepared.trip;
    RangeTally outside;
    if (trip.food.ration_kg) {
        if (!fixed_ration_covers(*trip.food.ration_kg)) {
            RangeExcess ration(least_ration_kg, most_ration_kg);
            ration.see(*trip.food.ration_kg);
            outside.add("ration", ration, as_ration);
        }
        add(outside, "food", "fixed-ration");
    } else if (!energy_density_covers(assumed_.food.energy_density_j_per_kg)) {
        RangeExcess density(least_energy_density_j_per_kg, most_energy_density_j_per_kg);
        density.see(assumed_.food.energy_density_j_per_kg);
        outside.add("density", density, as_density);
        add(outside, "food", "energy-density");
    }
}

void Ranges::drinking() {
    if (assumed_.water.by_model && !drinking_covers(assumed_.weather.high_c)) {
        RangeExcess air(coldest_air_c, hottest_air_c);
        air.see(assumed_.weather.high_c);
        RangeTally outside;
        outside.add("air", air, as_degrees);
        add(outside, "drinking", "effort-and-air");
    }
    const auto warn = [&](const UnitText& text) {
        list_.add(
            Level::caution,
            "drinking-over-limit",
            format_both("{} Too much plain water can kill by low blood sodium: thirst, salt and "
                        "a medical adviser say what is drunk.",
                        text),
            "TBMED507");
    };
    const double rate_l_per_h = 3600.0 * std::max({assumed_.water.walking_lps,
                                                   assumed_.water.climbing_lps,
                                                   assumed_.water.carrying_lps,
                                                   assumed_.water.paddling_lps});
    if (rate_l_per_h > most_drunk_per_hour_l)
        warn(format_both(
            "{} an hour are planned, more than the {} that are never to be passed in any "
            "hour.",
            hourly_words(rate_l_per_h),
            hourly_words(most_drunk_per_hour_l)));
    for (const PlanDay& day : plan_.days) {
        list_.at(day.day);
        const auto most = std::max_element(
            day.members.begin(), day.members.end(), [](const MemberDay& a, const MemberDay& b) {
                return a.water_l < b.water_l;
            });
        if (most != day.members.end() && most->water_l > most_drunk_per_day_l)
            warn(format_both("{} would drink {} on this day, more than the {} that are never to be "
                             "passed in a day.",
                             most->member,
                             in_both(show_volume, most->water_l),
                             in_both(show_volume, most_drunk_per_day_l)));
    }
    list_.anywhere();
}

std::vector<Caution> Ranges::run() {
    for (std::size_t first = 0; first < stretches_.size();) {
        std::vector<std::size_t> pieces{first};
        while (pieces.back() + 1 < stretches_.size() &&
               stretches_[pieces.back() + 1].leg == stretches_[first].leg)
            pieces.push_back(pieces.back() + 1);
        list_.at(draft_.settled.timeline.stretches[first].day, stretches_[first].leg);
        if (stretches_[first].on_foot())
            leg_on_foot(pieces);
        else if (stretches_[first].travel == Travel::paddle)
            leg_afloat(pieces);
        first = pieces.back() + 1;
    }
    list_.anywhere();
    people_and_boats();
    provisions();
    drinking();
    return list_.take();
}

} // namespace

std::vector<Caution> range_cautions(const Assembly& draft, const Plan& plan) {
    return Ranges(draft, plan).run();
}

} // namespace tumpline::planner
