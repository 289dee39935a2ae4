#include "cli/commands/command_check.h"

#include "cli/words/caution_text.h"
#include "cli/words/progress.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"
#include "geo/input_error.h"
#include "planner/cautions/land_groups.h"
#include "planner/route/route.h"
#include "planner/route/route_build.h"
#include "planner/solution/fixed_point.h"
#include "planner/trip/problem_lines.h"

#include <fmt/ostream.h>

#include <cstddef>
#include <set>

namespace tumpline::cli {

namespace {

/// How many of the trip's places the route passes.
std::size_t places_found(const planner::Route& route) {
    std::set<std::size_t> found;
    for (const planner::RoutePlace& place : route.places)
        if (place.kind != planner::PlaceKind::landing)
            found.insert(place.spec);
    return found.size();
}

} // namespace

ExitCode check(const CheckOptions& options, Console console) {
    try {
        Progress progress(console, "reading the trip");
        const planner::Trip trip = read_trip(options.trip);
        progress.now("reading tracks and elevation");
        const planner::Route route = planner::build_route(trip);
        const planner::Prepared prepared = planner::prepare(trip, route);
        if (!trip.days.nights.empty() && !trip.days.nights_auto)
            (void)planner::listed_nights(prepared); // throws where they do not follow one another
        fmt::print(console.out,
                   "{}: no problems\n  {} in {} {}, {} of {} places on the route, party of {}, {} "
                   "craft, {} things\n",
                   one_line(trip.name.empty() ? trip.file.string() : trip.name),
                   planner::show_distance(route.length_m, units_of(options.trip, trip)),
                   route.legs.size(),
                   route.legs.size() == 1 ? "leg" : "legs",
                   places_found(route),
                   trip.route.places.size(),
                   trip.party.size(),
                   trip.craft.size(),
                   trip.kit.size());
        for (const planner::Caution& caution : planner::grouped_by_kind(route.cautions))
            console.out << hanging(
                "  ", placed_caution_text(caution, units_of(options.trip, trip)), console.columns);
        return ExitCode::done;
    } catch (const geo::InputError& error) {
        for (const geo::Problem& problem : planner::with_lines(error.problems()))
            fmt::print(console.out, "{}\n", one_line(to_string(problem)));
        return ExitCode::bad_input;
    }
}

} // namespace tumpline::cli
