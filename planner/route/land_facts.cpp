#include "planner/route/land_facts.h"

#include "geo/ground/map_projection.h"
#include "geo/layers/segment_grid.h"
#include "geo/layers/shore.h"
#include "planner/quantities/spelling.h"
#include "planner/quantities/unit_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace tumpline::planner {

namespace {

using geo::LandFeature;
using geo::LandShape;
using geo::LandSign;
using geo::LayerKind;

/// How far off a line may be drawn and still be the same thing: common practice, no source.
constexpr double same_place_m = 40.0;
constexpr double named_within_m = 250.0; ///< of a hazard of the trip, along the route
constexpr double sample_m = 50.0;
constexpr double far_from_shore_m = 200.0;
constexpr double off_path_from_m = 200.0; ///< of a leg; less is how lines are drawn
constexpr std::size_t most_listed = 6;

std::string_view thing_word(const LandFeature& feature) {
    switch (feature.sign) {
    case LandSign::fall:
        return "a fall";
    case LandSign::weir:
        return "a weir";
    case LandSign::plain:
    case LandSign::stream:
    case LandSign::canal:
    case LandSign::unmarked:
        break;
    }
    return "a rapid";
}

/// Looks along one route.
class LandFacts {
  public:
    explicit LandFacts(const Route& route)
        : route_(route), land_(*route.land), projection_(ends(route)) {}

    [[nodiscard]] std::vector<Caution> told();

  private:
    /// A caution of a leg, or of none.
    struct Fact {
        Level level;
        const char* code;
        std::optional<LegNumber> leg;
        UnitText text;
        UnitText figure = ""; ///< what is the leg's own, to stand beside other legs'
    };

    static std::vector<geo::Position> ends(const Route& route) {
        std::vector<geo::Position> points;
        for (const RouteLeg& leg : route.legs) {
            points.push_back(leg.line.points().front());
            points.push_back(leg.line.points().back());
        }
        return points;
    }

    void tell(const Fact& fact) {
        facts_.push_back({.level = fact.level,
                          .code = fact.code,
                          .day = std::nullopt,
                          .leg = fact.leg,
                          .text = fact.text.metric,
                          .source = "docs/map.md",
                          .imperial = imperial_if_other(fact.text),
                          .figure = fact.figure.metric,
                          .figure_imperial = imperial_if_other(fact.figure)});
    }

    void hazards();

    /// A place of a feature on a leg.
    struct Met {
        LegNumber leg;
        double along_m;
        const LandFeature* feature;
    };

    void meet(std::vector<Met>& met, const LandFeature& feature, const geo::Position& at) const;
    [[nodiscard]] const RouteLeg* carried_round(const Met& met) const;
    void unnamed(const Met& met);
    void shores();
    void streams();
    void paths();
    void unknown();

    [[nodiscard]] static UnitText place_word(double along_m) {
        return in_both(show_distance, along_m);
    }

