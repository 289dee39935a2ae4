#include "planner/models/avalanche.h"

#include <cmath>
#include <numbers>

namespace tumpline::planner {

bool may_reach(const BelowGround& place) {
    static const double reach = std::tan(least_reach_deg * std::numbers::pi / 180.0);
    return place.below_m > 0.0 && place.below_m >= reach * place.away_m;
}

} // namespace tumpline::planner
