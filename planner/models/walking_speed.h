#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

namespace tumpline::planner {

/// The curves of planner/models/walking_curves.h that a trip may be walked by.
enum class WalkingModel {
    swiss_signpost,    ///< the default
    naismith_langmuir, ///< smoothed at Langmuir's edges
    tobler,
    irmischer_clarke, ///< on the path
    campbell_2019,    ///< 5th percentile, the authors' average hiking pace
    sullivan_2020,    ///< the low pace, for people who are not athletes
    din_33466,        ///< the whole-leg rule, taken step by step
    constant          ///< the member's own level speed on any slope
};

/// Speed on the map (horizontal) of a walker without a pack on a path, m/s, before pace, load and
/// terrain are applied. `sullivan_2020` is the exception: its people carried packs (see
/// `walking_model_includes_load`). `constant` answers 1.0, for the caller to scale by the level
/// speed.
///
/// Finite and above zero for any finite slope. Beyond the range of a model the climb or descent per
/// hour is held at its value at the edge, so the speed on the map falls as 1/slope; that is also
/// how the Swiss standard continues. Slopes beyond +-10 (84 degrees) are taken as +-10.
[[nodiscard]] double walking_speed_mps(WalkingModel model, double slope);

/// Whether the slope lies in the range over which the model was fitted or is customary.
[[nodiscard]] bool walking_speed_covers(WalkingModel model, double slope);

[[nodiscard]] std::optional<WalkingModel> walking_model(std::string_view name);
[[nodiscard]] std::string_view walking_model_name(WalkingModel model);

/// Factors on a time: most parties are between `low` and `high` times the model's.
struct TimeBand {
    double low;
    double high;
};

/// How far a time of the model may be out before the walker's own pace is known. Where a source
/// prints an error the band is that; elsewhere it is 0.85 to 1.25, a judgement: route totals were
/// met within about 10 % [Irmischer2018], single stretches much worse [Wood2023], and people are
/// late more often than early.
[[nodiscard]] TimeBand walking_time_band(WalkingModel model);

/// Whether the speeds were measured under packs, so that the load's effect counts from there:
/// factor(l) / factor(walking_model_load_ratio).
[[nodiscard]] bool walking_model_includes_load(WalkingModel model);

/// Load over body mass at which the model's speeds hold: 0 without a pack, 0.28 for
/// `sullivan_2020` (22.7 kg on people of about 80 kg; their mass is our assumption).
[[nodiscard]] double walking_model_load_ratio(WalkingModel model);

/// What `tumpline models` says of each.
[[nodiscard]] std::span<const ModelEntry> walking_speed_entries();

} // namespace tumpline::planner
