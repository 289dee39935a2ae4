#include "planner/models/walking_speed.h"

#include "planner/models/walking_curves.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr std::size_t model_count = 8;

constexpr std::array<std::string_view, model_count> names = {"swiss-signpost",
                                                             "naismith-langmuir",
                                                             "tobler",
                                                             "irmischer-clarke",
                                                             "campbell-2019",
                                                             "sullivan-2020",
                                                             "din-33466",
                                                             "constant"};

/// Slopes over which a model holds; beyond them the vertical rate is held.
struct Reach {
    double steepest_down; // negative
    double steepest_up;
};

constexpr double thirty_degrees = 0.57735026918962576; // tan 30
constexpr double limit = 10.0;                         // beyond this, nobody walks at all

constexpr std::array<Reach, model_count> reaches = {{
    {-0.40, 0.40},                          // the standard's polynomial
    {-thirty_degrees, thirty_degrees},      // no range printed; walkers without use of hands
    {-thirty_degrees, 0.83909963117727993}, // printed sample values, -30 to +40 degrees
    {-0.50, 0.50},                          // no range seen; the curve has reached its floor
    {-thirty_degrees, thirty_degrees},      // steeper records were left out of the fit
    {-thirty_degrees, thirty_degrees},      // about, as quoted
    {-thirty_degrees, thirty_degrees},      // no range printed; walkers without use of hands
    {-limit, limit},                        // does not depend on slope
}};

/// [DIN33466] on a single slope: the longer of the times for the way and for the climb, and half
/// of the shorter, seconds per metre on the map.
double din_33466_s_per_m(double slope) {
    const double h = 3600.0 / 4000.0; // 4 km/h
    const double v = slope >= 0.0 ? slope * (3600.0 / 300.0) : -slope * (3600.0 / 500.0);
    return std::max(h, v) + std::min(h, v) / 2.0;
}

double within_reach_mps(WalkingModel model, double slope) {
    switch (model) {
    case WalkingModel::swiss_signpost:
        return 1.0 / swiss_signpost_s_per_m(slope);
    case WalkingModel::naismith_langmuir:
        return naismith_langmuir_smoothed_mps(slope);
    case WalkingModel::tobler:
        return tobler_1993_mps(slope);
    case WalkingModel::irmischer_clarke:
        return irmischer_clarke_2018_mps(slope, Footing::on_path);
    case WalkingModel::campbell_2019:
        return campbell_2019_mps(slope, Percentile::p5);
    case WalkingModel::sullivan_2020:
        return sullivan_2020_mps(slope, CrewPace::low);
    case WalkingModel::din_33466:
        return 1.0 / din_33466_s_per_m(slope);
    case WalkingModel::constant:
        return 1.0;
    }
    return 1.0; // not reached: every enumerator returns above
}

