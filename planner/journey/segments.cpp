#include "planner/journey/segments.h"

#include "planner/defaults/led_boats.h"
#include "planner/journey/ground_met.h"
#include "planner/models/drinking.h"
#include "planner/models/terrain.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double same_point_m = 0.5;
constexpr double water_near_m = 200.0; // a camp this near to a source needs no carried water

bool is_fresh(const RouteLeg& leg) {
    return afloat(leg.travel) && leg.spec.drinkable.value_or(leg.spec.on_water() != Water::sea);
}

/// Current of a leg from Manning's equation, where nobody gave one and the bed is described.
std::optional<EstimatedCurrent> estimate_current(const RouteLeg& leg) {
    if (leg.spec.current_mps || leg.spec.on_water() != Water::river || !leg.spec.bed ||
        leg.profile.heights_m.empty() || leg.line.length_m() <= 0.0)
        return std::nullopt;
    Roughness roughness = chow_roughness(default_bed).value();
    if (leg.spec.bed->roughness)
        roughness = {"given",
                     *leg.spec.bed->roughness,
                     *leg.spec.bed->roughness,
                     *leg.spec.bed->roughness,
                     ""};
    else if (const auto row = chow_roughness(leg.spec.bed->type))
        roughness = *row;
    const double fall =
        (leg.profile.heights_m.front() - leg.profile.heights_m.back()) / leg.line.length_m();
    const Bed bed{.slope = std::abs(fall),
                  .depth_m = leg.spec.bed->depth_m.value_or(default_depth_m),
                  .roughness = roughness};
    CurrentEstimate current = estimated_current(bed);
    if (fall < 0.0) { // travelled upstream
        current.slow_mps = -current.slow_mps;
        current.likely_mps = -current.likely_mps;
        current.fast_mps = -current.fast_mps;
    }
    return EstimatedCurrent{bed, current};
}

/// Fills the sums over the ground between two distances along the leg.
void measure_ground(Stretch& stretch, const RouteLeg& leg, const Assumed& assumed) {
    const geo::Profile& profile = leg.profile;
    const double start_m = stretch.from_m - leg.from_m;
    const double end_m = stretch.to_m - leg.from_m;
    const WalkingModel model = assumed.models.walking;
    double steep_s = 0.0;
    const auto add = [&](double length_m, double slope) {
        const double speed_mps = walking_speed_mps(model, slope, stretch.footing);
        stretch.there.add(length_m, slope, speed_mps);
        steep_s += slope >= steep_ascent_slope ? length_m / speed_mps : 0.0;
        stretch.back.add(length_m, -slope, walking_speed_mps(model, -slope, stretch.footing));
        stretch.steps.push_back({length_m, slope});
    };
    if (leg.spec.ascent_m && leg.spec.descent_m && !leg.drawn()) {
        const double share = (end_m - start_m) / leg.length_m();
        stretch.ascent_m = share * *leg.spec.ascent_m;
        stretch.descent_m = share * *leg.spec.descent_m;
        const double height_m = stretch.ascent_m + stretch.descent_m;
        // As steep up as down, all the way: where the steep parts are nobody has said.
        const double slope = height_m / (end_m - start_m);
        const double up_share = height_m > 0.0 ? stretch.ascent_m / height_m : 0.0;
        if (up_share > 0.0)
            add(up_share * (end_m - start_m), slope);
        if (up_share < 1.0)
            add((1.0 - up_share) * (end_m - start_m), -slope);
        if (steep_s > 0.0)
            stretch.steep_share = steep_s / stretch.there.time_s;
        return;
    }
    if (profile.heights_m.size() < 2 || profile.step_m <= 0.0) {
        add(end_m - start_m, 0.0);
        return;
    }
    const auto last = profile.heights_m.size() - 2;
    auto step = std::min(last, static_cast<std::size_t>(start_m / profile.step_m));
    for (double at_m = start_m; at_m < end_m && step <= last; ++step) {
        const double step_end_m =
            step == last ? end_m : std::min(end_m, profile.step_m * static_cast<double>(step + 1));
        const double length_m = step_end_m - at_m;
        if (length_m <= 0.0)
            continue;
        const double rise_m = profile.heights_m[step + 1] - profile.heights_m[step];
        const double slope = rise_m / profile.step_m;
        stretch.ascent_m += std::max(0.0, slope) * length_m;
        stretch.descent_m += std::max(0.0, -slope) * length_m;
        if (stretch.on_foot())
            add(length_m, slope);
        at_m = step_end_m;
    }
    if (steep_s > 0.0)
        stretch.steep_share = steep_s / stretch.there.time_s;
}

