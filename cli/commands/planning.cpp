#include "cli/commands/planning.h"

#include "cli/words/caution_text.h"
#include "cli/words/progress.h"
#include "planner/decisions/choices.h"
#include "planner/route/route.h"
#include "planner/route/route_build.h"

#include <fmt/ostream.h>

namespace tumpline::cli {

planner::Plan
planned(const TripOptions& options, const planner::Choices& choices, Console console) {
    Progress progress(console, "reading the trip");
    const planner::Trip trip = read_trip(options);
    progress.now("reading tracks and elevation");
    const planner::BuiltRoute routes = planner::build_routes(trip);
    progress.now("planning");
    return planner::make_plan_with_choices(trip, routes.route, routes.others, choices);
}

ExitCode exit_code(const planner::Plan& plan, bool strict) {
    const planner::VerdictLevel worst_allowed =
        strict ? planner::VerdictLevel::clear : planner::VerdictLevel::breaks;
    return plan.verdict.level <= worst_allowed ? ExitCode::done : ExitCode::no_plan;
}

std::vector<std::filesystem::path> files_read(const TripOptions& options,
                                              const planner::Trip& trip) {
    std::vector<std::filesystem::path> files{options.trip};
    files.insert(files.end(), trip.route.tracks.begin(), trip.route.tracks.end());
    files.insert(files.end(), trip.route.elevation.begin(), trip.route.elevation.end());
    for (const geo::LayerSource& layer : trip.map.layers)
        files.push_back(layer.file);
    return files;
}

ExitCode answer_of(const planner::Plan& plan, planner::UnitSystem units, Console console) {
    if (plan.can_be_carried_out())
        return ExitCode::done;
    for (const planner::Caution& caution : plan.cautions)
        if (caution.level == planner::Level::stop)
            fmt::print(console.err, "{}\n", placed_caution_text(caution, units));
    return ExitCode::no_plan;
}

} // namespace tumpline::cli
