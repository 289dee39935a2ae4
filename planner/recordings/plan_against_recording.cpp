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
constexpr double least_reach_m = 100.0; // along the line from the middle of a minute to its ends
constexpr double as_near_m = 30.0;      // passes that differ by less are as near as each other
constexpr double about_step_m = 10.0;

/// A part of the route.
struct RoutePart {
    double from_m;
    double to_m;
};

/// A pass of the route that a minute may belong to, and the part of it that was travelled.
struct LegPass {
    double along_m;
    double from_m;
    double to_m;
    bool same_way;
    double off_m = 0.0;

    [[nodiscard]] double first_m() const { return std::min(from_m, to_m); }

    [[nodiscard]] double last_m() const { return std::max(from_m, to_m); }
};

/// Where a minute began and ended.
struct Move {
    geo::Position from;
    geo::Position to;
    double length_m;
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

/// The nearest point of the line to `place` between two distances along.
geo::Snap nearest_between(const geo::Polyline& line, const geo::Position& place, RoutePart part) {
    const double from_m = std::clamp(part.from_m, 0.0, line.length_m());
    geo::Snap snap = line.cut(from_m, part.to_m).nearest(place);
    snap.along_m += from_m;
    return snap;
}

/// The part of a leg around `middle_m` that a move travels, by whichever direction fits better: the
/// line's own points, not the recording's length, tell how much of it that is.
LegPass pass_of(const geo::Polyline& line, const Move& move, double middle_m) {
    const double reach_m = 2.0 * move.length_m + least_reach_m;
    const RoutePart before{middle_m - reach_m, middle_m};
    const RoutePart after{middle_m, middle_m + reach_m};
    const geo::Snap from = nearest_between(line, move.from, before);
    const geo::Snap to = nearest_between(line, move.to, after);
    const geo::Snap back_from = nearest_between(line, move.from, after);
    const geo::Snap back_to = nearest_between(line, move.to, before);
    if (from.off_m + to.off_m <= back_from.off_m + back_to.off_m)
        return {middle_m, from.along_m, to.along_m, true};
    return {middle_m, back_from.along_m, back_to.along_m, false};
}

/// The passes near a minute, those of the same way only if there are any; on a portage one goes
/// both ways.
std::vector<LegPass> candidates(const Route& route, const Run& run, const Window& window) {
    const geo::Position middle = at(run, 0.5 * (window.from_m + window.to_m));
    const Move move{at(run, window.from_m), at(run, window.to_m), window.to_m - window.from_m};
    std::vector<LegPass> found;
    for (const RouteLeg& leg : route.legs)
        for (const geo::Snap& snap : leg.line.passes(middle, along_line_m, apart_m)) {
            LegPass pass = pass_of(leg.line, move, snap.along_m);
            pass.off_m = snap.off_m;
            pass.along_m += leg.from_m;
            pass.from_m += leg.from_m;
            pass.to_m += leg.from_m;
            pass.same_way = pass.same_way || leg.travel == Travel::portage;
            found.push_back(pass);
        }
    double nearest_m = along_line_m;
    for (const LegPass& each : found)
        nearest_m = std::min(nearest_m, each.off_m);
    // A tangle of wander beside the line is near as well, but not where one is.
    std::erase_if(found, [&](const LegPass& each) { return each.off_m > nearest_m + as_near_m; });
    if (std::any_of(found.begin(), found.end(), [](const auto& each) { return each.same_way; }))
        std::erase_if(found, [](const LegPass& each) { return !each.same_way; });
    return found;
}

/// The candidate that follows best on `before_m`.
const LegPass& follows(const std::vector<LegPass>& found, double before_m) {
    const auto cost = [&](const LegPass& each) {
        const double step_m = each.along_m - before_m;
        return step_m < 0.0 ? -backwards_costs * step_m : step_m;
    };
    return *std::min_element(
        found.begin(), found.end(), [&](const LegPass& one, const LegPass& other) {
            return cost(one) < cost(other);
        });
}

/// Whether the route stays about `place` between two distances along, as a recorded line does where
/// somebody rested.
bool stays_about(const Route& route, const geo::Position& place, RoutePart part) {
    const auto steps =
        static_cast<std::size_t>(std::ceil(std::max(part.to_m - part.from_m, 0.0) / about_step_m));
    for (std::size_t k = 0; k < steps; ++k) {
        const double along_m = part.from_m + about_step_m * static_cast<double>(k);
        if (geo::distance_m(route.at(along_m), place) > along_line_m)
            return false;
    }
    return true;
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

/// Length of the parts of [from, to] that are covered, each once, or of all passes over it.
double covered_m(const std::vector<RoutePart>& sorted, const PlanLeg& leg) {
    double sum_m = 0.0;
    double done_m = leg.from_m;
    for (const RoutePart& part : sorted) {
        const double first_m = std::max(part.from_m, leg.from_m);
        const double last_m = std::min(part.to_m, leg.to_m);
        if (leg.travel == Travel::portage)
            sum_m += std::max(0.0, last_m - first_m);
        else if (last_m > done_m) {
            sum_m += last_m - std::max(done_m, first_m);
            done_m = last_m;
        }
    }
    return sum_m;
}

/// Lays each minute of a recording on the route.
class Overlay {
  public:
    Overlay(const Plan& plan, const Route& route, Against& against)
        : plan_(plan), route_(route), against_(against) {}

    void lay(const Run& run, const Window& window) {
        const std::vector<LegPass> found = candidates(route_, run, window);
        if (found.empty()) {
            against_.off_route_s += window.lasts_s;
            return;
        }
        const LegPass& pass = follows(found, along_m_);
        if (!pass.same_way) {
            against_.other_way_s += window.lasts_s;
            return;
        }
        // What lies between two minutes that follow in place was travelled, or rested in.
        const geo::Position from = at(run, window.from_m);
        const RoutePart between{last_m_, pass.first_m()};
        if (before_ && between.to_m > between.from_m &&
            geo::distance_m(*before_, from) <= along_line_m && stays_about(route_, from, between))
            parts_.push_back(between);
        along_m_ = pass.along_m;
        last_m_ = pass.last_m();
        before_ = at(run, window.to_m);
        against_.legs[leg_at(plan_, along_m_)].recorded_s += window.lasts_s;
        parts_.push_back({pass.first_m(), pass.last_m()});
    }

    [[nodiscard]] std::vector<RoutePart> parts() const {
        std::vector<RoutePart> sorted = parts_;
        std::sort(sorted.begin(), sorted.end(), [](const RoutePart& a, const RoutePart& b) {
            return a.from_m < b.from_m;
        });
        return sorted;
    }

  private:
    const Plan& plan_;
    const Route& route_;
    Against& against_;
    std::vector<RoutePart> parts_;
    double along_m_ = 0.0;
    double last_m_ = 0.0;
    std::optional<geo::Position> before_;
};

} // namespace

Against against_plan(const Recorded& recorded, const Plan& plan, const Route& route) {
    Against against;
    if (plan.legs.empty())
        return against;
    against.legs.resize(plan.legs.size());
    Overlay overlay(plan, route, against);
    for (const Run& run : recorded.runs)
        for (const Window& window : run.windows)
            overlay.lay(run, window);
    const std::vector<RoutePart> parts = overlay.parts();
    RatioSum on_foot;
    RatioSum afloat;
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        const PlanLeg& leg = plan.legs[i];
        LegAgainst& row = against.legs[i];
        row.plan_leg = PlanLegNumber::of_index(i);
        row.planned_s = leg.moving_s;
        row.covered = way_m(leg) > 0.0 ? std::min(1.0, covered_m(parts, leg) / way_m(leg)) : 0.0;
        if (row.covered < least_covered || leg.moving_s <= 0.0)
            continue;
        row.ratio = row.recorded_s / (row.covered * leg.moving_s);
        if (is_ride(leg.travel) || led(leg.travel))
            continue; // it takes what it takes, or has a pace of its own
        RatioSum& sum = planner::afloat(leg.travel) ? afloat : on_foot;
        sum.recorded_s += row.recorded_s;
        sum.planned_s += row.covered * leg.moving_s;
    }
    against.on_foot = on_foot.ratio();
    against.afloat = afloat.ratio();
    return against;
}

} // namespace tumpline::planner
