#pragma once

#include <optional>

/// Rules for the time of a whole walk from its totals, as hill walkers have them. The planner walks
/// step by step (planner/models/walking_speed.h); these stand beside it for comparison and for
/// checking by hand. Times are seconds of moving time; none of the rules includes rests.
namespace tumpline::planner {

/// What the rules need to know of a walk. Lengths are those on the map.
struct WalkTotals {
    double length_m;
    double ascent_m;
    double descent_m;
};

/// An hour for 5 km and an hour for 600 m of ascent.
///
///     t_h = d/5 + a/600   d in km, a in m
///
/// Source: [Naismith1892], the usual metric form. Covers: fit walkers on easy ground; a minimum
/// time. Departs from the original of 1892 by +3.6 % of speed on the level and -1.6 % on climbs.
[[nodiscard]] double naismith_metric_s(const WalkTotals& walk);

/// The original: an hour for 3 miles, and an hour for 2000 feet of ascent.
///
///     t_h = d_mi/3 + a_ft/2000
///
/// Source: [Naismith1892].
[[nodiscard]] double naismith_1892_s(const WalkTotals& walk);

/// Descent by its steepness; the rest of it, below 5 degrees, costs and saves nothing.
struct LangmuirDescent {
    double moderate_m; ///< from 5 to 12 degrees
    double steep_m;    ///< above 12 degrees
};

/// Naismith with ten minutes off for 300 m of moderate descent, and ten on for 300 m of steep.
///
///     t_h = d/5 + up/600 - down(5..12)/1800 + down(>12)/1800
///
/// Source: [Langmuir1984]. Not below zero.
[[nodiscard]] double langmuir_1984_s(const WalkTotals& walk, const LangmuirDescent& descent);

/// For a party: 4 km/h, and an hour for 450 m of ascent.
///
///     t_h = d/4 + up/450
///
/// Source: [Langmuir1984], at second hand.
[[nodiscard]] double langmuir_party_s(const WalkTotals& walk);

/// Level speed on paths, tracks and roads, and on other ground [Aitken1977].
inline constexpr double aitken_1977_path_mps = 5.0 / 3.6;
inline constexpr double aitken_1977_other_mps = 4.0 / 3.6;

/// What makes a party fall behind its fitness by Tranter.
struct TranterBurden {
    bool load_20_kg;
    bool night_or_headwind;
    int bad_footing_levels; ///< 0, or one or more
};

/// Naismith's time corrected for fitness by Tranter's table. `fitness_s` is the time for climbing
/// 300 m over 800 m, unhurried: 15, 20, 25, 30, 40 or 50 minutes, taken as the next slower row
/// between them; each burden drops one row.
/// Empty: the table leaves the cell blank (not to be attempted), or it lies off the table. Between
/// columns the row is interpolated straight; below two hours Naismith it runs straight to zero.
/// Source: [Tranter1970]. One cell (15 minutes, 5 h) is from memory, the copy seen being
/// misprinted.
[[nodiscard]] std::optional<double> tranter_s(double naismith_s, double fitness_s);

/// The same with burdens. Empty too where they drop below the last row.
[[nodiscard]] std::optional<double>
tranter_s(double naismith_s, double fitness_s, const TranterBurden& burden);

/// Metres on the level that one metre of climb is worth: Naismith's 3 miles per 2000 feet, and what
/// fell records gave for men and walkers, and for women [Scarf2007].
inline constexpr double scarf_naismith = 7.92;
inline constexpr double scarf_men = 8.0;
inline constexpr double scarf_women = 10.0;

/// Equivalent length on the level, metres.
///
///     x = d + alpha a
///
/// Source: [Scarf2007]. No term for descent.
[[nodiscard]] double scarf_2007_m(const WalkTotals& walk, double alpha);

/// Rule of thumb of the Swiss footpath association.
///
///     t_h = d/4 + up/400 + down/800
///
/// Source: [SwissRuleOfThumb]. Known bias: half as much again as the association's own polynomial.
[[nodiscard]] double swiss_rule_of_thumb_s(const WalkTotals& walk);

/// The same without the descent, as the Swiss Alpine Club teaches it [SwissRuleOfThumb].
[[nodiscard]] double swiss_training_rule_s(const WalkTotals& walk);

/// Effort kilometres; `walk.descent_m` is the descent steeper than 20 % only.
///
///     Lkm = km + up/100 + steep_down/150
///
/// Source: [SwissYouthSport].
[[nodiscard]] double swiss_effort_km(const WalkTotals& walk);

/// Rule of DIN 33466 for a whole leg.
///
///     h = d/4;  v = up/300 + down/500;  t = max(h, v) + min(h, v)/2
///
/// Source: [DIN33466]. Taken over steps instead of the whole leg, as the walking model `din-33466`
/// must, it gives a little more.
[[nodiscard]] double din_33466_s(const WalkTotals& walk);

} // namespace tumpline::planner
