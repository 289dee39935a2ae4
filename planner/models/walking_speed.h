#pragma once

#include "planner/models/model_entry.h"
#include "planner/models/time_band.h"
#include "planner/models/walking_curves.h"

#include <optional>
#include <span>
#include <string_view>
#include <utility>

namespace tumpline::planner {

/// The curves of planner/models/walking_curves.h that a trip may be walked by.
enum class WalkingModel {
    swiss_signpost,    ///< the default
    naismith_langmuir, ///< smoothed at Langmuir's edges
    langmuir_party,    ///< his rule for parties, taken step by step
    tobler,
    irmischer_clarke, ///< on the path and off it
    campbell_2019,    ///< 5th percentile, the authors' average hiking pace
    campbell_2019_p10,
    campbell_2019_p20,
    campbell_2019_p30,
    campbell_2019_p40,
    campbell_2019_p50,
    campbell_2019_p60,
    campbell_2019_p70,
    campbell_2019_p80,
    campbell_2019_p90,
    sullivan_2020, ///< the low pace, for people who are not athletes
    sullivan_2020_moderate,
    sullivan_2020_high,
    din_33466, ///< the whole-leg rule, taken step by step
    constant   ///< the member's own level speed on any slope
};

/// Every walking model, in the order of the enumerators.
[[nodiscard]] std::span<const WalkingModel> walking_models();

/// Speed on the map (horizontal) of a walker without a pack on a path, m/s, before pace, load and
/// terrain are applied. The paces of `sullivan_2020` are the exception: their people carried packs
/// (see `walking_model_includes_load`). `constant` answers 1.0, for the caller to scale by the
/// level speed.
///
/// Finite and above zero for any finite slope. Beyond the range of a model the climb or descent per
/// hour is held at its value at the edge, so the speed on the map falls as 1/slope; that is also
/// how the Swiss standard continues. Slopes beyond +-10 (84 degrees) are taken as +-10.
/// Covers: `walking_slope_reach`. Known bias: that of each curve, in
/// planner/models/walking_curves.h.
[[nodiscard]] double walking_speed_mps(WalkingModel model, double slope);

/// The same on or off the path; only models that `walking_model_knows_footing` tell them apart.
[[nodiscard]] double walking_speed_mps(WalkingModel model, double slope, Footing footing);

/// Whether the model has a curve of its own for walking off the path, which then stands in place of
/// the ground's factor on time.
[[nodiscard]] bool walking_model_knows_footing(WalkingModel model);

/// Slopes over which a model was fitted or is customary; beyond them the vertical rate is held.
struct SlopeReach {
    double steepest_down; ///< negative
    double steepest_up;
};

/// Empty for `constant`, which does not ask for the slope.
[[nodiscard]] std::optional<SlopeReach> walking_slope_reach(WalkingModel model);

/// Whether the slope lies in the range over which the model was fitted or is customary.
[[nodiscard]] bool walking_speed_covers(WalkingModel model, double slope);

/// Least and most load, kilograms, of the people whom the model was fitted to; empty where the
/// source names none.
[[nodiscard]] std::optional<std::pair<double, double>> walking_load_reach_kg(WalkingModel model);

[[nodiscard]] std::optional<WalkingModel> walking_model(std::string_view name);
[[nodiscard]] std::string_view walking_model_name(WalkingModel model);

/// How far times of people lie apart whose own pace is not known, whatever the model: the 16.7th
/// and the 83.3rd percentile of a measured population over its median, on the level. Between them
/// are two walkers of three. Source: [Sullivan2020], 44 walks with 18 to 39 kg. Known bias: fit
/// crews; between any party's members the spread is rather wider.
[[nodiscard]] TimeBand walking_time_band();

/// Whether the speeds were measured under packs, so that the load's effect counts from there:
/// factor(l) / factor(walking_model_load_ratio).
[[nodiscard]] bool walking_model_includes_load(WalkingModel model);

/// Load over body mass at which the model's speeds hold: 0 without a pack, 0.28 for the paces of
/// `sullivan_2020` (22.7 kg on people of about 80 kg; their mass is our assumption).
[[nodiscard]] double walking_model_load_ratio(WalkingModel model);

/// What `tumpline models` says of each.
[[nodiscard]] std::span<const ModelEntry> walking_speed_entries();

} // namespace tumpline::planner
