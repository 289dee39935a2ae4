#include "geo/input_error.h"
#include "planner/plan_draft.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

/// The boundary of a place on a day: the pass that the day covers; else the nearest in time.
std::size_t boundary_on_day(const Draft& draft, const std::string& name, int day) {
    const Prepared& prepared = draft.prepared;
    const DaySpan* span = nullptr;
    for (const DaySpan& one : draft.settled.timeline.days)
        if (one.day == day)
            span = &one;
    std::size_t last_pass = prepared.stretches.boundaries.size() - 1;
    bool any = false;
    for (const RoutePlace& place : prepared.route.places) {
        if (place.name != name)
            continue;
        const std::size_t boundary = prepared.stretches.boundary_at(place.along_m);
        if (span && boundary >= span->first && boundary <= span->last && boundary > 0)
            return boundary;
        if (!any || boundary > 0)
            last_pass = boundary;
        any = true;
    }
    return last_pass;
}

/// When a boundary is reached, its day and seconds after midnight.
struct Reached {
    int day;
    double at_s;
};

Reached reached(const Draft& draft, std::size_t boundary) {
    const Timeline& timeline = draft.settled.timeline;
    if (boundary == 0)
        return {timeline.stretches.front().day, timeline.stretches.front().start_s};
    const StretchTime& before = timeline.stretches[boundary - 1];
    return {before.day, before.end_s};
}

bool is_landing(const Draft& draft, std::size_t boundary) {
    const std::vector<Stretch>& stretches = draft.prepared.stretches.stretches;
    return boundary > 0 && boundary < stretches.size() &&
           (stretches[boundary].travel == Travel::paddle ||
            stretches[boundary - 1].travel == Travel::paddle);
}

} // namespace

std::size_t appointment_boundary(const Draft& draft, const Appointment& asked) {
    return boundary_on_day(draft, asked.at, asked.day);
}

std::vector<PlanAppointment> plan_appointments(const Draft& draft) {
    const Timeline& timeline = draft.settled.timeline;
    std::vector<PlanAppointment> result;
    for (const Appointment& asked : draft.prepared.trip.appointments) {
        PlanAppointment one;
        one.what = asked.what;
        one.at = asked.at;
        one.day = asked.day;
        one.margin_s = static_cast<double>(asked.margin.count());
        one.hard = asked.hard;
        const std::chrono::local_days midnight{date_of(draft, asked.day)};
        one.by = geo::to_instant(midnight + asked.by, draft.prepared.assumed.time_zone);
        const std::size_t boundary = appointment_boundary(draft, asked);
        const Reached there = reached(draft, boundary);
        one.arrive = instant(draft, there.day, there.at_s);
        one.spare_s = static_cast<double>((one.by - one.arrive).count()) - one.margin_s;
        // Backwards through nights and landings: between two of them the plan's own time passes,
        // over a night only the order of things, so a night's latest departure is of its own day.
        const sys_seconds latest = one.by - std::chrono::seconds{std::llround(one.margin_s)};
        for (const DaySpan& day : timeline.days) {
            for (std::size_t b = day.first; b < std::min(day.last, boundary); ++b) {
                const bool night = b == day.first;
                if (!night && !is_landing(draft, b))
                    continue;
                if (day.day != there.day)
                    continue;
                const double leave_s = timeline.stretches[b].start_s;
                const sys_seconds planned = instant(draft, day.day, leave_s);
                one.leave_by.push_back({.place = boundary_name(draft, b),
                                        .day = day.day,
                                        .along_m = draft.prepared.stretches.boundaries[b].along_m,
                                        .at = latest - (one.arrive - planned)});
            }
        }
        result.push_back(std::move(one));
    }
    return result;
}

} // namespace tumpline::planner
