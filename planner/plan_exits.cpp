#include "planner/pace.h"
#include "planner/plan_draft.h"

#include <algorithm>
#include <optional>

namespace tumpline::planner {

namespace {

constexpr double spacing_m = 1000.0;

/// Afloat the way back meets the current; where it leaves no way, one is cut off.
std::optional<double> back_over(const Draft& draft, std::size_t i) {
    const Prepared& prepared = draft.prepared;
    const Stretch& stretch = prepared.stretches.stretches[i];
    const StretchLoads& load = draft.settled.loads.stretches[i];
    if (stretch.travel != Travel::paddle) {
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

struct Exit {
    double along_m;
    std::string name;
};

std::vector<Exit> exits_of(const Route& route) {
    std::vector<Exit> exits{{0.0, "the start"}};
    for (const RoutePlace& place : route.places) {
        switch (place.kind) {
        case PlaceKind::exit:
        case PlaceKind::resupply:
        case PlaceKind::start:
        case PlaceKind::finish:
            exits.push_back({place.along_m, place.name});
            break;
        case PlaceKind::put_in:
        case PlaceKind::take_out:
        case PlaceKind::camp:
        case PlaceKind::water:
        case PlaceKind::cache:
        case PlaceKind::hazard:
        case PlaceKind::landing:
            break;
        }
    }
    exits.push_back({route.length_m, "the finish"});
    std::stable_sort(exits.begin(), exits.end(), [](const Exit& a, const Exit& b) {
        return a.along_m < b.along_m;
    });
    return exits;
}

/// Walks along stretch by stretch and adds up the way between two points of the route.
class WayTimes {
  public:
    explicit WayTimes(const Draft& draft) : draft_(draft) {
        const std::size_t count = draft.prepared.stretches.stretches.size();
        for (std::size_t i = 0; i < count; ++i)
            back_s_.push_back(back_over(draft, i));
    }

    [[nodiscard]] double forward_s(double from_m, double to_m) const {
        double sum_s = 0.0;
        for (std::size_t i = 0; i < back_s_.size(); ++i) {
            const Stretch& stretch = draft_.prepared.stretches.stretches[i];
            const double share = overlap(stretch, from_m, to_m);
            if (share <= 0.0)
                continue;
            const StretchTime& time = draft_.settled.timeline.stretches[i];
            sum_s += share * time.moving_s;
            if (stretch.from_m >= from_m)
                sum_s += time.before.lasts_s;
            if (stretch.to_m <= to_m)
                sum_s += time.after.lasts_s;
        }
        return sum_s;
    }

    [[nodiscard]] std::optional<double> back_s(double from_m, double to_m) const {
        double sum_s = 0.0;
        for (std::size_t i = 0; i < back_s_.size(); ++i) {
            const Stretch& stretch = draft_.prepared.stretches.stretches[i];
            const double share = overlap(stretch, to_m, from_m);
            if (share <= 0.0)
                continue;
            if (!back_s_[i])
                return std::nullopt;
            const StretchTime& time = draft_.settled.timeline.stretches[i];
            sum_s += share * *back_s_[i];
            // The same changes stand at the same places, the other way round.
            if (stretch.to_m <= from_m)
                sum_s += time.after.lasts_s;
            if (stretch.from_m >= to_m)
                sum_s += time.before.lasts_s;
        }
        return sum_s;
    }

  private:
    [[nodiscard]] static double overlap(const Stretch& stretch, double low_m, double high_m) {
        const double length_m = std::min(stretch.to_m, high_m) - std::max(stretch.from_m, low_m);
        return stretch.length_m() > 0.0 ? length_m / stretch.length_m() : 0.0;
    }

    const Draft& draft_;
    std::vector<std::optional<double>> back_s_;
};

} // namespace

std::vector<ExitPoint> plan_exits(const Draft& draft) {
    const std::vector<Exit> exits = exits_of(draft.prepared.route);
    const WayTimes way(draft);
    const double length_m = draft.prepared.route.length_m;
    std::vector<ExitPoint> points;
    bool passed = false;
    const int count = static_cast<int>(length_m / spacing_m) + 1;
    for (int k = 0; k < count; ++k) {
        ExitPoint point;
        point.along_m = spacing_m * k;
        const Exit* ahead = nullptr;
        const Exit* behind = nullptr;
        for (const Exit& exit : exits) {
            if (exit.along_m <= point.along_m)
                behind = &exit;
            if (!ahead && exit.along_m >= point.along_m)
                ahead = &exit;
        }
        if (ahead) {
            point.forward = ahead->name;
            point.forward_s = way.forward_s(point.along_m, ahead->along_m);
        }
        if (behind) {
            point.back = behind->name;
            point.back_s = way.back_s(point.along_m, behind->along_m);
        }
        const bool shorter_on =
            point.forward_s && (!point.back_s || *point.forward_s < *point.back_s);
        // The point of no return is asked of the whole way: from here on the finish is nearer.
        if (!passed) {
            const double on_s = way.forward_s(point.along_m, length_m);
            const std::optional<double> home_s = way.back_s(point.along_m, 0.0);
            if (!home_s || on_s < *home_s) {
                point.no_return = k > 0 || shorter_on;
                passed = point.no_return;
            }
        }
        points.push_back(std::move(point));
    }
    return points;
}

} // namespace tumpline::planner
