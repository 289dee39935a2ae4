#include "planner/conditions/lake_fetch.h"

#include "geo/layers/shore.h"

#include <algorithm>
#include <vector>

namespace tumpline::planner {

namespace {

constexpr int samples = 40;      ///< along a leg
constexpr int compass_step = 15; ///< degrees, where the wind may come from anywhere

std::vector<double> bearings(const std::optional<double>& wind_from_deg) {
    if (wind_from_deg)
        return {*wind_from_deg};
    std::vector<double> all;
    for (int deg = 0; deg < 360; deg += compass_step)
        all.push_back(deg);
    return all;
}

std::optional<double> by_outline(const geo::MapLayers& land,
                                 const RouteLeg& leg,
                                 const std::optional<double>& wind_from_deg) {
    if (!leg.drawn())
        return std::nullopt;
    const geo::Shores shores(land, leg.line.points());
    int on_lake = 0;
    double longest_m = 0.0;
    for (int i = 0; i <= samples; ++i) {
        const geo::Position at = leg.line.at(leg.line.length_m() * i / samples);
        std::optional<double> here_m;
        for (const double bearing_deg : bearings(wind_from_deg)) {
            here_m = shores.fetch_m(at, bearing_deg);
            if (!here_m)
                break;
            longest_m = std::max(longest_m, *here_m);
        }
        on_lake += here_m ? 1 : 0;
    }
    return 2 * on_lake >= samples ? std::optional(longest_m) : std::nullopt;
}

} // namespace

std::string_view fetch_word(FetchFrom from) {
    switch (from) {
    case FetchFrom::trip:
        return "trip";
    case FetchFrom::layers:
        return "layers";
    case FetchFrom::length:
        return "length";
    }
    return "";
}

LegFetch leg_fetch(const Route& route, LegNumber leg, const std::optional<double>& wind_from_deg) {
    const RouteLeg& own = route.legs[leg.index()];
    if (own.spec.fetch_m)
        return {*own.spec.fetch_m, FetchFrom::trip};
    if (route.land)
        if (const std::optional<double> fetch_m = by_outline(*route.land, own, wind_from_deg))
            return {*fetch_m, FetchFrom::layers};
    return {own.to_m - own.from_m, FetchFrom::length};
}

} // namespace tumpline::planner
