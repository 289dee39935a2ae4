#include "cli/commands/command_pack.h"

#include "cli/commands/planning.h"
#include "cli/json/plan_json.h"
#include "cli/text/plan_text.h"
#include "cli/words/version.h"

namespace tumpline::cli {

ExitCode pack(const PackOptions& options, Console console) {
    const bool whole = options.format == PackFormat::json; // programs read all of it
    const planner::Plan plan = planned(
        options.trip, whole ? planner::Choices{} : choices_shown(options.trip.show), console);
    switch (options.format) {
    case PackFormat::text:
        console.out << pack_text(plan, reader_of(options.trip, plan.trip, console));
        break;
    case PackFormat::json:
        console.out << pack_json(plan, version());
        break;
    }
    return exit_code(plan, options.trip.strict);
}

} // namespace tumpline::cli
