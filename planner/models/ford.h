#pragma once

#include "planner/models/model_entry.h"

#include <span>

/// Wading a river: what depth and speed together do to people's footing.
namespace tumpline::planner {

struct FordWater {
    double depth_m;
    double speed_mps;
};

/// Depth times speed, m2/s: what studies of people in floods sort by.
[[nodiscard]] double ford_flow_m2ps(const FordWater& water);

/// How a ford is judged; the worst last.
enum class FordRisk {
    shallow, ///< within what is planned by
    deep,    ///< above it: look for another place, another hour
    refused, ///< people lose their footing from about here
};

/// Somebody who wades: height times mass, m kg, as the studies sort people.
struct Wader {
    double height_m;
    double body_kg;
};

/// For grown-ups (height times mass of 50 m kg and more): planned up to 0.4 m2/s and the knee's
/// 0.5 m, refused from 0.6 m2/s or above 1.2 m. For those smaller,
/// children: refused above either of the first two; below 25 m kg at any ford.
/// Source: [ARRFloodway] 0.4 m2/s in force in 2011 and 1.2 m; 0.6 m2/s and the limits by size are
/// those of its later table, from memory; the knee is common practice.
/// Covers: even beds, clear warm water, no pack. Known bias: flumes are smooth and known, rivers
/// are neither, and a pack lifts the centre of mass: it errs to the bold side.
[[nodiscard]] FordRisk ford_risk(const FordWater& water, const Wader& wader);

inline constexpr double planned_ford_m2ps = 0.4;
inline constexpr double refused_ford_m2ps = 0.6;
inline constexpr double planned_ford_m = 0.5;
inline constexpr double refused_ford_m = 1.2;
inline constexpr double grown_up_m_kg = 50.0;
inline constexpr double small_child_m_kg = 25.0;

[[nodiscard]] std::span<const ModelEntry> ford_entries();

} // namespace tumpline::planner
