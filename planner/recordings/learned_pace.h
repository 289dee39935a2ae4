#pragma once

#include "planner/models/walking_speed.h"
#include "planner/recordings/recorded_motion.h"

#include <cstddef>
#include <optional>
#include <vector>

/// What recordings tell of one person's pace, for the keys of a trip file.
namespace tumpline::planner {

/// A figure, how much it varied, and what stands behind it.
struct LearnedFigure {
    double value = 0.0; ///< median by time
    double low = 0.0;   ///< a sixth of the time was below
    double high = 0.0;  ///< a sixth of the time was above
    double hours = 0.0;
    std::size_t samples = 0;
};

/// Walking on slopes between two bounds, rise over run.
struct SlopePace {
    double from = 0.0;
    double to = 0.0;
    LearnedFigure speed_mps; ///< on the map
    double climb_mps = 0.0;  ///< median height won or lost per second on the move; up is positive
};

/// How another model would fit: its factor, and how far single stretches lie from it.
struct ModelFit {
    WalkingModel model = WalkingModel::swiss_signpost;
    double pace = 1.0;
    double scatter = 0.0;      ///< half of (high - low) over the median
    std::optional<double> off; ///< mean share by which it misses stretches that it was not fitted
                               ///< to; empty where there are too few
};

/// The model that fits best out of sample beside another one.
struct ModelAdvice {
    ModelFit best;
    ModelFit other;      ///< the model asked for; the next best, if that is the best itself
    double margin = 0.0; ///< how much more the other is off
    bool clear = false;  ///< the margin is half a percent and twice its standard error
};

/// Factors that were at work while recording, for the plan applies them again.
struct RecordedUnder {
    double load_factor = 1.0;    ///< on the speed, by the load's effect
    double terrain_factor = 1.0; ///< on the time
};

struct LearnedPace {
    WalkingModel model = WalkingModel::swiss_signpost;
    std::optional<LearnedFigure> pace; ///< factor on the model's speed, per stretch of ten minutes
    std::optional<LearnedFigure> level_speed_mps; ///< without the factors of RecordedUnder; none
                                                  ///< from slopes alone
    std::vector<SlopePace> slopes;                ///< from down to up, those that were walked
    std::vector<ModelFit> fits;                   ///< every model, the best first
    std::optional<ModelAdvice> advice;            ///< empty with less than an hour of stretches
    std::optional<LearnedFigure> calm_speed_mps;
    std::optional<LearnedFigure> flowing_speed_mps; ///< the current included: no pace of a person's
    std::optional<LearnedFigure> boots_to_boat_s; ///< low and high are the shortest and the longest
    std::optional<LearnedFigure> boat_to_boots_s;
    std::optional<LearnedFigure> landing_s;
    std::optional<LearnedFigure> rest_per_hour_s; ///< halts of up to 30 minutes; none from less
                                                  ///< than an hour on the move
    double halted_s = 0.0;                        ///< set aside, all halts
    double still_ends_s = 0.0;                    ///< of these before a start or after an end
    bool heights = true;                          ///< whether heights are known on foot
    bool level_walked = true; ///< ten minutes or more on foot within 3 % of the level
};

/// Learns from recordings. Stretches of ten minutes on the move are one sample each; the median by
/// time is the figure, so that a stretch of which something is wrong moves little. `constant` is
/// scaled to the level speed. Source: our own rules; docs/pace.md.
[[nodiscard]] LearnedPace
learned_pace(const Recorded& recorded, WalkingModel model, const RecordedUnder& under = {});

/// Seconds the model gives for a part of a profile, at a pace of 1; level where no height is known.
[[nodiscard]] double
model_time_s(WalkingModel model, const geo::Profile& profile, const Window& window);

} // namespace tumpline::planner
