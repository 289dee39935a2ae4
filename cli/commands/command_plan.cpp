#include "cli/commands/command_plan.h"

#include "cli/commands/planning.h"
#include "cli/export/plan_csv.h"
#include "cli/json/plan_json.h"
#include "cli/text/plan_text.h"
#include "cli/words/version.h"

namespace tumpline::cli {

ExitCode plan(const PlanOptions& options, Console console) {
    const planner::Plan plan = planned(options.trip, console);
    switch (options.format) {
    case PlanFormat::text:
        console.out << plan_text(plan, {.units = options.trip.units, .colour = console.colour});
        break;
    case PlanFormat::json:
        console.out << plan_json(plan, version());
        break;
    case PlanFormat::csv:
        console.out << plan_csv(plan);
        break;
    }
    const planner::VerdictLevel worst_allowed =
        options.strict ? planner::VerdictLevel::clear : planner::VerdictLevel::breaks;
    return plan.verdict.level <= worst_allowed ? ExitCode::done : ExitCode::no_plan;
}

} // namespace tumpline::cli
