#include "planner/plan.h"

#include "planner/loads/limits.h"

#include <algorithm>

namespace tumpline::planner {

bool has_limit(const PlanLeg& leg, const MemberLoad& load) {
    return bears_packs(leg.travel) && load.limit_kg > 0.0;
}

bool over_limit(const PlanLeg& leg, const MemberLoad& load) {
    return has_limit(leg, load) && over_limit(load.pack_max_kg, load.limit_kg);
}

const MemberDay* most_laden(const PlanDay& day) {
    const auto found =
        std::max_element(day.members.begin(), day.members.end(), [](const auto& a, const auto& b) {
            return a.heaviest_kg < b.heaviest_kg;
        });
    return found == day.members.end() || found->heaviest_leg.none() ? nullptr : &*found;
}

bool Plan::can_be_carried_out() const {
    return std::none_of(cautions.begin(), cautions.end(), [](const Caution& caution) {
        return caution.level == Level::stop;
    });
}

} // namespace tumpline::planner
