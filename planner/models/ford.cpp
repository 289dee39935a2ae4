#include "planner/models/ford.h"

#include <array>

namespace tumpline::planner {

namespace {

constexpr double close = 1e-9; // 0.5 m at 0.8 m/s is 0.4, whatever a double makes of it

} // namespace

double ford_flow_m2ps(const FordWater& water) {
    return water.depth_m * water.speed_mps;
}

FordRisk ford_risk(const FordWater& water, const Wader& wader) {
    const double size_m_kg = wader.height_m * wader.body_kg;
    const double flow_m2ps = ford_flow_m2ps(water);
    const bool planned =
        flow_m2ps <= planned_ford_m2ps + close && water.depth_m <= planned_ford_m + close;
    if (size_m_kg < small_child_m_kg || (size_m_kg < grown_up_m_kg && !planned))
        return FordRisk::refused;
    if (flow_m2ps >= refused_ford_m2ps - close || water.depth_m > refused_ford_m + close)
        return FordRisk::refused;
    return planned ? FordRisk::shallow : FordRisk::deep;
}

std::span<const ModelEntry> ford_entries() {
    static constexpr std::array<ModelEntry, 1> entries{{
        {.family = "ford",
         .name = "depth-times-speed",
         .answers = "Do people of this size keep their footing in a ford?",
         .source = "ARRFloodway",
         .covers = "even beds and no pack; planned to 0.4 m2/s and 0.5 m, refused from 0.6 m2/s",
         .is_default = true,
         .why = "the limit of a flood code, which also knows children"},
    }};
    return entries;
}

} // namespace tumpline::planner
