#include "planner/results/connections.h"

#include "planner/conditions/calendar.h"
#include "planner/conditions/departures.h"
#include "planner/quantities/milligrams.h"
#include "planner/results/appointments.h"
#include "planner/solution/waiting.h"

#include <algorithm>
#include <chrono>

namespace tumpline::planner {

namespace {

constexpr std::chrono::days looked_back{7}; // for the last one before

double seconds_between(sys_seconds from, sys_seconds to) {
    return static_cast<double>((to - from).count());
}

class Maker {
  public:
    Maker(const Assembly& draft, const std::vector<PlanLeg>& legs, const Connection& spec)
        : draft_(draft), legs_(legs), spec_(spec) {}

    PlanConnection arriving();
    PlanConnection departing(bool used);

  private:
    [[nodiscard]] PlanConnection begun() const;

    [[nodiscard]] const std::string& zone() const { return draft_.prepared.assumed.time_zone; }

    [[nodiscard]] std::optional<sys_seconds> first(const TimeSpan& span) const {
        return first_departure(spec_.times, span, zone());
    }

    [[nodiscard]] std::optional<sys_seconds> last(const TimeSpan& span) const {
        const std::vector<sys_seconds> all = departures(spec_.times, span, zone());
        return all.empty() ? std::nullopt : std::optional(all.back());
    }

    /// From the last day of travel, which a late arrival may leave after midnight.
    [[nodiscard]] int nights_to(sys_seconds at) const {
        return nights_until(
            draft_.prepared.assumed, draft_.settled.timeline.stretches.back().day, at);
    }

    void add_missed(PlanConnection& one) const;
    void add_nights(PlanConnection& one) const;
    void add_leave_by(PlanConnection& one) const;

    const Assembly& draft_;
    const std::vector<PlanLeg>& legs_;
    const Connection& spec_;
};

PlanConnection Maker::begun() const {
    PlanConnection one;
    one.what = spec_.what;
    one.place = spec_.place;
    one.to_start = spec_.to_start;
    one.margin_s = static_cast<double>(spec_.margin.count());
    return one;
}

PlanConnection Maker::arriving() {
    const Assumed& assumed = draft_.prepared.assumed;
    const Days& days = draft_.prepared.trip.days;
    PlanConnection one = begun();
    one.used = true;
    one.there = instant(draft_, 1, assumed.times.first_set_off_s);
    const double wished_s = days.first_set_off ? static_cast<double>(days.first_set_off->count())
                                               : assumed.times.set_off_s;
    const sys_seconds midnight = midnight_of(assumed.start, zone());
    const sys_seconds wished = midnight + std::chrono::seconds{static_cast<long>(wished_s)};
    one.before = last({midnight - looked_back, midnight - std::chrono::seconds{1}});
    one.next = first({midnight_of(date_of(assumed, 2), zone()),
                      midnight + std::chrono::days{longest_wait_days}});
    const std::optional<ArrivalAtStart> arrival =
        arrival_at_start(spec_, assumed.start, one.there, zone());
    if (!arrival)
        return one;
    one.taken = arrival->at;
    one.wait_s = seconds_between(arrival->at, one.there);
    one.set_off_moved = one.there > wished && one.wait_s == one.margin_s;
    return one;
}

/// What it takes to be there for the next one instead.
void Maker::add_missed(PlanConnection& one) const {
    one.next = first(
        {*one.taken + std::chrono::seconds{1}, *one.taken + std::chrono::days{longest_wait_days}});
    if (!one.next)
        return;
    one.next_days = nights_to(*one.next) - one.nights;
    const SupplyStage& last = draft_.settled.provisions.stages.back();
    one.next_food_kg = one.next_days * mg_to_kg(last.whole_day_mg) *
                       (1.0 + draft_.prepared.assumed.food.packaging);
}

void Maker::add_nights(PlanConnection& one) const {
    const Stretches& stretches = draft_.prepared.stretches;
    const Boundary& end = stretches.boundaries.back();
    one.camp = std::any_of(end.places.begin(), end.places.end(), [&](std::size_t place) {
        return draft_.prepared.route.places[place].kind == PlaceKind::camp;
    });
    one.dry = !draft_.prepared.assumed.water.assumed_everywhere && !end.water;
}

void Maker::add_leave_by(PlanConnection& one) const {
    PlanAppointment meet;
    meet.at = spec_.place;
    meet.by = *one.taken;
    meet.arrive = one.there;
    meet.margin_s = one.margin_s;
    one.leave_by = latest_departures(
        draft_, legs_, std::move(meet), draft_.prepared.stretches.boundaries.size() - 1);
}

PlanConnection Maker::departing(bool used) {
    PlanConnection one = begun();
    one.used = used;
    one.there = end_reached(draft_.settled.timeline, draft_.prepared.assumed);
    const sys_seconds ready = one.there + spec_.margin;
    one.before = last({ready - looked_back, ready - std::chrono::seconds{1}});
    one.taken = first({ready, ready + std::chrono::days{longest_wait_days}});
    if (!one.taken)
        return one;
    one.wait_s = seconds_between(one.there, *one.taken);
    one.nights = nights_to(*one.taken);
    add_missed(one);
    add_nights(one);
    if (used)
        add_leave_by(one);
    return one;
}

} // namespace

std::vector<PlanConnection> plan_connections(const Assembly& draft,
                                             const std::vector<PlanLeg>& legs) {
    const Trip& trip = draft.prepared.trip;
    const std::optional<Waiting>& waiting = draft.settled.waiting;
    std::vector<PlanConnection> result;
    for (std::size_t c = 0; c < trip.connections.size(); ++c) {
        Maker maker(draft, legs, trip.connections[c]);
        result.push_back(trip.connections[c].to_start
                             ? maker.arriving()
                             : maker.departing(waiting && waiting->connection == c));
    }
    return result;
}

} // namespace tumpline::planner
