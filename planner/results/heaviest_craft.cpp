#include "planner/results/heaviest_craft.h"

#include <algorithm>

namespace tumpline::planner {

std::vector<HeaviestCraft> heaviest_craft(const std::vector<PlanLeg>& legs) {
    std::vector<HeaviestCraft> boats;
    const auto load_of = [&](const HeaviestCraft& one) -> const CraftLoad& {
        return legs[one.plan_leg.index()].craft[one.craft];
    };
    for (std::size_t k = 0; k < legs.size(); ++k)
        for (std::size_t c = 0; c < legs[k].craft.size(); ++c) {
            const CraftLoad& load = legs[k].craft[c];
            const auto known =
                std::find_if(boats.begin(), boats.end(), [&](const HeaviestCraft& one) {
                    return load_of(one).craft == load.craft;
                });
            if (known == boats.end())
                boats.push_back({PlanLegNumber::of_index(k), c});
            else if (load.load_kg > load_of(*known).load_kg)
                *known = {PlanLegNumber::of_index(k), c};
        }
    return boats;
}

} // namespace tumpline::planner
