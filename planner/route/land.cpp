#include "planner/route/land.h"

#include "geo/layers/geo_box.h"
#include "geo/layers/map_layers.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace tumpline::planner {

namespace {

/// Around the route, at least: what a day's map shows beside it.
constexpr double least_margin_m = 5000.0;
constexpr double margin_share = 0.15; ///< of the route's extent, for maps that are not square

geo::GeoBox frame_of(const Route& route) {
    std::vector<geo::Position> points;
    for (const RouteLeg& leg : route.legs)
        points.insert(points.end(), leg.line.points().begin(), leg.line.points().end());
    const geo::GeoBox tight = geo::box_around(points, 0.0);
    const double extent_m =
        geo::distance_m({tight.south_deg, tight.west_deg}, {tight.north_deg, tight.east_deg});
    return geo::box_around(points, std::max(least_margin_m, margin_share * extent_m));
}

std::string source_line(const geo::MapLayers::Source& source) {
    std::string line = fmt::format("{}: {} things on the map", source.file, source.features);
    if (source.unknown > 0)
        line += fmt::format("; {} left out, for no tag says what they are", source.unknown);
    if (source.unusable > 0)
        line += fmt::format("; {} left out, for they have no usable place", source.unusable);
    return line + (source.credit.empty() ? "; whose data is not said" : "; " + source.credit);
}

} // namespace

void read_land(const Trip& trip, Route& route) {
    if (trip.map.layers.empty() || route.legs.empty())
        return;
    route.land =
        std::make_shared<const geo::MapLayers>(geo::read_layers(trip.map.layers, frame_of(route)));
    for (const geo::MapLayers::Source& source : route.land->sources)
        route.sources.push_back(source_line(source));
}

} // namespace tumpline::planner
