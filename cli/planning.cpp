#include "cli/planning.h"

#include "cli/progress.h"
#include "planner/route.h"

namespace tumpline::cli {

planner::Plan planned(const TripOptions& options, Console console) {
    Progress progress(console, "reading the trip");
    const planner::Trip trip = read_trip(options);
    progress.now("reading tracks and elevation");
    const planner::Route route = planner::build_route(trip);
    progress.now("planning");
    return planner::make_plan(trip, route);
}

} // namespace tumpline::cli