/// The directions of a paddle, like neighbours joined.
void measure_courses(Stretch& stretch, const RouteLeg& leg) {
    constexpr double same_course_deg = 3.0;
    if (!leg.drawn()) {
        stretch.courses.push_back(
            {.bearing_deg = 0.0, .length_m = stretch.length_m(), .known = false});
        return;
    }
    const geo::Polyline part = leg.line.cut(stretch.from_m - leg.from_m, stretch.to_m - leg.from_m);
    const std::vector<double>& along = part.along_m();
    for (std::size_t i = 0; i + 1 < along.size(); ++i) {
        const double length_m = along[i + 1] - along[i];
        if (length_m <= 0.0)
            continue;
        const double bearing_deg = part.bearing_deg(0.5 * (along[i] + along[i + 1]));
        if (!stretch.courses.empty() &&
            std::abs(std::remainder(bearing_deg - stretch.courses.back().bearing_deg, 360.0)) <
                same_course_deg)
            stretch.courses.back().length_m += length_m;
        else
            stretch.courses.push_back({.bearing_deg = bearing_deg, .length_m = length_m});
    }
}

Stretch bare_stretch(const Route& route, std::size_t leg, std::pair<double, double> ends_m) {
    Stretch stretch{};
    stretch.leg = LegNumber::of_index(leg);
    stretch.travel = route.legs[leg].travel;
    stretch.from_m = ends_m.first;
    stretch.to_m = ends_m.second;
    stretch.footing = Footing::on_path;
    stretch.time_factor = 1.0;
    stretch.eta = 1.0;
    stretch.dark_factor = 1.0;
    return stretch;
}

void describe(Stretch& stretch, const RouteLeg& leg, const Assumed& assumed) {
    if (stretch.on_foot())
        lay_snow(stretch, {leg, 1}, assumed);
    if (is_ride(stretch.travel)) {
        stretch.lasts_s = leg.spec.lasts_s.value_or(0.0);
        return;
    }
    measure_ground(stretch, leg, assumed);
    if (stretch.afloat()) {
        measure_courses(stretch, leg);
        stretch.estimate = estimate_current(leg);
        stretch.current_mps = stretch.estimate ? stretch.estimate->current.likely_mps
                                               : leg.spec.current_mps.value_or(0.0);
        const bool river = leg.spec.on_water() == Water::river;
        stretch.shelter = leg.spec.shelter.value_or(river ? river_shelter : 0.0);
        stretch.drinkable = is_fresh(leg);
        if (led(stretch.travel))
            stretch.led_mps = leg.spec.led_mps.value_or(usual_led_mps(stretch.travel));
        if (beside_boat(stretch.travel)) // in the dark as across country
            stretch.dark_factor = night_time_factor(ground("off-path"));
    }
}

/// Where a leg is cut: its ends, places within it, and even pieces no longer than asked.
std::vector<double> cuts_of(const Route& route, const RouteLeg& leg, double longest_m) {
    std::vector<double> cuts{leg.from_m, leg.to_m};
    // A portage is one piece: people walk it several times. So is a ride: nobody gets off.
    if (leg.travel != Travel::portage && !is_ride(leg.travel)) {
        for (const std::vector<RoutePlace>* places : {&route.places, &route.met_at})
            for (const RoutePlace& place : *places)
                if (place.along_m > leg.from_m + same_point_m &&
                    place.along_m < leg.to_m - same_point_m)
                    cuts.push_back(place.along_m);
        std::sort(cuts.begin(), cuts.end());
        const bool bank = leg.travel == Travel::walk || leg.spec.on_water() == Water::river;
        if (longest_m > 0.0 && bank) {
            std::vector<double> more;
            for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
                const double length_m = cuts[i + 1] - cuts[i];
                const int pieces = static_cast<int>(std::ceil(length_m / longest_m));
                for (int k = 1; k < pieces; ++k)
                    more.push_back(cuts[i] + length_m * k / pieces);
            }
            cuts.insert(cuts.end(), more.begin(), more.end());
        }
    }
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(std::unique(cuts.begin(),
                           cuts.end(),
                           [](double a, double b) { return b - a < same_point_m; }),
               cuts.end());
    cuts.back() = leg.to_m;
    if (cuts.size() < 2)
        cuts = {leg.from_m, leg.to_m};
    return cuts;
}

/// How many of a leg's landings to look at the river fall into a stretch of it.
void spread_scouts(Stretches& result, const Route& route) {
    for (Stretch& stretch : result.stretches) {
        const RouteLeg& leg = route.legs[stretch.leg.index()];
        if (!stretch.afloat())
            continue;
        // From class II on one lands to look: once, and once more per class; common practice.
        const int river_class = leg.spec.river_class.value_or(0);
        const int scouts = leg.spec.scouts.value_or(std::max(0, river_class - 1));
        const double length_m = leg.to_m - leg.from_m;
        for (int k = 0; k < scouts; ++k) {
            const double at_m = leg.from_m + length_m * (k + 0.5) / scouts;
            if (at_m >= stretch.from_m && at_m < stretch.to_m)
                ++stretch.scouts;
        }
    }
}