    const Route& route_;
    const geo::MapLayers& land_;
    geo::MapProjection projection_;
    std::vector<Caution> facts_;
};

/// Where the legs afloat pass a rapid of the layers at which no hazard of the trip stands.
void LandFacts::meet(std::vector<Met>& met,
                     const LandFeature& feature,
                     const geo::Position& at) const {
    for (std::size_t i = 0; i < route_.legs.size(); ++i) {
        const RouteLeg& leg = route_.legs[i];
        if (!aboard(leg.travel) || leg.line.no_nearer_m(at) > same_place_m)
            continue;
        for (const geo::Snap& pass : leg.line.passes(at, same_place_m)) {
            const double along_m = leg.from_m + pass.along_m;
            const bool named = std::ranges::any_of(route_.places, [&](const RoutePlace& place) {
                return place.kind == PlaceKind::hazard &&
                       std::abs(place.along_m - along_m) <= named_within_m;
            });
            if (!named)
                met.push_back({LegNumber::of_index(i), along_m, &feature});
        }
    }
}

/// The portage that begins or ends where this is drawn, so that nobody paddles it; null if none.
const RouteLeg* LandFacts::carried_round(const Met& met) const {
    const std::size_t index = met.leg.index();
    const RouteLeg& leg = route_.legs[index];
    const auto portage = [&](std::size_t other) -> const RouteLeg* {
        const bool there =
            other < route_.legs.size() && route_.legs[other].travel == Travel::portage;
        return there ? &route_.legs[other] : nullptr;
    };
    if (leg.to_m - met.along_m <= same_place_m)
        return portage(index + 1);
    if (met.along_m - leg.from_m <= same_place_m && index > 0)
        return portage(index - 1);
    return nullptr;
}

void LandFacts::unnamed(const Met& met) {
    const LandFeature& feature = *met.feature;
    std::string what(thing_word(feature));
    if (!feature.name.empty())
        what += fmt::format(" ({})", feature.name);
    if (!feature.grade.empty())
        what += fmt::format(", graded {} there", feature.grade);
    const std::string& file = land_.sources.at(feature.source).file;
    const UnitText at = place_word(met.along_m);
    const UnitText figure = format_both("{} at {} ({})", what, at, file);
    if (const RouteLeg* const carry = carried_round(met))
        tell({Level::note,
              "ground-carried",
              met.leg,
              format_both("At {} {} shows {} where the boats are carried ({}): do not let the "
                          "water take you past the landing.",
                          at,
                          file,
                          what,
                          carry->name),
              figure});
    else
        tell({Level::caution,
              "ground-rapid",
              met.leg,
              format_both("At {} {} shows {}; the trip names no hazard there. Scout it from shore, "
                          "and ask who knows the river.",
                          at,
                          file,
                          what),
              figure});
}

void LandFacts::hazards() {
    std::vector<Met> met;
    for (const LandFeature& feature : land_.features)
        if (feature.kind == LayerKind::rapid || feature.rapid)
            for (const std::vector<geo::Position>& part : feature.parts)
                if (!part.empty())
                    meet(met, feature, part.size() > 2 ? part[part.size() / 2] : part.front());
    std::ranges::stable_sort(met, {}, &Met::along_m);
    for (const Met& one : met)
        unnamed(one);
}

/// How far a lake leg leads from the shore.
void LandFacts::shores() {
    for (std::size_t i = 0; i < route_.legs.size(); ++i) {
        const RouteLeg& leg = route_.legs[i];
        if (!afloat(leg.travel) || leg.spec.on_water() == Water::river)
            continue;
        const geo::Shores shores(land_, leg.line.points());
        std::optional<double> furthest_m;
        double at_m = 0.0;
        double open_m = 0.0;
        const double step_m = std::max(sample_m, leg.line.length_m() / 400.0);
        const int steps = static_cast<int>(leg.line.length_m() / step_m);
        for (int step = 0; step <= steps; ++step) {
            const std::optional<double> off_m = shores.shore_m(leg.line.at(step * step_m));
            if (!off_m)
                continue;
            if (*off_m > far_from_shore_m)
                open_m += step_m;
            if (*off_m > furthest_m.value_or(-1.0)) {
                furthest_m = *off_m;
                at_m = leg.from_m + step * step_m;
            }
        }
        if (furthest_m && *furthest_m > far_from_shore_m)
            tell(
                {Level::note,
                 "ground-shore",
                 LegNumber::of_index(i),
                 format_both("By the layers the line leads up to {} from the nearest shore, at {}, "
                             "and {} of it further than {}.",
                             in_both(show_distance, *furthest_m),
                             place_word(at_m),
                             in_both(show_distance, open_m),
                             in_both(show_distance, far_from_shore_m)),
                 format_both(
                     "up to {} at {}", in_both(show_distance, *furthest_m), place_word(at_m))});
    }
}

/// Rivers and streams that a leg on foot crosses.
void LandFacts::streams() {
    geo::SegmentGrid grid;
    for (std::size_t i = 0; i < land_.features.size(); ++i) {
        const LandFeature& feature = land_.features[i];
        if (feature.kind != LayerKind::river || feature.shape != LandShape::line)
            continue;
        for (const std::vector<geo::Position>& part : feature.parts)
            for (std::size_t j = 0; j + 1 < part.size(); ++j)
                grid.add({projection_.to_map(part[j]), projection_.to_map(part[j + 1]), i});
    }
    for (std::size_t i = 0; i < route_.legs.size(); ++i) {
        const RouteLeg& leg = route_.legs[i];
        if (!on_foot(leg.travel))
            continue;
        std::vector<std::pair<double, std::size_t>> met; // along, whose
        const std::vector<geo::Position>& points = leg.line.points();
        for (std::size_t j = 0; j + 1 < points.size(); ++j) {
            const geo::MapSegment step{
                projection_.to_map(points[j]), projection_.to_map(points[j + 1]), 0};
            grid.near(step, 0.0, [&](const geo::MapSegment& stream) {
                const double share = geo::crossing_share(step, stream);
                if (share >= 0.0)
                    met.emplace_back(leg.from_m + std::lerp(leg.line.along_m()[j],
                                                            leg.line.along_m()[j + 1],
                                                            share),
                                     stream.owner);
                return true;
            });
        }
        std::ranges::sort(met);
        met.erase(std::unique(met.begin(), met.end()), met.end());
        if (met.empty())
            continue;
        std::vector<std::string> metric;
        std::vector<std::string> imperial;
        for (const auto& [along_m, owner] : met) {
            if (metric.size() == most_listed) {
                metric.emplace_back("more");
                imperial.emplace_back("more");
                break;
            }
            const bool dry = land_.features[owner].intermittent;
            const UnitText at = place_word(along_m);
            metric.push_back(at.metric + (dry ? " (dry at times)" : ""));
            imperial.push_back(at.imperial + (dry ? " (dry at times)" : ""));
        }
        const UnitText at{fmt::format("at {}", fmt::join(metric, ", ")),
                          fmt::format("at {}", fmt::join(imperial, ", "))};
        tell({Level::note,
              "ground-stream",
              LegNumber::of_index(i),
              format_both("Crosses running water by the layers {}. Whether it can be crossed or "
                          "drunk they do not say.",
                          at),
              at});
    }
}

/// Legs that the trip takes for paths, where no path or road of the layers runs.
void LandFacts::paths() {
    if (!land_.has(LayerKind::path) && !land_.has(LayerKind::road))
        return;
    geo::SegmentGrid grid;
    for (const LandFeature& feature : land_.features) {
        const bool way = (feature.kind == LayerKind::path && feature.sign != LandSign::unmarked) ||
                         feature.kind == LayerKind::road;
        if (!way || feature.shape != LandShape::line)
            continue;
        for (const std::vector<geo::Position>& part : feature.parts)
            for (std::size_t j = 0; j + 1 < part.size(); ++j)
                grid.add({projection_.to_map(part[j]), projection_.to_map(part[j + 1]), 0});
    }
    for (std::size_t i = 0; i < route_.legs.size(); ++i) {
        const RouteLeg& leg = route_.legs[i];
        const Terrain terrain = leg.spec.terrain.value_or(Terrain::path);
        if (!on_foot(leg.travel) || (terrain != Terrain::path && terrain != Terrain::rough_path))
            continue;
        double off_m = 0.0;
        std::optional<double> first_m;
        const int steps = static_cast<int>(leg.line.length_m() / sample_m);
        for (int step = 0; step <= steps; ++step) {
            const geo::MapPoint at = projection_.to_map(leg.line.at(step * sample_m));
            if (grid.nearest_m(at, same_place_m) < same_place_m)
                continue;
            off_m += sample_m;
            if (!first_m)
                first_m = leg.from_m + step * sample_m;
        }
        if (off_m >= off_path_from_m)
            tell(
                {Level::note,
                 "ground-off-path",
                 LegNumber::of_index(i),
                 format_both("No marked path of the layers runs along {} of this leg, first at {}; "
                             "its pace is planned as on a path.",
                             in_both(show_distance, std::min(off_m, leg.line.length_m())),
                             place_word(*first_m)),
                 format_both("along {}, first at {}",
                             in_both(show_distance, std::min(off_m, leg.line.length_m())),
                             place_word(*first_m))});
    }
}

/// What no layer knows is said once.
void LandFacts::unknown() {
    std::vector<std::string> missing;
    const bool afloat =
        std::ranges::any_of(route_.legs, [](const RouteLeg& leg) { return aboard(leg.travel); });
    const bool rapids = std::ranges::any_of(land_.features, [](const LandFeature& feature) {
        return feature.kind == LayerKind::rapid || feature.rapid;
    });
    if (afloat && !rapids)
        missing.emplace_back("rapids and falls");
    if (afloat && !land_.has(LayerKind::water))
        missing.emplace_back("the outlines of lakes");
    if (!land_.has(LayerKind::path) && !land_.has(LayerKind::road))
        missing.emplace_back("paths");
    if (!missing.empty())
        tell({Level::note,
              "ground-unknown",
              std::nullopt,
              fmt::format("The map's layers know nothing of {} around the route. That none is "
                          "drawn does not mean that none is there.",
                          fmt::join(missing, ", "))});
}

std::vector<Caution> LandFacts::told() {
    hazards();
    shores();
    streams();
    paths();
    unknown();
    return std::move(facts_);
}

} // namespace

std::vector<Caution> land_facts(const Route& route) {
    if (route.land == nullptr || route.legs.empty())
        return {};
    return LandFacts(route).told();
}

} // namespace tumpline::planner
