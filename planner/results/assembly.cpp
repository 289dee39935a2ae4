#include "planner/results/assembly.h"

#include "planner/conditions/calendar.h"

namespace tumpline::planner {

Date date_of(const Assembly& draft, int day) {
    return date_of(draft.prepared.assumed, day);
}

sys_seconds instant(const Assembly& draft, int day, double after_midnight_s) {
    return instant(draft.prepared.assumed, {day, after_midnight_s});
}

std::string boundary_name(const Assembly& draft, std::size_t boundary) {
    return boundary_name(draft.prepared.route, draft.prepared.stretches, boundary);
}

} // namespace tumpline::planner
