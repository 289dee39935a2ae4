#pragma once

#include "planner/models/model_entry.h"

#include <span>
#include <string_view>

namespace tumpline::planner {

/// What one kind of ground does to time and to effort. Known bias: where a study gives a range
/// (brush 1 to 4) it is one number in it; no scree, fords or fallen timber.
struct Ground {
    std::string_view name; ///< as in the trip file: "rough-path"
    double time_factor;    ///< on the time a path of the same slope takes
    double eta;            ///< terrain coefficient of the energy models, 1 on a made surface
    std::string_view
        source; ///< key in docs/references.md; what is ours is told in docs/models/terrain.md
};

/// Every kind of ground, from `path` on.
[[nodiscard]] std::span<const Ground> grounds();

/// One of `path`, `rough-path`, `forest`, `off-path`, `brush`, `bog`, `sand`, `snow`.
/// Throws: std::out_of_range for any other name; the trip file's reader lets none through.
[[nodiscard]] const Ground& ground(std::string_view name);

/// Terrain coefficient of snow in which each step sinks in by `footprint_m`.
///
///     eta = 1.30 + 0.082 h
///
/// h depth of a footprint, cm. Source: [PandolfSnow1976], from memory; it meets the three printed
/// coefficients of soft snow to 0.1.
/// Covers: 0 to 0.45 m. Deeper counts as 0.45 m: there one wades, and needs snowshoes.
[[nodiscard]] double snow_eta(double footprint_m);
inline constexpr double deepest_footprint_m = 0.45;

/// Terrain coefficient of snow of a given depth and density.
///
///     z = h (1 - rho/1.186);  eta = 0.0005 z^3 + 0.0001 z^2 + 0.1072 z + 1.2604
///
/// h depth, cm; rho density, g/cm3 (both units inferred). Source: [ErdcSnow].
struct SnowCover {
    double depth_m;
    double density_kg_m3;
};

[[nodiscard]] double erdc_snow_eta(const SnowCover& snow);

/// How deep each step sinks into snow: z above, of which the abstract says no more than that; taken
/// as a depth, never more than the snow's own. Source: [ErdcSnow].
[[nodiscard]] double sinking_m(const SnowCover& snow);
/// Of snow that has settled for some days; common practice, no source. New snow has 50 to 150, old
/// wet snow 400 to 500.
inline constexpr double settled_snow_kg_m3 = 300.0;

/// Factor on time of ground with this coefficient if one keeps to the effort of 1.39 m/s on a path
/// (eta 1.1). Source: [EqualEffort], derived. Covers: eta 1 to 5, the most that snow gives here; 1
/// or less is 1. Used where no study of speed was found: bog, sand, snow.
[[nodiscard]] double equal_effort_time_factor(double eta);

/// Factor on time in the dark, with a lamp.
/// On `path` and `rough-path` 1.25, elsewhere 1.56: speeds of 0.8 and 0.64 of those by day.
/// Source: [FM2118], planning rates of marching columns, at second hand.
[[nodiscard]] double night_time_factor(const Ground& ground);

[[nodiscard]] std::span<const ModelEntry> terrain_entries();

} // namespace tumpline::planner
