#include "cli/commands/command_craft.h"

#include "cli/commands/planning.h"
#include "cli/json/craft_json.h"
#include "cli/text/craft_text.h"
#include "cli/words/progress.h"
#include "cli/words/version.h"
#include "geo/input_error.h"
#include "planner/decisions/craft_compared.h"
#include "planner/route/route_build.h"

#include <algorithm>

namespace tumpline::cli {

namespace {

void check_offers(const planner::Trip& trip) {
    if (trip.craft_choices.empty())
        throw geo::InputError(
            {{.file = trip.file.string(),
              .place = "/craft_choices",
              .found = "no boats to choose from",
              .expected = "one or more, each with a name and a mass",
              .advice =
                  "add \"craft_choices\": [{\"name\": \"light boat\", \"mass\": \"2.1 kg\"}]"}});
}

planner::CraftComparison with_each(const TripOptions& options, Console console) {
    Progress progress(console, "reading the trip");
    const planner::Trip trip = read_trip(options);
    check_offers(trip);
    progress.now("reading tracks and elevation");
    const planner::BuiltRoute routes = planner::build_routes(trip);
    progress.now("planning with each boat");
    return planner::compare_craft(trip, routes.route, routes.others);
}

} // namespace

ExitCode craft(const CraftOptions& options, Console console) {
    const planner::CraftComparison compared = with_each(options.trip, console);
    switch (options.format) {
    case CraftFormat::text:
        console.out << craft_text(
            compared, reader_of(options.trip, compared.options.front().boats.trip, console));
        break;
    case CraftFormat::json:
        console.out << craft_json(compared, version());
        break;
    }
    const bool any = std::any_of(
        compared.options.begin(), compared.options.end(), [&](const planner::CraftOption& option) {
            return option.plan && exit_code(*option.plan, options.trip.strict) == ExitCode::done;
        });
    return any ? ExitCode::done : ExitCode::no_plan;
}

} // namespace tumpline::cli