constexpr std::array<ModelEntry, model_count> entries = {{
    {.family = "walking",
     .name = "swiss-signpost",
     .answers = "How fast do people walk a path of this slope, at the pace of the Swiss signposts?",
     .source = "SwissSignpost2006",
     .covers = "paths, slope -40 to +40 %; beyond, the standard's own straight lines",
     .is_default = true,
     .why = "smooth, tells up from down, keeps a sober 4.2 km/h on the level, and asks about the "
            "same effort on every climb"},
    {.family = "walking",
     .name = "naismith-langmuir",
     .answers = "How long does the British rule of 5 km and 600 m an hour give, with Langmuir's "
                "corrections for descent?",
     .source = "Langmuir1984",
     .covers = "fit walkers on easy ground, slope -58 to +58 %; a minimum time",
     .why = "where your party knows this rule; its jumps at 5 and 12 degrees are smoothed"},
    {.family = "walking",
     .name = "tobler",
     .answers = "How fast does Tobler's hiking function walk this slope?",
     .source = "Tobler1993",
     .covers = "slope -58 to +84 % (the printed sample values)",
     .why = "for comparison with maps and studies that use it"},
    {.family = "walking",
     .name = "irmischer-clarke",
     .answers = "How fast do people move who find their way with map and compass?",
     .source = "Irmischer2018",
     .covers = "wooded terrain on foot, map reading included, slope -50 to +50 % (our limit)",
     .why = "where one navigates; add the ground's own factor off the path"},
    {.family = "walking",
     .name = "campbell-2019",
     .answers = "How fast do people with a fitness tracker hike this slope (5th percentile)?",
     .source = "CampbellPage2019",
     .covers = "slope -30 to +30 degrees; recreational trails",
     .why = "the largest set of records; without packs"},
    {.family = "walking",
     .name = "sullivan-2020",
     .answers = "How fast do people walk this slope with about 23 kg on their backs (low pace)?",
     .source = "Sullivan2020",
     .covers = "slope -30 to +30 degrees, loads of 18 to 39 kg, trails and dirt roads",
     .why = "the only one measured under heavy packs; the load's effect counts from 0.28 of body "
            "mass"},
    {.family = "walking",
     .name = "din-33466",
     .answers = "How long does the rule of the German-speaking Alpine clubs give?",
     .source = "DIN33466",
     .covers = "mountain paths, slope -58 to +58 %; a rule for whole legs, taken step by step",
     .why = "where you want the time that Alpine signs and guidebooks give"},
    {.family = "walking",
     .name = "constant",
     .answers = "How long does it take at your own level speed, whatever the slope?",
     .source = "Arithmetic",
     .covers = "level routes",
     .why = "for a check by hand, or where you know your speed on this very trail"},
}};

} // namespace

double walking_speed_mps(WalkingModel model, double slope) {
    assert(std::isfinite(slope));
    if (model == WalkingModel::constant)
        return 1.0;
    const double S = std::clamp(slope, -limit, limit);
    const Reach& reach = reaches.at(static_cast<std::size_t>(model));
    const double edge = std::clamp(S, reach.steepest_down, reach.steepest_up);
    if (edge == S)
        return within_reach_mps(model, S);
    if (model == WalkingModel::swiss_signpost)
        return within_reach_mps(model, S); // the standard itself goes on at a constant rate
    return within_reach_mps(model, edge) * (edge / S);
}

bool walking_speed_covers(WalkingModel model, double slope) {
    if (model == WalkingModel::constant)
        return true;
    const Reach& reach = reaches.at(static_cast<std::size_t>(model));
    return slope >= reach.steepest_down && slope <= reach.steepest_up;
}

std::optional<WalkingModel> walking_model(std::string_view name) {
    const auto* const found = std::find(names.begin(), names.end(), name);
    if (found == names.end())
        return std::nullopt;
    return static_cast<WalkingModel>(found - names.begin());
}

std::string_view walking_model_name(WalkingModel model) {
    return names.at(static_cast<std::size_t>(model));
}

TimeBand walking_time_band(WalkingModel model) {
    switch (model) {
    case WalkingModel::irmischer_clarke:
        return {.low = 0.90, .high = 1.10}; // completion times within 10 % [Irmischer2018]
    case WalkingModel::sullivan_2020:
        // mean error 0.172 m/s on 0.96 m/s [Sullivan2020]: 0.96/(0.96 +- 0.172)
        return {.low = 0.85, .high = 1.22};
    case WalkingModel::swiss_signpost:
    case WalkingModel::naismith_langmuir:
    case WalkingModel::tobler:
    case WalkingModel::campbell_2019:
    case WalkingModel::din_33466:
    case WalkingModel::constant:
        return {.low = 0.85, .high = 1.25};
    }
    return {.low = 0.85, .high = 1.25}; // not reached: every enumerator returns above
}

bool walking_model_includes_load(WalkingModel model) {
    return model == WalkingModel::sullivan_2020;
}

double walking_model_load_ratio(WalkingModel model) {
    return model == WalkingModel::sullivan_2020 ? 0.28 : 0.0;
}

std::span<const ModelEntry> walking_speed_entries() {
    return entries;
}

} // namespace tumpline::planner
