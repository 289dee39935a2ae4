#include "planner/recordings/track_order.h"

#include "geo/lines/geodesic.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace tumpline::planner {

namespace {

constexpr double meets_m = 200.0; // receivers started late, car parks, two banks
constexpr double noise_m = 3.0;   // heights of a water differ by that at random
constexpr std::size_t most = 200; // more tracks than that stay as they stand

geo::Position first_of(const TrackEnds& track, bool turned) {
    return turned ? track.end : track.start;
}

geo::Position last_of(const TrackEnds& track, bool turned) {
    return turned ? track.start : track.end;
}

double widest_gap_m(const std::vector<TrackEnds>& tracks, const TrackOrder& laid) {
    double widest_m = 0.0;
    for (std::size_t i = 1; i < laid.order.size(); ++i)
        widest_m = std::max(widest_m,
                            geo::distance_m(last_of(tracks[laid.order[i - 1]], laid.turned[i - 1]),
                                            first_of(tracks[laid.order[i]], laid.turned[i])));
    return widest_m;
}

double water_rises_m(const std::vector<TrackEnds>& tracks, const TrackOrder& laid) {
    double sum_m = 0.0;
    for (std::size_t i = 0; i < laid.order.size(); ++i) {
        const double rises_m = tracks[laid.order[i]].water_rises_m.value_or(0.0);
        const double along_m = laid.turned[i] ? -rises_m : rises_m;
        sum_m += along_m > noise_m ? along_m : 0.0;
    }
    return sum_m;
}

/// From the track `first` on always the one that begins nearest.
TrackOrder chain_from(const std::vector<TrackEnds>& tracks, std::size_t first) {
    TrackOrder laid{.order = {first}, .turned = std::vector<bool>(tracks.size(), false)};
    std::vector<bool> used(tracks.size(), false);
    used[first] = true;
    while (laid.order.size() < tracks.size()) {
        const geo::Position& end = tracks[laid.order.back()].end;
        std::optional<std::size_t> next;
        double near_m = 0.0;
        for (std::size_t i = 0; i < tracks.size(); ++i) {
            if (used[i])
                continue;
            const double away_m = geo::distance_m(end, tracks[i].start);
            if (!next || away_m < near_m) {
                next = i;
                near_m = away_m;
            }
        }
        used[*next] = true;
        laid.order.push_back(*next);
    }
    return laid;
}

/// As they stand, each turned round that meets the one before only backwards.
TrackOrder turned_to_fit(const std::vector<TrackEnds>& tracks, bool first_turned) {
    TrackOrder laid{.order = std::vector<std::size_t>(tracks.size()), .turned = {first_turned}};
    std::iota(laid.order.begin(), laid.order.end(), std::size_t{0});
    for (std::size_t i = 1; i < tracks.size(); ++i) {
        const geo::Position at = last_of(tracks[i - 1], laid.turned.back());
        laid.turned.push_back(geo::distance_m(at, tracks[i].end) <
                              geo::distance_m(at, tracks[i].start));
    }
    return laid;
}

/// The same way from its end to its start.
TrackOrder backwards(TrackOrder laid) {
    std::reverse(laid.order.begin(), laid.order.end());
    std::reverse(laid.turned.begin(), laid.turned.end());
    laid.turned.flip();
    return laid;
}

/// Metres that water rises, then how many are turned round.
using Cost = std::pair<double, std::ptrdiff_t>;

} // namespace

TrackOrder track_order(const std::vector<TrackEnds>& tracks) {
    TrackOrder best{.order = std::vector<std::size_t>(tracks.size()),
                    .turned = std::vector<bool>(tracks.size(), false)};
    std::iota(best.order.begin(), best.order.end(), std::size_t{0});
    if (tracks.size() > most || widest_gap_m(tracks, best) <= meets_m)
        return best;
    std::optional<Cost> least;
    const auto offer = [&](const TrackOrder& laid) {
        const Cost cost{water_rises_m(tracks, laid),
                        std::count(laid.turned.begin(), laid.turned.end(), true)};
        if (widest_gap_m(tracks, laid) > meets_m || (least && *least <= cost))
            return;
        least = cost;
        best = laid;
    };
    const auto offer_both_ways = [&](const TrackOrder& laid) {
        offer(laid);
        offer(backwards(laid));
    };
    for (std::size_t first = 0; first < tracks.size(); ++first)
        offer_both_ways(chain_from(tracks, first));
    for (const bool first_turned : {false, true})
        offer_both_ways(turned_to_fit(tracks, first_turned));
    return best;
}

} // namespace tumpline::planner
