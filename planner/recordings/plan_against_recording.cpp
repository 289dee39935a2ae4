#include "planner/recordings/plan_against_recording.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

constexpr double along_line_m = 150.0;  // receivers, and lines drawn on a map, lie this far apart
constexpr double apart_m = 200.0;       // two passes nearer along than that are one
constexpr double backwards_costs = 3.0; // who goes back goes back little
constexpr double least_covered = 0.1;

/// A point of the route that a minute may belong to.
struct LegPass {
    double along_m;
    bool same_way; ///< or on a portage, where one goes both ways
};

geo::Position at(const Run& run, double along_m) {
    const auto next = std::lower_bound(run.along_m.begin(), run.along_m.end(), along_m);
    if (next == run.along_m.end())
        return run.line.back();
    const auto index = static_cast<std::size_t>(next - run.along_m.begin());
    if (index == 0)
        return run.line.front();
    return geo::towards(run.line[index - 1], run.line[index], along_m - run.along_m[index - 1]);
}

bool goes_along(const geo::Geodesic& move, double bearing_deg) {
    return std::abs(std::remainder(move.start_azimuth_deg - bearing_deg, 360.0)) <= 90.0;
}

std::vector<LegPass> candidates(const Route& route, const Run& run, const Window& window) {
    const geo::Position middle = at(run, 0.5 * (window.from_m + window.to_m));
    const geo::Geodesic move = geo::geodesic(at(run, window.from_m), at(run, window.to_m));
    std::vector<LegPass> found;
    for (const RouteLeg& leg : route.legs)
        for (const geo::Snap& snap : leg.line.passes(middle, along_line_m, apart_m))
            found.push_back({leg.from_m + snap.along_m,
                             leg.travel == Travel::portage ||
                                 goes_along(move, leg.line.bearing_deg(snap.along_m))});
    if (std::any_of(found.begin(), found.end(), [](const auto& each) { return each.same_way; }))
        std::erase_if(found, [](const LegPass& each) { return !each.same_way; });
    return found;
}

/// The candidate that follows best on `before_m`.
double follows(const std::vector<LegPass>& found, double before_m) {
    const auto cost = [&](const LegPass& each) {
        const double step_m = each.along_m - before_m;
        return step_m < 0.0 ? -backwards_costs * step_m : step_m;
    };
    return std::min_element(
               found.begin(),
               found.end(),
               [&](const LegPass& one, const LegPass& other) { return cost(one) < cost(other); })
        ->along_m;
}

/// What each person walks or paddles on a leg, passes counted.
double way_m(const PlanLeg& leg) {
    return leg.travel == Travel::portage ? leg.on_foot_m : leg.to_m - leg.from_m;
}

std::size_t leg_at(const Plan& plan, double along_m) {
    const auto leg = std::find_if(plan.legs.begin(), plan.legs.end(), [&](const PlanLeg& each) {
        return along_m <= each.to_m;
    });
    return leg == plan.legs.end() ? plan.legs.size() - 1
                                  : static_cast<std::size_t>(leg - plan.legs.begin());
}

/// Times of several legs and how they compare.
struct RatioSum {
    double recorded_s = 0.0;
    double planned_s = 0.0;

    [[nodiscard]] std::optional<double> ratio() const {
        return planned_s > 0.0 ? std::optional(recorded_s / planned_s) : std::nullopt;
    }
};

} // namespace

Against against_plan(const Recorded& recorded, const Plan& plan, const Route& route) {
    Against against;
    if (plan.legs.empty())
        return against;
    std::vector<double> covered_m(plan.legs.size(), 0.0);
    against.legs.resize(plan.legs.size());
    double along_m = 0.0;
    for (const Run& run : recorded.runs)
        for (const Window& window : run.windows) {
            const std::vector<LegPass> found = candidates(route, run, window);
            if (found.empty()) {
                against.off_route_s += window.lasts_s;
                continue;
            }
            along_m = follows(found, along_m);
            const std::size_t leg = leg_at(plan, along_m);
            against.legs[leg].recorded_s += window.lasts_s;
            covered_m[leg] += window.to_m - window.from_m;
        }
    RatioSum on_foot;
    RatioSum afloat;
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        const PlanLeg& leg = plan.legs[i];
        LegAgainst& row = against.legs[i];
        row.plan_leg = i + 1;
        row.planned_s = leg.moving_s;
        row.covered = way_m(leg) > 0.0 ? std::min(1.0, covered_m[i] / way_m(leg)) : 0.0;
        if (row.covered < least_covered || leg.moving_s <= 0.0)
            continue;
        row.ratio = row.recorded_s / (row.covered * leg.moving_s);
        RatioSum& sum = leg.travel == Travel::paddle ? afloat : on_foot;
        sum.recorded_s += row.recorded_s;
        sum.planned_s += row.covered * leg.moving_s;
    }
    against.on_foot = on_foot.ratio();
    against.afloat = afloat.ratio();
    return against;
}

} // namespace tumpline::planner
