#include "cli/commands/command_odds.h"

#include "cli/commands/planning.h"
#include "cli/json/odds_json.h"
#include "cli/text/odds_text.h"
#include "cli/words/progress.h"
#include "cli/words/version.h"
#include "planner/decisions/odds.h"
#include "planner/route/route_build.h"

#include <algorithm>
#include <thread>

namespace tumpline::cli {

namespace {

planner::Odds drawn(const OddsCommandOptions& options, Console console) {
    Progress progress(console, "reading the trip");
    const planner::Trip trip = read_trip(options.trip);
    progress.now("reading tracks and elevation");
    const planner::Route route = planner::build_route(trip);
    progress.now("drawing");
    const std::size_t threads = options.threads > 0
                                    ? options.threads
                                    : std::max<std::size_t>(1, std::thread::hardware_concurrency());
    return planner::odds_of(
        trip, route, {.draws = options.draws, .seed = options.seed, .threads = threads});
}

} // namespace

ExitCode odds(const OddsCommandOptions& options, Console console) {
    const planner::Odds odds = drawn(options, console);
    switch (options.format) {
    case OddsFormat::text:
        console.out << odds_text(odds, reader_of(options.trip, odds.plan.trip, console));
        break;
    case OddsFormat::json:
        console.out << odds_json(odds, version());
        break;
    }
    return exit_code(odds.plan, options.trip.strict);
}

} // namespace tumpline::cli
