#include "planner/results/exits.h"

#include "planner/results/way_times.h"

#include <algorithm>
#include <optional>

namespace tumpline::planner {

namespace {

constexpr double spacing_m = 1000.0;

struct Exit {
    double along_m;
    std::string name;
};

std::vector<Exit> exits_of(const Route& route) {
    std::vector<Exit> exits{{0.0, "the start"}};
    for (const RoutePlace& place : route.places)
        if (is_way_out(place.kind))
            exits.push_back({place.along_m, place.name});
    for (const RouteLeg& leg : route.legs)
        if (is_ride(leg.travel)) { // both ends lie where vehicles come
            exits.push_back({leg.from_m, "the start of " + leg.name});
            exits.push_back({leg.to_m, "the end of " + leg.name});
        }
    exits.push_back({route.length_m, "the finish"});
    std::stable_sort(exits.begin(), exits.end(), [](const Exit& a, const Exit& b) {
        return a.along_m < b.along_m;
    });
    return exits;
}

/// The way from one ride to the next that holds a point, or from the start or to the finish.
struct OwnWay {
    double from_m = 0.0;
    double to_m = 0.0;
    bool on_ride = false; ///< the point is on one, where nobody turns
};

OwnWay own_way(const Route& route, double along_m) {
    OwnWay way{.from_m = 0.0, .to_m = route.length_m, .on_ride = false};
    for (const RouteLeg& leg : route.legs) {
        if (!is_ride(leg.travel))
            continue;
        way.on_ride = way.on_ride || (along_m > leg.from_m && along_m < leg.to_m);
        if (leg.to_m <= along_m)
            way.from_m = leg.to_m;
        else if (leg.from_m >= along_m)
            way.to_m = std::min(way.to_m, leg.from_m);
    }
    return way;
}

std::optional<double> back_s(const WayTimes& way, double from_m, double to_m) {
    const std::optional<WayTimes::Back> back = way.back(from_m, to_m);
    return back ? std::optional(back->sum_s()) : std::nullopt;
}

} // namespace

std::vector<ExitPoint> plan_exits(const Assembly& draft) {
    const std::vector<Exit> exits = exits_of(draft.prepared.route);
    const WayTimes way(draft);
    const double length_m = draft.prepared.route.length_m;
    std::vector<ExitPoint> points;
    double asked_from_m = 0.0; // of which way the point of no return is asked
    bool passed = false;
    const int count = static_cast<int>(length_m / spacing_m) + 1;
    for (int k = 0; k < count; ++k) {
        ExitPoint point;
        point.along_m = spacing_m * k;
        const OwnWay own = own_way(draft.prepared.route, point.along_m);
        if (own.on_ride)
            continue;
        passed = passed && own.from_m == asked_from_m;
        asked_from_m = own.from_m;
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
            point.back_s = back_s(way, point.along_m, behind->along_m);
        }
        const bool shorter_on =
            point.forward_s && (!point.back_s || *point.forward_s < *point.back_s);
        // The point of no return is asked of the whole way, from ride to ride where there are any:
        // from here on its end is nearer.
        if (!passed) {
            const double on_s = way.forward_s(point.along_m, own.to_m);
            const std::optional<double> home_s = back_s(way, point.along_m, own.from_m);
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
