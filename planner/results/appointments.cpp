#include "planner/results/appointments.h"

#include "planner/conditions/calendar.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>

namespace tumpline::planner {

namespace {

/// The boundary of a place on a day: the pass that the day covers; else the nearest in time.
std::size_t boundary_on_day(const Assembly& draft, const std::string& name, int day) {
    const Prepared& prepared = draft.prepared;
    const DaySpan* span = nullptr;
    for (const DaySpan& one : draft.settled.timeline.days)
        if (one.day == day)
            span = &one;
    std::size_t last_pass = prepared.stretches.boundaries.size() - 1;
    bool any = false;
    for (const RoutePlace& place : prepared.route.passes(name)) {
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

Reached reached(const Assembly& draft, std::size_t boundary) {
    const Timeline& timeline = draft.settled.timeline;
    if (boundary == 0)
        return {timeline.stretches.front().day, timeline.stretches.front().start_s};
    const StretchTime& before = timeline.stretches[boundary - 1];
    return {before.day, before.end_s};
}

/// Where boats come ashore: the ends of legs afloat, and places on them that are not only hazards.
bool is_landing(const Assembly& draft, std::size_t boundary) {
    const std::vector<Stretch>& stretches = draft.prepared.stretches.stretches;
    const Boundary& at = draft.prepared.stretches.boundaries[boundary];
    const bool ashore =
        at.leg_end || std::any_of(at.places.begin(), at.places.end(), [&](std::size_t place) {
            return draft.prepared.route.places[place].kind != PlaceKind::hazard;
        });
    return ashore && boundary > 0 && boundary < stretches.size() &&
           (stretches[boundary].travel == Travel::paddle ||
            stretches[boundary - 1].travel == Travel::paddle);
}

sys_seconds earlier(sys_seconds at, double by_s) {
    return at - std::chrono::seconds{std::llround(by_s)};
}

/// The latest arrival at the end of a day, and what sets it.
struct Latest {
    sys_seconds at;
    LeaveBound bound;
    std::size_t boundary; ///< where
};

/// Goes backwards day by day from one appointment (docs/appointments.md).
class Backwards {
  public:
    Backwards(const Assembly& draft, PlanAppointment& meet, std::size_t boundary)
        : draft_(draft), meet_(meet), boundary_(boundary) {}

    void run();

  private:
    using LocalDay = std::chrono::local_days;

    [[nodiscard]] LocalDay local_day(sys_seconds at) const {
        return std::chrono::floor<std::chrono::days>(
            geo::to_local(at, draft_.prepared.assumed.time_zone));
    }

    [[nodiscard]] const StretchTime& time(std::size_t stretch) const {
        return draft_.settled.timeline.stretches[stretch];
    }

    /// On an evening at a boundary: before dusk, and before a night must begin.
    [[nodiscard]] Latest evening(std::size_t boundary,
                                 LocalDay date,
                                 std::optional<sys_seconds> must_leave,
                                 double night_s) const;
    [[nodiscard]] Latest on_its_day(const DaySpan& day, std::size_t end) const;
    void add_day(const DaySpan& day, std::size_t end, const Latest& latest);

    const Assembly& draft_;
    PlanAppointment& meet_;
    std::size_t boundary_;
    std::vector<LeaveBy> found_; ///< the last first
};

Latest Backwards::evening(std::size_t boundary,
                          LocalDay date,
                          std::optional<sys_seconds> must_leave,
                          double night_s) const {
    const Prepared& prepared = draft_.prepared;
    const double along_m = prepared.stretches.boundaries[boundary].along_m;
    const std::optional<sys_seconds> dusk = evening_dusk(
        geo::daylight(Date{date}, prepared.route.at(along_m), prepared.assumed.time_zone));
    Latest latest{geo::to_instant(date + std::chrono::days{1}, prepared.assumed.time_zone),
                  LeaveBound::midnight,
                  boundary};
    if (dusk && *dusk < latest.at)
        latest = {*dusk, LeaveBound::dusk, boundary};
    if (must_leave && earlier(*must_leave, night_s) < latest.at)
        latest = {earlier(*must_leave, night_s), LeaveBound::night, boundary};
    return latest;
}

/// On the appointment's own day the way to it; but nobody sets off at night for one on the morning
/// after a planned arrival: then one is there the evening before.
Latest Backwards::on_its_day(const DaySpan& day, std::size_t end) const {
    const Latest straight{earlier(meet_.by, meet_.margin_s), LeaveBound::appointment, end};
    const double set_off_s = time(day.first).start_s;
    const sys_seconds leave = earlier(straight.at, time(end - 1).end_s - set_off_s);
    const LocalDay date = local_day(straight.at);
    const LocalDay planned{date_of(draft_, day.day)};
    const sys_seconds usual = geo::to_instant(date + std::chrono::seconds{std::llround(set_off_s)},
                                              draft_.prepared.assumed.time_zone);
    if (date <= planned || leave >= usual)
        return straight;
    return evening(end, date - std::chrono::days{1}, {}, 0.0);
}

void Backwards::add_day(const DaySpan& day, std::size_t end, const Latest& latest) {
    const double arrive_s = time(end - 1).end_s;
    for (std::size_t b = end; b-- > day.first;) {
        const bool night = b == day.first;
        if (!night && !is_landing(draft_, b))
            continue;
        const double leave_s = time(b).start_s;
        LeaveBy leave{.place = boundary_name(draft_, b),
                      .day = day.day,
                      .along_m = draft_.prepared.stretches.boundaries[b].along_m,
                      .at = earlier(latest.at, arrive_s - leave_s),
                      .night = night,
                      .planned = instant(draft_, day.day, leave_s),
                      .spare_s = 0.0,
                      .days_later = 0,
                      .bound = latest.bound,
                      .bound_at = latest.bound == LeaveBound::appointment
                                      ? meet_.at
                                      : boundary_name(draft_, latest.boundary)};
        leave.spare_s = static_cast<double>((leave.at - leave.planned).count());
        leave.days_later =
            static_cast<int>((local_day(leave.at) - LocalDay{date_of(draft_, day.day)}).count());
        found_.push_back(std::move(leave));
    }
}

void Backwards::run() {
    const std::vector<DaySpan>& days = draft_.settled.timeline.days;
    const DaySpan* later = nullptr; // the day of travel after this one
    for (std::size_t d = days.size(); d-- > 0;) {
        const DaySpan& day = days[d];
        if (day.first == day.last || day.first >= boundary_)
            continue;
        if (!later) {
            add_day(day, boundary_, on_its_day(day, boundary_));
        } else {
            // The night takes what it needs, or what the plan gives it where that is less.
            const sys_seconds must_leave = found_.back().at;
            const double planned_night_s = static_cast<double>(
                (found_.back().planned - instant(draft_, day.day, time(day.last - 1).end_s))
                    .count());
            add_day(day,
                    day.last,
                    evening(day.last,
                            local_day(must_leave) - std::chrono::days{1},
                            must_leave,
                            std::clamp(planned_night_s, 0.0, least_night_s)));
        }
        later = &day;
    }
    meet_.leave_by.assign(found_.rbegin(), found_.rend());
}

} // namespace

std::size_t appointment_boundary(const Assembly& draft, const Appointment& spec) {
    return boundary_on_day(draft, spec.at, spec.day);
}

std::vector<LeaveBy>
latest_departures(const Assembly& draft, PlanAppointment meet, std::size_t boundary) {
    Backwards(draft, meet, boundary).run();
    return std::move(meet.leave_by);
}

std::vector<PlanAppointment> plan_appointments(const Assembly& draft) {
    std::vector<PlanAppointment> result;
    for (const Appointment& spec : draft.prepared.trip.appointments) {
        PlanAppointment one;
        one.what = spec.what;
        one.at = spec.at;
        one.day = spec.day;
        one.margin_s = static_cast<double>(spec.margin.count());
        one.hard = spec.hard;
        const std::chrono::local_days midnight{date_of(draft, spec.day)};
        one.by = geo::to_instant(midnight + spec.by, draft.prepared.assumed.time_zone);
        const std::size_t boundary = appointment_boundary(draft, spec);
        const Reached there = reached(draft, boundary);
        one.arrive = instant(draft, there.day, there.at_s);
        one.spare_s = static_cast<double>((one.by - one.arrive).count()) - one.margin_s;
        Backwards(draft, one, boundary).run();
        result.push_back(std::move(one));
    }
    return result;
}

} // namespace tumpline::planner
