#include "cli/commands/command_nights.h"

#include "cli/commands/planning.h"
#include "cli/text/nights_text.h"
#include "cli/words/progress.h"
#include "cli/words/version.h"
#include "planner/decisions/nights_compared.h"
#include "planner/route/route.h"
#include "planner/route/route_build.h"
#include "planner/solution/nights.h"

namespace tumpline::cli {

namespace {

planner::NightsPlan chosen(const TripOptions& options, Console console) {
    Progress progress(console, "reading the trip");
    const planner::Trip trip = read_trip(options);
    progress.now("reading tracks and elevation");
    const planner::Route route = planner::build_route(trip);
    progress.now("choosing the nights");
    return planner::plan_nights(trip, route);
}

} // namespace

ExitCode nights(const NightsOptions& options, Console console) {
    const planner::NightsPlan found = chosen(options.trip, console);
    switch (options.format) {
    case NightsFormat::text:
        console.out << nights_text(found, reader_of(options.trip, found.best.plan.trip, console));
        break;
    case NightsFormat::json:
        console.out << nights_json(found, version());
        break;
    }
    return exit_code(found.best.plan, options.trip.strict);
}

} // namespace tumpline::cli
