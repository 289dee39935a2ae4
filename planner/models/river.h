#pragma once

#include "planner/models/model_entry.h"

#include <optional>
#include <span>
#include <string_view>

/// How fast a river runs, from its bed and slope or from its discharge; and what its gradient can
/// tell, which is little. Every figure defers to a gauge and to people who know the river.
namespace tumpline::planner {

/// A reach of even section.
struct Channel {
    double hydraulic_radius_m; ///< area over wetted perimeter; about the mean depth of a wide river
    double slope;              ///< fall over length along the channel
    double roughness;          ///< Manning's n, s/m^(1/3)
};

/// Mean velocity of the section, V = R^(2/3) S^(1/2) / n. 0 for a slope or radius that is not
/// positive. Source: [Chow1959].
/// Covers: steady flow in roughly uniform reaches; not falls, pools or backwater.
[[nodiscard]] double manning_mps(const Channel& channel);

/// The slope at which a channel of this radius and roughness runs at `velocity_mps`.
[[nodiscard]] double manning_slope(const Channel& channel_without_slope, double velocity_mps);

/// A section with level bottom and straight sides; `side_slope` 0 is a rectangle.
struct TrapezoidSection {
    double bottom_m;
    double depth_m;
    double side_slope; ///< horizontal over vertical
};

[[nodiscard]] double area_m2(const TrapezoidSection& section);
[[nodiscard]] double hydraulic_radius_m(const TrapezoidSection& section);

struct Roughness {
    std::string_view name; ///< row, as a trip file's bed type gives it
    double least;
    double normal;
    double most;
    std::string_view looks; ///< what one sees from the bank
};

/// Manning's n of natural streams under 30 m wide. Source: [Chow1959], table 5-6, D-1.
[[nodiscard]] std::span<const Roughness> chow_rows();
[[nodiscard]] std::optional<Roughness> chow_roughness(std::string_view name);

/// n = 0.39 S^0.38 R^-0.16, R in feet: steep cobble and boulder streams.
/// Source: [Jarrett1985], as quoted. Covers: `jarrett_covers`.
[[nodiscard]] double jarrett_roughness(double slope, double hydraulic_radius_m);
/// Slope 0.002 to 0.09, hydraulic radius 0.15 to 2.1 m.
[[nodiscard]] bool jarrett_covers(double slope, double hydraulic_radius_m);

/// What is known of a reach whose current nobody has measured.
struct Bed {
    double slope;
    double depth_m;      ///< mean, taken as hydraulic radius
    Roughness roughness; ///< a row, or three equal figures of the user's own
};

struct CurrentEstimate {
    double slow_mps;
    double likely_mps;
    double fast_mps;
    bool jarrett; ///< the bed is steep enough that [Jarrett1985] was used instead of the row
    bool limited; ///< held at critical flow, sqrt(g d): steeper reaches are falls and pools
};

/// Manning's equation with the three figures of the row; on slopes that [Jarrett1985] covers, its
/// n where that is rougher. Natural beds keep at or below critical flow, so the estimate does too
/// (from memory [Grant1997]).
[[nodiscard]] CurrentEstimate estimated_current(const Bed& bed);

/// Whether a bed lies where the estimate was compared with rivers: gentler than Jarrett's streams,
/// one of them (`jarrett_covers`), or so rough a row that his n would not have counted.
[[nodiscard]] bool estimated_current_covers(const Bed& bed);
inline constexpr double jarrett_least_slope = 0.002;
inline constexpr double jarrett_most_slope = 0.09;
inline constexpr double jarrett_least_radius_m = 0.1524; ///< half a foot
inline constexpr double jarrett_most_radius_m = 2.1336;  ///< seven feet

/// Mean depth assumed where nobody knows it; common practice, no source.
inline constexpr double default_depth_m = 0.6;
inline constexpr std::string_view default_bed = "winding-pools-shoals";

/// Discharge and basin of a reach, for the national regression of travel times.
struct Basin {
    double discharge_m3ps;
    double mean_annual_discharge_m3ps;
    double drainage_area_m2;
    std::optional<double> slope;
};

struct TravelVelocity {
    double probable_mps; ///< of the peak of a dye cloud
    double maximum_mps;  ///< upper envelope of the data
};

/// Vp = 0.094 + 0.0143 D^0.919 Q'^-0.469 S^0.159 Q/Da, and its companions without slope and for
/// the envelope; D = Da^1.25 sqrt(g) / Qa, Q' = Q / Qa. Empty unless all inputs are positive.
/// Source: [Jobson1996], constants as in the code of the survey's service; the exponent of Q'
/// stands there as -0.465 or -0.469, a difference of 1 % at most for Q' from 0.1 to 10.
/// Known bias: standard error 0.15 m/s, so it says nothing about rivers below 0.2 m/s.
[[nodiscard]] std::optional<TravelVelocity> jobson(const Basin& basin);

/// The front of a dye cloud takes this share of the peak's travel time [Jobson1997].
inline constexpr double leading_edge_share = 0.89;

[[nodiscard]] double m_per_km(double slope);
[[nodiscard]] double ft_per_mile(double slope);

/// Shortest reach over which a gradient from a 30 m raster means anything: 2 km, 5 km below 1 m/km.
[[nodiscard]] double gradient_reach_m(double slope);

/// What to do with a gradient, in words: how closely to look. Never a class and never a promise:
/// discharge, bed and drops decide, and a level mean can hide a fall.
[[nodiscard]] std::string_view gradient_hint(double slope);

[[nodiscard]] std::span<const ModelEntry> river_entries();

} // namespace tumpline::planner
