#include "planner/results/way_times.h"

#include "planner/defaults/led_boats.h"
#include "planner/journey/pace.h"
#include "planner/models/walking_speed.h"
#include "planner/quantities/quantities.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

/// Afloat the way back meets the current; where it leaves no way, one is cut off. Nobody counts
/// upon a ride back that the plan does not have.
std::optional<double> back_over(const Assembly& draft, std::size_t i) {
    const Prepared& prepared = draft.prepared;
    const Stretch& stretch = draft.settled.stretches_met(prepared).stretches[i];
    const StretchLoads& load = draft.settled.loads.stretches[i];
    if (is_ride(stretch.travel))
        return std::nullopt;
    if (stretch.on_foot()) {
        double slowest_s = 0.0;
        for (std::size_t m = 0; m < prepared.assumed.members.size(); ++m) {
            const double kg = load.start_kg[m] + load.worn_kg[m];
            slowest_s = std::max(
                slowest_s,
                walk_back_s(
                    stretch, prepared.assumed.members[m], prepared.assumed.models, {kg, kg}));
        }
        if (draft.settled.loads.portages[i])
            slowest_s *= lengths_of(draft.settled.loads.portages[i]->relay.carries);
        return slowest_s;
    }
    if (led(stretch.travel)) {
        if (stretch.travel == Travel::pole && too_swift_to_pole(stretch.current_mps))
            return std::nullopt;
        return led_s(stretch, prepared.assumed, i);
    }
    Stretch other_way = stretch;
    other_way.current_mps = -stretch.current_mps;
    for (Course& course : other_way.courses)
        course.bearing_deg += course.bearing_deg < 180.0 ? 180.0 : -180.0;
    double slowest_s = 0.0;
    for (std::size_t c = 0; c < prepared.assumed.craft.size(); ++c) {
        const Paddle one =
            paddle(other_way, prepared.assumed.craft[c], prepared.assumed, load.all_up_kg[c]);
        if (one.stopped)
            return std::nullopt;
        slowest_s = std::max(slowest_s, one.moving_s);
    }
    return slowest_s;
}

/// `values` at a place between those of `at`, both ascending from 0.
double between(const std::vector<double>& at, const std::vector<double>& values, double where) {
    const auto after = std::upper_bound(at.begin(), at.end(), where);
    if (after == at.begin())
        return 0.0;
    if (after == at.end())
        return values.back();
    const auto k = static_cast<std::size_t>(after - at.begin());
    const double part = (where - at[k - 1]) / (at[k] - at[k - 1]);
    return values[k - 1] + part * (values[k] - values[k - 1]);
}

void make_shares(std::vector<double>& sums) {
    const double whole = sums.back();
    for (double& sum : sums)
        sum /= whole;
}

} // namespace

bool is_way_out(PlaceKind kind) {
    switch (kind) {
    case PlaceKind::exit:
    case PlaceKind::resupply:
    case PlaceKind::start:
    case PlaceKind::finish:
        return true;
    case PlaceKind::put_in:
    case PlaceKind::take_out:
    case PlaceKind::camp:
    case PlaceKind::water:
    case PlaceKind::cache:
    case PlaceKind::hazard:
    case PlaceKind::ford:
    case PlaceKind::landing:
        return false;
    }
    return false;
}

WayTimes::WayTimes(const Assembly& draft) : draft_(draft) {
    const std::size_t count = draft.prepared.stretches.stretches.size();
    for (std::size_t i = 0; i < count; ++i) {
        back_s_.push_back(back_over(draft, i));
        growth_.push_back(growth_of(i));
    }
}

WayTimes::Growth WayTimes::growth_of(std::size_t stretch) const {
    const Stretch& over = draft_.prepared.stretches.stretches[stretch];
    Growth growth;
    if (over.travel != Travel::walk || over.steps.size() < 2)
        return growth;
    const WalkingModel model = draft_.prepared.assumed.models.walking;
    growth.length = growth.there = growth.back = {0.0};
    for (const SlopeStep& step : over.steps) {
        growth.length.push_back(growth.length.back() + step.length_m);
        growth.there.push_back(growth.there.back() +
                               step.length_m / walking_speed_mps(model, step.slope));
        growth.back.push_back(growth.back.back() +
                              step.length_m / walking_speed_mps(model, -step.slope));
    }
    if (growth.length.back() <= 0.0)
        return {};
    make_shares(growth.length);
    make_shares(growth.there);
    make_shares(growth.back);
    return growth;
}

double WayTimes::share_at(std::size_t stretch, double along_m, bool back) const {
    const Stretch& over = draft_.prepared.stretches.stretches[stretch];
    if (over.length_m() <= 0.0)
        return along_m > over.from_m ? 1.0 : 0.0;
    const double share = std::clamp((along_m - over.from_m) / over.length_m(), 0.0, 1.0);
    const Growth& growth = growth_[stretch];
    return growth.length.empty() ? share
                                 : between(growth.length, back ? growth.back : growth.there, share);
}

double WayTimes::forward_s(double from_m, double to_m) const {
    double sum_s = 0.0;
    for (std::size_t i = 0; i < back_s_.size(); ++i) {
        const Stretch& stretch = draft_.prepared.stretches.stretches[i];
        if (stretch.to_m <= from_m || stretch.from_m >= to_m)
            continue;
        const StretchTime& time = draft_.settled.timeline.stretches[i];
        sum_s += (share_at(i, to_m, false) - share_at(i, from_m, false)) * time.moving_s;
        if (stretch.from_m >= from_m)
            sum_s += time.before.lasts_s;
        if (stretch.to_m <= to_m)
            sum_s += time.after.lasts_s;
    }
    return sum_s;
}

std::optional<WayTimes::Back> WayTimes::back(double from_m, double to_m) const {
    Back sum{0.0, 0.0};
    for (std::size_t i = 0; i < back_s_.size(); ++i) {
        const Stretch& stretch = draft_.prepared.stretches.stretches[i];
        if (stretch.to_m <= to_m || stretch.from_m >= from_m)
            continue;
        if (!back_s_[i])
            return std::nullopt;
        const StretchTime& time = draft_.settled.timeline.stretches[i];
        sum.moving_s += (share_at(i, from_m, true) - share_at(i, to_m, true)) * *back_s_[i];
        // The same changes stand at the same places, the other way round.
        if (stretch.to_m <= from_m)
            sum.changes_s += time.after.lasts_s;
        if (stretch.from_m >= to_m)
            sum.changes_s += time.before.lasts_s;
    }
    return sum;
}

double WayTimes::clock_s(std::size_t stretch, double along_m) const {
    const StretchTime& time = draft_.settled.timeline.stretches[stretch];
    const double share = share_at(stretch, along_m, false);
    const double before_s = time.moved_before_s;
    const int rests =
        std::min(time.rests,
                 static_cast<int>(std::floor((before_s + share * time.moving_s) / s_per_h) -
                                  std::floor(before_s / s_per_h)));
    const int scouts = draft_.prepared.stretches.stretches[stretch].scouts;
    const double looked = std::min<double>(scouts, std::floor(share * (scouts + 1) + 1e-9));
    return time.start_s + time.before.lasts_s + share * time.moving_s +
           rests * draft_.prepared.assumed.times.rest_per_hour_s +
           looked * draft_.prepared.assumed.times.scout_s;
}

} // namespace tumpline::planner
