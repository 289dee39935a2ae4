#include "planner/route/route.h"

#include <algorithm>
#include <iterator>

namespace tumpline::planner {

namespace {

const RouteLeg& leg_at(const Route& route, double along_m) {
    const auto after = std::find_if(route.legs.begin(), route.legs.end(), [&](const RouteLeg& leg) {
        return along_m < leg.to_m;
    });
    return after == route.legs.end() ? route.legs.back() : *after;
}

} // namespace

geo::Position Route::at(double along_m) const {
    const RouteLeg& leg = leg_at(*this, along_m);
    const auto index = static_cast<std::size_t>(&leg - legs.data());
    if (!leg.drawn() && along_m <= leg.from_m && index > 0 && legs[index - 1].drawn())
        return legs[index - 1].line.points().back(); // where a line ends, exactly
    return leg.line.at(along_m - leg.from_m);
}

bool Route::located(double along_m) const {
    constexpr double same_point_m = 0.1 * no_length_m;
    return std::any_of(legs.begin(), legs.end(), [&](const RouteLeg& leg) {
        return leg.drawn() && along_m > leg.from_m - same_point_m &&
               along_m < leg.to_m + same_point_m;
    });
}

std::vector<RoutePlace> Route::passes(const std::string& name) const {
    std::vector<RoutePlace> found;
    for (const std::vector<RoutePlace>* list : {&places, &met_at})
        std::copy_if(list->begin(), list->end(), std::back_inserter(found), [&](const auto& place) {
            return place.name == name;
        });
    return found;
}

std::optional<double> Route::height_at(double along_m) const {
    const RouteLeg& leg = leg_at(*this, along_m);
    return leg.profile.height_at(along_m - leg.from_m);
}

} // namespace tumpline::planner
