#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

namespace tumpline::planner {

/// What walking with a load costs. One struct for the whole family, so that models can be swapped.
struct Carrying {
    double body_kg;
    double load_kg;   ///< carried and worn; clothes and boots count
    double speed_mps; ///< over the ground
    double slope;     ///< rise over run along the path; negative downhill
    double terrain;   ///< factor of the ground, 1 on a made surface (docs/models/terrain.md)
    double resting_w; ///< of this body, from planner/models/resting_energy.h
};

/// Metabolic power of walking under a load after LCDA backpacking, in watts, rest included.
///
///     M = M_rest + [0.19 + eta (1.78 S^0.58 + 0.27 S^4 + M_grade)] (1 + 1.96 l^1.36)   W/kg body
///     M_grade = 0.34 S G (1 - 1.05^(1 - 1.1^(G + 32)))
///
/// with S speed [m/s], G grade [percent], eta terrain, l load over body mass.
/// Source: [Looney2022], equation at second hand; its grade term from [Looney2019].
/// Covers: load up to 0.66 of body mass, 0.45 to 1.97 m/s, slope -0.40 to 0.45.
/// Known bias: -0.08 +- 0.59 W/kg. The inner base is 1.1 in most transcriptions and 1.11 in one: up
/// to 8.5 % on descents near -10 %.
[[nodiscard]] double lcda_backpacking_2022_w(const Carrying& walk);

/// The multiplier of the load in it, 1 + 1.96 l^1.36.
[[nodiscard]] double lcda_backpacking_2022_load(double load_ratio);

/// Metabolic rate of walking without a load after LCDA, W per kg of body, rest included.
///
///     EE = 1.44 + 1.94 S^0.43 + 0.24 S^4 + 0.34 S G (1 - 1.05^(1 - 1.1^(G + 32)))
///
/// Source: [Looney2019]. Covers: up to 1.96 m/s, slope -0.40 to 0.45.
/// Known bias: level -0.02 +- 0.20, graded 0.09 +- 0.40 W/kg.
[[nodiscard]] double lcda_walking_2019_w_per_kg(double speed_mps, double slope);

/// Metabolic power of walking on level ground or uphill, in watts, rest included.
///
///     M = 1.5 W + 2.0 (W + L)(L/W)^2 + eta (W + L)(1.5 V^2 + 0.35 V G)
///
/// with W body, L load [kg], V speed [m/s], G grade [percent], eta terrain.
/// Source: [Pandolf1977].
/// Covers: load up to 70 kg, standing to 2 m/s, slope >= 0; downhill it falls below zero.
/// Known bias: too low under heavy loads [Drain2017], [Looney2022].
[[nodiscard]] double pandolf_1977_w(const Carrying& walk);

/// What the descent takes off, in watts (may be negative).
///
///     CF = eta [G (W + L) V / 3.5 - (W + L)(G + 6)^2 / W + (25 - V^2)],   M = Pandolf - CF for G <
///     0
///
/// Source: [Santee2003], from memory and one transcription. Covers: slope -0.12 to 0.
[[nodiscard]] double santee_2003_correction_w(const Carrying& walk);

/// [Pandolf1977] uphill and on the level, corrected by [Santee2003] downhill.
/// Departs: grades below -12 percent count as -12, where the correction runs away, and the result
/// is never below standing under the same load, 1.5 W + 2.0 (W + L)(L/W)^2.
[[nodiscard]] double pandolf_santee_w(const Carrying& walk);

/// Oxygen uptake of walking under a load by minimum mechanics, mL per minute and kg of body.
///
///     VO2 = 3.05 + ((W + L)/W) [0.32 G + 3.28 + (1 + 0.19 G) 2.66 V^2]
///     downhill                 0.73 (3.28 + 2.66 V^2) in the bracket
///
/// Source: [Ludlow2017], coefficients at second hand; of two readings of the first bracket the one
/// that meets the abstract's highest mean.
/// Covers: 0.4 to 1.6 m/s, -6 to +9 degrees, loads up to 0.31 of body mass, treadmill.
/// As printed it steps down by a quarter from the level to the gentlest descent.
[[nodiscard]] double ludlow_weyand_2017_ml_per_kg_min(const Carrying& walk);

/// The same in watts, 1 L of oxygen as 5 kcal.
/// Departs: the ground's factor multiplies the bracket; the paper's people walked on a treadmill.
[[nodiscard]] double ludlow_weyand_2017_w(const Carrying& walk);

/// Cost of walking on a slope, J per kg and metre along it, without a load.
///
///     C = 280.5 i^5 - 58.7 i^4 - 76.8 i^3 + 51.9 i^2 + 19.6 i + 2.5
///
/// Source: [Minetti2002]. Covers: i -0.45 to 0.45; beyond, the value at the edge.
/// Known bias: half too high on the level, where 1.64 was measured.
[[nodiscard]] double minetti_2002_j_per_kg_m(double slope);

/// Oxygen uptake of walking, mL per minute and kg.
///
///     VO2 = 3.5 + 0.1 v + 1.8 v g
///
/// v speed [m/min], g grade as a fraction, not below 0. Source: [ACSM]. No descent, no load.
/// Covers: from 50 m/min. Departs: a descent counts as level.
[[nodiscard]] double acsm_walking_ml_per_kg_min(double speed_mps, double slope);

/// A day's walk as a whole.
struct DayWalk {
    double time_s; ///< with its rests
    double length_m;
    double ascent_m;
    double descent_m;
    double body_kg;
    double pack_kg;
};

/// Energy of a day's walk, joules, for a check of the sums by an independent rule.
///
///     E = (1.8 t + 0.3 d + 10 up + 0.6 down)(W + L)   kcal; hours and kilometres
///
/// Source: [Yamamoto2006], at second hand. Covers: good paths without snow, fair weather.
/// Runs 10 to 30 % above LCDA.
[[nodiscard]] double yamamoto_course_j(const DayWalk& day);

/// Sweat of the day, litres, by the simple form: 5 mL per kg of body and pack and hour.
[[nodiscard]] double yamamoto_sweat_l(const DayWalk& day);

enum class CarriageModel {
    lcda_backpacking_2022,
    pandolf_santee,
    ludlow_weyand_2017,
    compendium_met
};

/// Metabolic power of walking, in watts, rest included, by any of the models. Finite for any finite
/// walk of people (masses above zero, speeds below 1000 m/s).
/// `compendium_met` knows neither speed nor slope nor ground: 7 MET under a pack of a tenth of body
/// mass and more (code 17010), 6 MET below (17080).
[[nodiscard]] double carriage_w(CarriageModel model, const Carrying& walk);

/// Range over which a model was measured; what it does not limit is empty.
struct CarriageRange {
    std::optional<double> most_load_ratio; ///< load over body mass
    std::optional<double> most_load_kg;
    std::optional<double> least_speed_mps, most_speed_mps;
    std::optional<double> steepest_down, steepest_up; ///< rise over run, the first negative
    std::optional<double> most_terrain;
};

[[nodiscard]] CarriageRange carriage_range(CarriageModel model);

/// Whether `walk` lies in the range over which the model was measured.
[[nodiscard]] bool carriage_covers(CarriageModel model, const Carrying& walk);

[[nodiscard]] std::optional<CarriageModel> carriage_model(std::string_view name);
[[nodiscard]] std::string_view carriage_model_name(CarriageModel model);

/// Sums over the steps of a stretch from which LCDA backpacking gives its energy at any common
/// factor on the speeds, without walking the steps again.
struct LcdaSums {
    double length_m = 0.0;
    double time_s = 0.0; ///< sum ds/v
    double s042 = 0.0;   ///< sum ds v^-0.42
    double s3 = 0.0;     ///< sum ds v^3
    double grade = 0.0;  ///< sum ds G (1 - 1.05^(1 - 1.1^(G + 32)))

    void add(double step_m, double slope, double base_speed_mps);
    LcdaSums& operator+=(const LcdaSums& other);
};

/// Energy, joules, of the summed steps walked at `speed_scale` times their base speeds; speed and
/// slope of `who` are ignored. Equals the sum of `lcda_backpacking_2022_w` times the time of each
/// step, but for rounding. `speed_scale` is above 0.
[[nodiscard]] double lcda_energy_j(const LcdaSums& sums, double speed_scale, const Carrying& who);

[[nodiscard]] std::span<const ModelEntry> load_carriage_entries();

} // namespace tumpline::planner
