#include "planner/results/permits.h"

#include "planner/conditions/calendar.h"

#include <algorithm>
#include <set>

namespace tumpline::planner {

namespace {

class PermitMaker {
  public:
    PermitMaker(const Assembly& draft, const Permit& spec) : draft_(draft), spec_(spec) {}

    PlanPermit make();

  private:
    [[nodiscard]] bool open_on(Date date) const;
    void add(PlanPermit& permit, int day) const;
    [[nodiscard]] std::set<int> nights() const;
    [[nodiscard]] std::set<int> days_there() const;

    const Assembly& draft_;
    const Permit& spec_;
    const TripPlace* place_ = nullptr;
};

bool PermitMaker::open_on(Date date) const {
    return (!spec_.dates || spec_.dates->holds(date)) &&
           (place_ == nullptr || !is_closed(*place_, date));
}

void PermitMaker::add(PlanPermit& permit, int day) const {
    PermitDate booking;
    booking.day = day;
    booking.date = date_of(draft_, day);
    booking.open = open_on(booking.date);
    booking.a_day_later = date_of(draft_, day + 1);
    booking.later_open = open_on(booking.a_day_later);
    permit.bookings.push_back(booking);
}

/// Days that end in a night there: all but the last.
std::set<int> PermitMaker::nights() const {
    std::set<int> found;
    const std::vector<DaySpan>& days = draft_.settled.timeline.days;
    for (std::size_t d = 0; d + 1 < days.size(); ++d) {
        const Boundary& end = draft_.prepared.stretches.boundaries[days[d].last];
        if (std::any_of(end.places.begin(), end.places.end(), [&](std::size_t place) {
                return draft_.prepared.route.places[place].name == spec_.where;
            }))
            found.insert(days[d].day);
    }
    return found;
}

/// Days on which one is on the leg, or comes by the place.
std::set<int> PermitMaker::days_there() const {
    std::set<int> found;
    const Prepared& prepared = draft_.prepared;
    for (std::size_t i = 0; i < prepared.stretches.stretches.size(); ++i)
        if (prepared.route.legs[prepared.stretches.stretches[i].leg.index()].name == spec_.where)
            found.insert(draft_.settled.timeline.stretches[i].day);
    if (!found.empty())
        return found;
    for (const RoutePlace& pass : prepared.route.passes(spec_.where)) {
        const std::size_t boundary = prepared.stretches.boundary_at(pass.along_m);
        found.insert(boundary == 0 ? 1 : draft_.settled.timeline.stretches[boundary - 1].day);
    }
    return found;
}

PlanPermit PermitMaker::make() {
    const Trip& trip = draft_.prepared.trip;
    for (const TripPlace& place : trip.route.places)
        if (place.name == spec_.where)
            place_ = &place;
    PlanPermit permit;
    permit.where = spec_.where;
    permit.nights = place_ != nullptr && place_->kind == PlaceKind::camp;
    permit.people = static_cast<int>(trip.party.size());
    permit.most_people = spec_.most_people;
    permit.dates = spec_.dates;
    permit.note = spec_.note;
    for (const int day : permit.nights ? nights() : days_there())
        add(permit, day);
    return permit;
}

} // namespace

std::vector<PlanPermit> plan_permits(const Assembly& draft) {
    std::vector<PlanPermit> result;
    for (const Permit& spec : draft.prepared.trip.permits)
        result.push_back(PermitMaker(draft, spec).make());
    return result;
}

} // namespace tumpline::planner
