#include "cli/commands/command_book.h"

#include "cli/book/book.h"
#include "cli/commands/planning.h"
#include "cli/files/whole_file.h"
#include "cli/words/progress.h"
#include "geo/ground/elevation.h"
#include "planner/decisions/choices.h"
#include "planner/route/route.h"
#include "planner/route/route_build.h"

#include <filesystem>
#include <optional>

namespace tumpline::cli {

ExitCode book(const BookOptions& options, Console console) {
    Progress progress(console, "reading the trip");
    const planner::Trip trip = read_trip(options.trip);
    const OutputFile output{options.output, files_read(options.trip, trip), options.overwrite};
    check_writable(output);
    progress.now("reading tracks and elevation");
    const planner::BuiltRoute built = planner::build_routes(trip);
    const planner::Route& route = built.route;
    progress.now("planning");
    const planner::Plan plan = planner::make_plan_with_choices(trip, route, built.others);
    progress.now("writing the book");
    std::optional<geo::Elevation> elevation; // for the maps alone: the plan has its heights
    if (!trip.route.elevation.empty())
        elevation.emplace(trip.route.elevation, std::filesystem::absolute(trip.file).parent_path());
    write_whole(output,
                book(plan, route, units_of(options.trip, trip), elevation ? &*elevation : nullptr));
    return answer_of(plan, units_of(options.trip, trip), console);
}

} // namespace tumpline::cli
