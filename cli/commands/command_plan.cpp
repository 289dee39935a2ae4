#include "cli/commands/command_plan.h"

#include "cli/commands/planning.h"
#include "cli/export/plan_csv.h"
#include "cli/json/plan_json.h"
#include "cli/text/plan_text.h"
#include "cli/words/version.h"

namespace tumpline::cli {

ExitCode plan(const PlanOptions& options, Console console) {
    const bool whole = options.format == PlanFormat::json; // programs read all of it
    const planner::Plan plan = planned(
        options.trip, whole ? planner::Choices{} : choices_shown(options.trip.show), console);
    switch (options.format) {
    case PlanFormat::text:
        console.out << plan_text(plan, reader_of(options.trip, plan.trip, console));
        break;
    case PlanFormat::json:
        console.out << plan_json(plan, version());
        break;
    case PlanFormat::csv:
        console.out << plan_csv(plan);
        break;
    }
    return exit_code(plan, options.trip.strict);
}

} // namespace tumpline::cli
