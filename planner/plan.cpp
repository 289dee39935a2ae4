#include "planner/plan.h"

#include <algorithm>

namespace tumpline::planner {

bool Plan::can_be_carried_out() const {
    return std::none_of(cautions.begin(), cautions.end(), [](const Caution& caution) {
        return caution.level == Level::stop;
    });
}

} // namespace tumpline::planner
