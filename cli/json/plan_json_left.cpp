#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "cli/words/words.h"

namespace tumpline::cli {

Json left_json(const planner::Plan& plan) {
    return array_of(plan.left, [](const planner::LaidThings& left) {
        return Json{{"at", left.at},
                    {"day", left.day},
                    {"leg", left.leg},
                    {"along_m", left.along_m},
                    {"fetch_day", or_null(left.fetch_day)},
                    {"fetch_leg", or_null(left.fetch_leg)},
                    {"fetch_along_m", or_null(left.fetch_along_m)},
                    {"mass_kg", left.mass_kg},
                    {"things", array_of(left.things, [](const planner::LaidThing& thing) {
                         return Json{{"part", word(thing.part)},
                                     {"item", thing.what},
                                     {"count", thing.count},
                                     {"mass_kg", thing.mass_kg}};
                     })}};
    });
}

} // namespace tumpline::cli
