#include "cli/command_book.h"

#include "cli/book.h"
#include "cli/caution_text.h"
#include "cli/planning.h"
#include "cli/progress.h"
#include "cli/whole_file.h"
#include "planner/route.h"

#include <fmt/ostream.h>

#include <vector>

namespace tumpline::cli {

namespace {

std::vector<std::filesystem::path> inputs(const TripOptions& options, const planner::Trip& trip) {
    std::vector<std::filesystem::path> files{options.trip};
    files.insert(files.end(), trip.route.tracks.begin(), trip.route.tracks.end());
    files.insert(files.end(), trip.route.elevation.begin(), trip.route.elevation.end());
    return files;
}

} // namespace

ExitCode book(const BookOptions& options, Console console) {
    Progress progress(console, "reading the trip");
    const planner::Trip trip = read_trip(options.trip);
    const OutputFile output{options.output, inputs(options.trip, trip)};
    check_writable(output);
    progress.now("reading tracks and elevation");
    const planner::Route route = planner::build_route(trip);
    progress.now("planning");
    const planner::Plan plan = planner::make_plan(trip, route);
    progress.now("writing the book");
    write_whole(output, book(plan, route, options.trip.units));
    if (plan.can_be_carried_out())
        return ExitCode::done;
    for (const planner::Caution& caution : plan.cautions)
        if (caution.level == planner::Level::stop)
            fmt::print(console.err, "{}\n", placed_caution_text(caution));
    return ExitCode::no_plan;
}

} // namespace tumpline::cli
