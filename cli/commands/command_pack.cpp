#include "cli/commands/command_pack.h"

#include "cli/commands/planning.h"
#include "cli/json/plan_json.h"
#include "cli/text/plan_text.h"
#include "cli/words/version.h"

namespace tumpline::cli {

ExitCode pack(const PackOptions& options, Console console) {
    const planner::Plan plan = planned(options.trip, console);
    switch (options.format) {
    case PackFormat::text:
        console.out << pack_text(plan, {.units = options.trip.units, .colour = console.colour});
        break;
    case PackFormat::json:
        console.out << pack_json(plan, version());
        break;
    }
    return plan.can_be_carried_out() ? ExitCode::done : ExitCode::no_plan;
}

} // namespace tumpline::cli
