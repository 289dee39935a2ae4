#pragma once

/// Speed on the map against slope, one function per published curve, each as its paper wrote it.
/// What the planner walks by, with its limits and its continuation beyond them, is
/// planner/models/walking_speed.h. Slope is rise over run, negative downhill; speeds are metres on
/// the map per second of moving time. All are finite for any finite slope.
namespace tumpline::planner {

/// Walking pace of the Swiss footpath signposts, seconds per metre.
///
///     min/km = sum C_i x^i, i = 0..15, x = 10 S, |S| < 0.40;  17 x uphill beyond;  -9 x downhill
///     beyond
///
/// S slope.
/// Source: [SwissSignpost2006]; coefficients at second hand, from five agreeing transcriptions.
/// Covers: |S| <= 0.40, paths; the two straight lines are the standard's own continuation.
/// Known bias: none published; the level pace of 4.2 km/h is a leisurely walker's.
/// At +-0.40 the continuation meets the polynomial to within 1.6 %; that small step is the
/// standard's and is kept.
[[nodiscard]] double swiss_signpost_s_per_m(double slope);

/// Hiking function of Tobler.
///
///     v = 6 exp(-3.5 |S + 0.05|)   km/h
///
/// Source: [Tobler1993], fitted to figures of Imhof; formula seen in restatements.
/// Covers: no range printed; sample values are tabulated from -30 to +40 degrees.
/// Known bias: too slow on steep ground; a cusp at the maximum.
[[nodiscard]] double tobler_1993_mps(double slope);

inline constexpr double tobler_1993_off_path = 0.6;   ///< factor on speed off the path [Tobler1993]
inline constexpr double tobler_1993_horseback = 1.25; ///< factor on speed on a horse [Tobler1993]

/// Hiking function of Marquez-Perez, Vallejo-Villalta and Alvarez-Francoso.
///
///     v = 4.8 exp(-5.3 |0.7 S + 0.03|)   km/h
///
/// Source: [MarquezPerez2017]; coefficients at second hand, where its bracket stands is from
/// memory. Covers: no range seen; paths in a natural park.
[[nodiscard]] double marquez_perez_2017_mps(double slope);

/// On a road or path, or off it, as [Irmischer2018] distinguishes.
enum class Footing { on_path, off_path };

/// Speed of cadets finding their way on foot in wooded terrain, map reading included.
///
///     on the path    v = 0.11 + exp(-(100 S + 5)^2 / 1800)        m/s
///     off the path   v = 0.11 + 0.67 exp(-(100 S + 2)^2 / 1800)   m/s
///
/// Source: [Irmischer2018], at second hand through [Campbell2019]. 1800 is 2 x 30^2; transcriptions
/// with 3600, or with |S|, are errors.
/// Covers: no range of slope seen; completion times were met within 10 %.
/// Known bias: slower than walking on a marked trail, because navigation is in it.
[[nodiscard]] double irmischer_clarke_2018_mps(double slope, Footing footing);

inline constexpr double irmischer_clarke_2018_women = 0.95; ///< factor on speed [Irmischer2018]

/// The curve of the Campbell family: Lorentz in the slope angle.
///
///     v = c / (pi b (1 + ((theta - a)/b)^2)) + d + e theta   m/s, theta in degrees
struct LorentzCurve {
    double a; ///< degrees: where the peak lies
    double b; ///< degrees: its half width
    double c; ///< its area
    double d; ///< m/s
    double e; ///< m/s per degree
};

[[nodiscard]] double lorentz_mps(const LorentzCurve& curve, double slope);

/// Percentiles of the speed of nearly 30 000 people's recorded walks and runs.
enum class Percentile { p5, p10, p20, p30, p40, p50, p60, p70, p80, p90 };

/// Speed at one percentile of walkers, joggers and runners mixed.
///
/// Source: [Campbell2019], deciles at second hand from its supplement; the 5th percentile, which
/// the authors point to as the average hiking pace, from [CampbellPage2019]. Covers: |theta| <= 30
/// degrees. Known bias: the 50th percentile is a jogger. The e of the 90th is out of pattern and
/// unconfirmed.
[[nodiscard]] double campbell_2019_mps(double slope, Percentile percentile);

/// Median speed of recorded hikes, slope up and down alike.
///
///     r = 77.6196 / (pi 22.4056 (1 + (s/22.4056)^2)) + 0.0464   m/s, s in degrees
///
/// Source: [CampbellFire2024], a symmetric refit of [Campbell2022]; at second hand.
/// Covers: |s| <= 30 degrees; paths.
[[nodiscard]] double campbell_fire_2024_mps(double slope);

/// Ground off the trail as a lidar survey sees it.
struct SurveyedGround {
    double vegetation_density; ///< share 0..1 of returns between 0.15 and 2.75 m
    double roughness_m;        ///< of the ground's surface
};

/// Speed off the trail, through vegetation and over rough ground.
///
///     v = 1.662 - 1.076 D - 9.011 R - 0.005191 theta - 0.001127 theta^2   m/s
///
/// Source: [Campbell2017], at second hand. Covers: |theta| < 15 degrees, 100 m transects.
/// Departs: never below zero, where the straight line would be.
[[nodiscard]] double campbell_2017_mps(double slope, const SurveyedGround& ground);

/// Speed off the trail, the later study.
///
///     v = 147.362 / (pi 26.315 (1 + ((s + 2.320)/26.315)^2)) / (1 + 15.265 D + 16.505 R)   m/s
///
/// Source: [CampbellCutler2024], at second hand. Covers: |s| <= 30 degrees. RMSE 0.168 m/s (16 %).
[[nodiscard]] double campbell_cutler_2024_mps(double slope, const SurveyedGround& ground);

enum class CrewPace { low, moderate, high };

/// Fire crews in training with 18 to 39 kg (mean 22.7 kg) on their backs; low, moderate and high
/// are the 16.7th, 50th and 83.3rd percentiles. Lorentz form.
///
/// Source: [Sullivan2020], coefficients at second hand; its printed times are reproduced.
/// Covers: |theta| <= 30 degrees, trails and dirt roads, rested athletes in groups.
/// Known bias: fit people; cross-validated mean error 0.172, 0.081, 0.152 m/s.
[[nodiscard]] double sullivan_2020_mps(double slope, CrewPace pace);

/// Speed on paved roads, from 88 000 km of tracks.
///
///     v = exp(1.580 - 0.00389 phi - 0.00726 theta - 0.00218 theta^2)   km/h
///
/// phi slope of the hillside, theta slope walked, degrees; here phi = |theta|, straight up or down.
/// Source: [Wood2023], paved-road row only, at second hand. Covers: about |theta| <= 18 degrees.
/// Known bias: RMSE of a segment 1.10 km/h, R2 0.09: slope explains little of what people do.
[[nodiscard]] double wood_2023_paved_mps(double slope);

/// The same with the hillside's own slope, where the path traverses it.
[[nodiscard]] double wood_2023_paved_mps(double slope, double hill_slope);

/// Naismith's rule as a speed, with Langmuir's corrections for descent.
///
///     v = 1/(0.72 + 6 tan theta)   uphill         1/0.72             0 to -5 degrees
///         1/(0.72 + 2 tan theta)   -5 to -12      1/(0.72 - 2 tan theta)   steeper
///
/// Source: [Naismith1892], [Langmuir1984], in the form of [Campbell2019], at second hand.
/// Known bias: as written it jumps from 3.39 to 0.87 m/s at -12 degrees.
[[nodiscard]] double naismith_langmuir_mps(double slope);

/// The same without its jumps: the pace runs straight from -4.5 to -5.5 degrees and from -10 to
/// -14 degrees, so that a step of the ground a little above or below the edge is walked alike.
/// Departs: inside those two bands only.
[[nodiscard]] double naismith_langmuir_smoothed_mps(double slope);

} // namespace tumpline::planner
