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
           (stretches[boundary].afloat() || stretches[boundary - 1].afloat());
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

/// The way from a boundary to a later one of the same day.
struct DayWay {
    std::size_t from;
    std::size_t to;
};

/// Goes backwards day by day from one appointment (docs/appointments.md).
class Backwards {
  public:
    Backwards(const Assembly& draft, const std::vector<PlanLeg>& legs, PlanAppointment& meet)
        : draft_(draft), legs_(legs), meet_(meet) {}

    /// `boundary` is where it is kept.
    void run(std::size_t boundary);

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

    /// When one arrives who sets out at an hour after the day's midnight, in the weather of the
    /// later hours.
    [[nodiscard]] double arrival_s(const DayWay& way, double leave_s) const;
    /// How much later than planned one may set out so as to arrive at `arrive_s`.
    [[nodiscard]] double spare_s(const DayWay& way, double arrive_s) const;
    void before_the_wind(LeaveBy& leave, double until_m) const;

    const Assembly& draft_;
    const std::vector<PlanLeg>& legs_;
    PlanAppointment& meet_;
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

double Backwards::arrival_s(const DayWay& way, double leave_s) const {
    const AssumedTimes& times = draft_.prepared.assumed.times;
    double at_s = leave_s;
    for (std::size_t i = way.from; i < way.to; ++i) {
        const StretchTime& planned = time(i);
        double moving_s = planned.end_s - planned.start_s - planned.still_s();
        if (!planned.spells.empty())
            moving_s = through_spells_s(planned.spells,
                                        {.start_s = at_s + planned.before.lasts_s + planned.halt_s,
                                         .by_day_s = planned.by_day_s,
                                         .moved_before_s = planned.moved_before_s,
                                         .rest_per_hour_s = times.rest_per_hour_s,
                                         .dark_factor = 1.0});
        at_s += moving_s + planned.still_s();
    }
    return at_s;
}

double Backwards::spare_s(const DayWay& way, double arrive_s) const {
    const double planned_s = time(way.from).start_s;
    const double straight_s = arrive_s - time(way.to - 1).end_s;
    bool changes = false;
    for (std::size_t i = way.from; i < way.to; ++i)
        changes = changes || !time(i).spells.empty();
    if (!changes)
        return straight_s;
    // Who sets out later never arrives earlier: halve the hours between.
    double early_s = straight_s;
    double late_s = straight_s;
    for (double step_s = s_per_h; arrival_s(way, planned_s + early_s) > arrive_s; step_s *= 2.0) {
        if (step_s > s_per_day)
            return straight_s; // nothing between here and there moves in that wind
        early_s -= step_s;
    }
    for (double step_s = s_per_h;
         step_s < s_per_day && arrival_s(way, planned_s + late_s) <= arrive_s;
         step_s *= 2.0)
        late_s += step_s;
    while (late_s - early_s > 0.5) {
        const double middle_s = 0.5 * (early_s + late_s);
        (arrival_s(way, planned_s + middle_s) <= arrive_s ? early_s : late_s) = middle_s;
    }
    return early_s;
}

/// Every leg afloat between here and where the way ends is to be behind before the wind rises
/// there.
void Backwards::before_the_wind(LeaveBy& leave, double until_m) const {
    for (const PlanLeg& leg : legs_) {
        if (leg.day != leave.day || !leg.wind_rises || leg.to_m <= leave.along_m ||
            leg.from_m >= until_m)
            continue;
        const sys_seconds rises =
            leg.wind_rises->at + std::chrono::days{std::max(0, leave.days_later)};
        const sys_seconds at = rises - (leg.end - leave.planned);
        if (at >= leave.at)
            continue;
        leave.at = at;
        leave.bound = LeaveBound::wind;
        leave.bound_at = leg.name;
        leave.wind_rises = rises;
    }
}

void Backwards::add_day(const DaySpan& day, std::size_t end, const Latest& latest) {
    const LocalDay planned_day{date_of(draft_, day.day)};
    const sys_seconds arrive = instant(draft_, day.day, time(end - 1).end_s);
    const auto late_s = static_cast<double>((latest.at - arrive).count());
    for (std::size_t b = end; b-- > day.first;) {
        const bool night = b == day.first;
        if (!night && !is_landing(draft_, b))
            continue;
        LeaveBy leave{.place = boundary_name(draft_, b),
                      .day = day.day,
                      .along_m = draft_.prepared.stretches.boundaries[b].along_m,
                      .at = {},
                      .night = night,
                      .planned = instant(draft_, day.day, time(b).start_s),
                      .spare_s = 0.0,
                      .days_later = 0,
                      .bound = latest.bound,
                      .bound_at = latest.bound == LeaveBound::appointment
                                      ? meet_.at
                                      : boundary_name(draft_, latest.boundary)};
        const auto later = [&] {
            return static_cast<int>((local_day(leave.at) - planned_day).count());
        };
        // The weather of the plan's day is that of a later one too.
        const double days_s = std::floor(std::max(0.0, late_s) / s_per_day) * s_per_day;
        const double spare = days_s + spare_s({b, end}, time(end - 1).end_s + late_s - days_s);
        leave.at = earlier(leave.planned, -spare);
        leave.days_later = later();
        before_the_wind(leave, draft_.prepared.stretches.boundaries[end].along_m);
        leave.days_later = later();
        leave.spare_s = static_cast<double>((leave.at - leave.planned).count());
        found_.push_back(std::move(leave));
    }
}

void Backwards::run(std::size_t boundary) {
    const std::vector<DaySpan>& days = draft_.settled.timeline.days;
    const DaySpan* later = nullptr; // the day of travel after this one
    for (std::size_t d = days.size(); d-- > 0;) {
        const DaySpan& day = days[d];
        if (day.first == day.last || day.first >= boundary)
            continue;
        if (!later) {
            add_day(day, boundary, on_its_day(day, boundary));
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

std::vector<LeaveBy> latest_departures(const Assembly& draft,
                                       const std::vector<PlanLeg>& legs,
                                       PlanAppointment meet,
                                       std::size_t boundary) {
    Backwards(draft, legs, meet).run(boundary);
    return std::move(meet.leave_by);
}

std::vector<PlanAppointment> plan_appointments(const Assembly& draft,
                                               const std::vector<PlanLeg>& legs) {
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
        Backwards(draft, legs, one).run(boundary);
        result.push_back(std::move(one));
    }
    return result;
}

} // namespace tumpline::planner
