#include "cli/command_check.h"

#include "cli/caution_text.h"
#include "cli/progress.h"
#include "cli/table.h"
#include "cli/text_width.h"
#include "geo/input_error.h"
#include "planner/route.h"

#include <fmt/ostream.h>

namespace tumpline::cli {

ExitCode check(const CheckOptions& options, Console console) {
    try {
        Progress progress(console, "reading the trip");
        const planner::Trip trip = read_trip(options.trip);
        progress.now("reading tracks and elevation");
        const planner::Route route = planner::build_route(trip);
        fmt::print(console.out,
                   "{}: no problems\n{} along {} {}, {} with places on it\n",
                   one_line(trip.name),
                   planner::show_distance(route.length_m, options.trip.units),
                   route.legs.size(),
                   route.legs.size() == 1 ? "leg" : "legs",
                   route.places.size());
        for (const planner::Caution& caution : route.cautions)
            fmt::print(console.out, "{}", hanging("  ", caution_text(caution)));
        return ExitCode::done;
    } catch (const geo::InputError& error) {
        for (const geo::Problem& problem : error.problems())
            fmt::print(console.out, "{}\n", one_line(to_string(problem)));
        return ExitCode::bad_input;
    }
}

} // namespace tumpline::cli