/// A source a short way along serves a camp too, unless the trip file calls that dry.
void reach_sources(std::vector<Boundary>& boundaries,
                   const Route& route,
                   const std::vector<bool>& dry) {
    for (std::size_t b = 0; b < boundaries.size(); ++b) {
        const bool source = std::any_of(
            boundaries[b].places.begin(), boundaries[b].places.end(), [&](std::size_t index) {
                return route.places[index].kind == PlaceKind::water;
            });
        if (!source || dry[b])
            continue;
        for (std::size_t other = 0; other < boundaries.size(); ++other)
            if (std::abs(boundaries[other].along_m - boundaries[b].along_m) <= water_near_m &&
                !dry[other])
                boundaries[other].water = true;
    }
}

void describe_boundaries(Stretches& result, const Trip& trip, const Route& route) {
    std::vector<Boundary>& boundaries = result.boundaries;
    for (const RoutePlace& place : route.places)
        boundaries[result.boundary_at(place.along_m)].places.push_back(
            static_cast<std::size_t>(&place - route.places.data()));
    std::vector<bool> dry(boundaries.size(), false); // the trip file says so
    for (std::size_t b = 0; b < boundaries.size(); ++b) {
        Boundary& boundary = boundaries[b];
        const Stretch* before = b > 0 ? &result.stretches[b - 1] : nullptr;
        const Stretch* after = b < result.stretches.size() ? &result.stretches[b] : nullptr;
        boundary.leg_end = !before || !after || before->leg != after->leg;
        const auto open_water = [&](const Stretch& stretch) {
            return stretch.afloat() &&
                   route.legs[stretch.leg.index()].spec.on_water() != Water::river;
        };
        bool camp = false;
        for (const std::size_t index : boundary.places) {
            const RoutePlace& place = route.places[index];
            const TripPlace& spec = trip.route.places[place.spec];
            camp = camp || place.kind == PlaceKind::camp;
            const bool supply = place.kind == PlaceKind::resupply || place.kind == PlaceKind::cache;
            boundary.supply = boundary.supply || supply;
            if (supply && spec.food_mass_kg)
                boundary.food_kg = boundary.food_kg.value_or(0.0) + *spec.food_mass_kg;
            dry[b] = dry[b] || spec.water == false;
            if (place.kind == PlaceKind::water || spec.water == true ||
                (place.kind == PlaceKind::resupply && spec.water.value_or(true)))
                boundary.water = true;
        }
        if ((before && before->drinkable) || (after && after->drinkable))
            boundary.water = true;
        if (dry[b])
            boundary.water = false;
        if (b == 0)
            boundary.water = true; // vessels are filled before setting off
        boundary.may_sleep = boundary.leg_end || camp || !before || !open_water(*before);
    }
    reach_sources(boundaries, route, dry);
}

} // namespace

void lay_snow(Stretch& stretch, const LegOnDay& where, const Assumed& assumed) {
    const GroundMet met = ground_met(where, assumed);
    stretch.footing = met.footing;
    stretch.time_factor = met.time_factor;
    stretch.dark_factor = met.dark_factor;
    stretch.eta = met.eta;
    stretch.snow_m = met.snow_m;
    stretch.sinks_m = met.sinks_m;
}

std::size_t Stretches::boundary_at(double along_m) const {
    const auto after = std::lower_bound(
        boundaries.begin(), boundaries.end(), along_m, [](const Boundary& boundary, double at_m) {
            return boundary.along_m < at_m;
        });
    if (after == boundaries.end())
        return boundaries.size() - 1;
    const auto index = static_cast<std::size_t>(after - boundaries.begin());
    if (index > 0 && along_m - boundaries[index - 1].along_m < after->along_m - along_m)
        return index - 1;
    return index;
}

Stretches
make_stretches(const Trip& trip, const Route& route, const Assumed& assumed, double longest_m) {
    Stretches result;
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const RouteLeg& leg = route.legs[i];
        const std::vector<double> cuts = cuts_of(route, leg, longest_m);
        for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
            Stretch stretch = bare_stretch(route, i, {cuts[k], cuts[k + 1]});
            describe(stretch, leg, assumed);
            result.boundaries.push_back({.along_m = cuts[k],
                                         .places = {},
                                         .leg_end = false,
                                         .may_sleep = false,
                                         .water = false,
                                         .supply = false});
            result.stretches.push_back(std::move(stretch));
        }
    }
    result.boundaries.push_back({.along_m = route.length_m,
                                 .places = {},
                                 .leg_end = true,
                                 .may_sleep = true,
                                 .water = false,
                                 .supply = false});
    spread_scouts(result, route);
    describe_boundaries(result, trip, route);
    return result;
}

std::string boundary_name(const Route& route, const Stretches& stretches, std::size_t boundary) {
    const Boundary& at = stretches.boundaries[boundary];
    if (!at.places.empty())
        return route.places[at.places.front()].name;
    if (at.leg_end && boundary == 0)
        return fmt::format("start of {}", route.legs[stretches.stretches.front().leg.index()].name);
    if (at.leg_end)
        return fmt::format("end of {}",
                           route.legs[stretches.stretches[boundary - 1].leg.index()].name);
    return fmt::format("km {:.1f}", at.along_m / 1000.0);
}

} // namespace tumpline::planner
