#include "planner/results/heaviest_packs.h"

#include <cstddef>

namespace tumpline::planner {

std::vector<HeaviestPack> plan_heaviest_packs(const std::vector<PlanDay>& days,
                                              const std::vector<PlanLeg>& legs) {
    std::vector<HeaviestPack> packs;
    const std::size_t members = days.empty() ? 0 : days.front().members.size();
    for (std::size_t m = 0; m < members; ++m) {
        const MemberDay* worst = nullptr;
        for (const PlanDay& day : days) {
            const MemberDay& one = day.members[m];
            if (!one.heaviest_leg.none() &&
                (worst == nullptr || one.heaviest_kg > worst->heaviest_kg))
                worst = &one;
        }
        if (worst != nullptr)
            packs.push_back({worst->member,
                             worst->heaviest_kg,
                             legs[worst->heaviest_leg.index()].loads[m].limit_kg,
                             worst->heaviest_leg});
    }
    return packs;
}

} // namespace tumpline::planner
