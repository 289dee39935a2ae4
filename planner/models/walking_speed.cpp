#include "planner/models/walking_speed.h"

#include "planner/models/walking_rules.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstddef>

namespace tumpline::planner {

namespace {

constexpr std::size_t walking_count = 20;

constexpr std::array<WalkingModel, walking_count> every_model = {
    WalkingModel::swiss_signpost,
    WalkingModel::naismith_langmuir,
    WalkingModel::langmuir_party,
    WalkingModel::tobler,
    WalkingModel::irmischer_clarke,
    WalkingModel::campbell_2019,
    WalkingModel::campbell_2019_p10,
    WalkingModel::campbell_2019_p20,
    WalkingModel::campbell_2019_p30,
    WalkingModel::campbell_2019_p40,
    WalkingModel::campbell_2019_p50,
    WalkingModel::campbell_2019_p60,
    WalkingModel::campbell_2019_p70,
    WalkingModel::campbell_2019_p80,
    WalkingModel::campbell_2019_p90,
    WalkingModel::sullivan_2020,
    WalkingModel::sullivan_2020_moderate,
    WalkingModel::sullivan_2020_high,
    WalkingModel::din_33466,
    WalkingModel::constant};

constexpr std::array<std::string_view, walking_count> walking_names = {
    "swiss-signpost",         "naismith-langmuir",  "langmuir-party",    "tobler",
    "irmischer-clarke",       "campbell-2019",      "campbell-2019-p10", "campbell-2019-p20",
    "campbell-2019-p30",      "campbell-2019-p40",  "campbell-2019-p50", "campbell-2019-p60",
    "campbell-2019-p70",      "campbell-2019-p80",  "campbell-2019-p90", "sullivan-2020",
    "sullivan-2020-moderate", "sullivan-2020-high", "din-33466",         "constant"};

constexpr double thirty_degrees = 0.57735026918962576; // tan 30
constexpr double forty_degrees = 0.83909963117727993;  // tan 40
constexpr double limit = 10.0;                         // beyond this, nobody walks at all

SlopeReach reach_of(WalkingModel model) {
    switch (model) {
    case WalkingModel::swiss_signpost:
        return {-0.40, 0.40}; // the standard's polynomial
    case WalkingModel::tobler:
        return {-thirty_degrees, forty_degrees}; // printed sample values
    case WalkingModel::irmischer_clarke:
        return {-0.50, 0.50};             // no range seen; the curves have reached their floor
    case WalkingModel::naismith_langmuir: // no range printed; walkers without use of hands
    case WalkingModel::langmuir_party:
    case WalkingModel::din_33466:
    case WalkingModel::campbell_2019: // steeper records were left out of the fit
    case WalkingModel::campbell_2019_p10:
    case WalkingModel::campbell_2019_p20:
    case WalkingModel::campbell_2019_p30:
    case WalkingModel::campbell_2019_p40:
    case WalkingModel::campbell_2019_p50:
    case WalkingModel::campbell_2019_p60:
    case WalkingModel::campbell_2019_p70:
    case WalkingModel::campbell_2019_p80:
    case WalkingModel::campbell_2019_p90:
    case WalkingModel::sullivan_2020: // about, as quoted
    case WalkingModel::sullivan_2020_moderate:
    case WalkingModel::sullivan_2020_high:
        return {-thirty_degrees, thirty_degrees};
    case WalkingModel::constant:
        return {-limit, limit}; // does not depend on slope
    }
    return {-limit, limit}; // not reached: every enumerator returns above
}

/// [DIN33466] on a single slope: the longer of the times for the way and for the climb, and half
/// of the shorter, seconds per metre on the map.
double din_33466_s_per_m(double slope) {
    const double h = 3600.0 / 4000.0; // 4 km/h
    const double v = slope >= 0.0 ? slope * (3600.0 / 300.0) : -slope * (3600.0 / 500.0);
    return std::max(h, v) + std::min(h, v) / 2.0;
}

/// [Langmuir1984] for parties: way and climb add, so steps and whole leg agree.
double langmuir_party_s_per_m(double slope) {
    return langmuir_party_s(
        {.length_m = 1.0, .ascent_m = std::max(0.0, slope), .descent_m = std::max(0.0, -slope)});
}

double within_reach_mps(WalkingModel model, double slope, Footing footing) {
    switch (model) {
    case WalkingModel::swiss_signpost:
        return 1.0 / swiss_signpost_s_per_m(slope);
    case WalkingModel::naismith_langmuir:
        return naismith_langmuir_smoothed_mps(slope);
    case WalkingModel::langmuir_party:
        return 1.0 / langmuir_party_s_per_m(slope);
    case WalkingModel::tobler:
        return tobler_1993_mps(slope);
    case WalkingModel::irmischer_clarke:
        return irmischer_clarke_2018_mps(slope, footing);
    case WalkingModel::campbell_2019:
        return campbell_2019_mps(slope, Percentile::p5);
    case WalkingModel::campbell_2019_p10:
        return campbell_2019_mps(slope, Percentile::p10);
    case WalkingModel::campbell_2019_p20:
        return campbell_2019_mps(slope, Percentile::p20);
    case WalkingModel::campbell_2019_p30:
        return campbell_2019_mps(slope, Percentile::p30);
    case WalkingModel::campbell_2019_p40:
        return campbell_2019_mps(slope, Percentile::p40);
    case WalkingModel::campbell_2019_p50:
        return campbell_2019_mps(slope, Percentile::p50);
    case WalkingModel::campbell_2019_p60:
        return campbell_2019_mps(slope, Percentile::p60);
    case WalkingModel::campbell_2019_p70:
        return campbell_2019_mps(slope, Percentile::p70);
    case WalkingModel::campbell_2019_p80:
        return campbell_2019_mps(slope, Percentile::p80);
    case WalkingModel::campbell_2019_p90:
        return campbell_2019_mps(slope, Percentile::p90);
    case WalkingModel::sullivan_2020:
        return sullivan_2020_mps(slope, CrewPace::low);
    case WalkingModel::sullivan_2020_moderate:
        return sullivan_2020_mps(slope, CrewPace::moderate);
    case WalkingModel::sullivan_2020_high:
        return sullivan_2020_mps(slope, CrewPace::high);
    case WalkingModel::din_33466:
        return 1.0 / din_33466_s_per_m(slope);
    case WalkingModel::constant:
        return 1.0;
    }
    return 1.0; // not reached: every enumerator returns above
}

/// Entry of one percentile of [Campbell2019].
constexpr ModelEntry campbell_entry(std::string_view name, std::string_view answers) {
    return {.family = "walking",
            .name = name,
            .answers = answers,
            .source = "Campbell2019",
            .covers = "slope -30 to +30 degrees; walkers, joggers and runners mixed, without packs",
            .why = "to walk faster than the 5th percentile by the same records; from the 50th on "
                   "people jog"};
}

} // namespace

std::span<const WalkingModel> walking_models() {
    return every_model;
}

double walking_speed_mps(WalkingModel model, double slope) {
    return walking_speed_mps(model, slope, Footing::on_path);
}

double walking_speed_mps(WalkingModel model, double slope, Footing footing) {
    assert(std::isfinite(slope));
    if (model == WalkingModel::constant)
        return 1.0;
    const double S = std::clamp(slope, -limit, limit);
    const SlopeReach reach = reach_of(model);
    const double edge = std::clamp(S, reach.steepest_down, reach.steepest_up);
    if (edge == S)
        return within_reach_mps(model, S, footing);
    if (model == WalkingModel::swiss_signpost)
        return within_reach_mps(model, S, footing); // the standard goes on at a constant rate
    return within_reach_mps(model, edge, footing) * (edge / S);
}

bool walking_model_knows_footing(WalkingModel model) {
    return model == WalkingModel::irmischer_clarke;
}

std::optional<SlopeReach> walking_slope_reach(WalkingModel model) {
    if (model == WalkingModel::constant)
        return std::nullopt;
    return reach_of(model);
}

bool walking_speed_covers(WalkingModel model, double slope) {
    const std::optional<SlopeReach> reach = walking_slope_reach(model);
    return !reach || (slope >= reach->steepest_down && slope <= reach->steepest_up);
}

std::optional<std::pair<double, double>> walking_load_reach_kg(WalkingModel model) {
    if (walking_model_includes_load(model))
        return std::pair{18.0, 39.0}; // [Sullivan2020]
    return std::nullopt;
}

std::optional<WalkingModel> walking_model(std::string_view name) {
    const auto* const found = std::find(walking_names.begin(), walking_names.end(), name);
    if (found == walking_names.end())
        return std::nullopt;
    return static_cast<WalkingModel>(found - walking_names.begin());
}

std::string_view walking_model_name(WalkingModel model) {
    return walking_names.at(static_cast<std::size_t>(model));
}

TimeBand walking_time_band() {
    // 1.3813 m/s over 1.6801 and over 0.9605 m/s on the level.
    return {.low = 0.82,
            .high = 1.44,
            .basis = "two walkers of three of a measured population under packs, its 17th to 83rd "
                     "percentile over its median [Sullivan2020]"};
}

bool walking_model_includes_load(WalkingModel model) {
    return model == WalkingModel::sullivan_2020 || model == WalkingModel::sullivan_2020_moderate ||
           model == WalkingModel::sullivan_2020_high;
}

double walking_model_load_ratio(WalkingModel model) {
    return walking_model_includes_load(model) ? 0.28 : 0.0;
}

std::span<const ModelEntry> walking_speed_entries() {
    static constexpr std::array<ModelEntry, walking_count> entries = {{
        {.family = "walking",
         .name = "swiss-signpost",
         .answers =
             "How fast do people walk a path of this slope, at the pace of the Swiss signposts?",
         .source = "SwissSignpost2006",
         .covers = "paths, slope -40 to +40 %; beyond, the standard's own straight lines",
         .is_default = true,
         .why =
             "smooth, tells up from down, keeps a sober 4.2 km/h on the level, and asks about the "
             "same effort on every climb"},
        {.family = "walking",
         .name = "naismith-langmuir",
         .answers =
             "How long does the British rule of 5 km and 600 m an hour give, with Langmuir's "
             "corrections for descent?",
         .source = "Langmuir1984",
         .covers = "fit walkers on easy ground, slope -58 to +58 %; a minimum time",
         .why = "where your party knows this rule; its jumps at 5 and 12 degrees are smoothed"},
        {.family = "walking",
         .name = "langmuir-party",
         .answers =
             "How long does Langmuir's rule for parties give, 4 km and 450 m of ascent an hour?",
         .source = "Langmuir1984",
         .covers = "parties on hill paths, slope -58 to +58 %; descent counts as level",
         .why = "for a larger party, or where its members have not walked together"},
        {.family = "walking",
         .name = "tobler",
         .answers = "How fast does Tobler's hiking function walk this slope?",
         .source = "Tobler1993",
         .covers = "slope -58 to +84 % (the printed sample values)",
         .why = "for comparison with maps and studies that use it"},
        {.family = "walking",
         .name = "irmischer-clarke",
         .answers =
             "How fast do people move, on the path and off it, who find their way with map and "
             "compass?",
         .source = "Irmischer2018",
         .covers = "wooded terrain on foot, map reading included, slope -50 to +50 % (our limit)",
         .why = "where one navigates; in forest and off the path its own second curve counts"},
        {.family = "walking",
         .name = "campbell-2019",
         .answers = "How fast do people with a fitness tracker hike this slope (5th percentile)?",
         .source = "CampbellPage2019",
         .covers = "slope -30 to +30 degrees; recreational trails",
         .why = "the largest set of records; without packs"},
        campbell_entry("campbell-2019-p10",
                       "How fast is the 10th percentile of people with a tracker?"),
        campbell_entry("campbell-2019-p20",
                       "How fast is the 20th percentile of people with a tracker?"),
        campbell_entry("campbell-2019-p30",
                       "How fast is the 30th percentile of people with a tracker?"),
        campbell_entry("campbell-2019-p40",
                       "How fast is the 40th percentile of people with a tracker?"),
        campbell_entry("campbell-2019-p50",
                       "How fast is the 50th percentile of people with a tracker?"),
        campbell_entry("campbell-2019-p60",
                       "How fast is the 60th percentile of people with a tracker?"),
        campbell_entry("campbell-2019-p70",
                       "How fast is the 70th percentile of people with a tracker?"),
        campbell_entry("campbell-2019-p80",
                       "How fast is the 80th percentile of people with a tracker?"),
        campbell_entry("campbell-2019-p90",
                       "How fast is the 90th percentile of people with a tracker? (its last "
                       "coefficient is unconfirmed)"),
        {.family = "walking",
         .name = "sullivan-2020",
         .answers =
             "How fast do people walk this slope with about 23 kg on their backs (low pace)?",
         .source = "Sullivan2020",
         .covers = "slope -30 to +30 degrees, loads of 18 to 39 kg, trails and dirt roads",
         .why =
             "the only one measured under heavy packs; the load's effect counts from 0.28 of body "
             "mass"},
        {.family = "walking",
         .name = "sullivan-2020-moderate",
         .answers = "How fast do fit crews walk this slope with about 23 kg, at their middle pace?",
         .source = "Sullivan2020",
         .covers =
             "slope -30 to +30 degrees, loads of 18 to 39 kg, trails and dirt roads; athletes",
         .why = "for parties as fit as crews in training, on a usual day of theirs"},
        {.family = "walking",
         .name = "sullivan-2020-high",
         .answers = "How fast do fit crews walk this slope with about 23 kg when in haste?",
         .source = "Sullivan2020",
         .covers =
             "slope -30 to +30 degrees, loads of 18 to 39 kg, trails and dirt roads; athletes",
         .why = "to see how fast such packs were carried at best; no plan for a day"},
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
    return entries;
}

} // namespace tumpline::planner
