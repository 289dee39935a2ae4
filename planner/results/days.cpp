#include "planner/results/days.h"

#include "planner/conditions/calendar.h"
#include "planner/quantities/milligrams.h"

#include <algorithm>
#include <cmath>

namespace tumpline::planner {

namespace {

/// Whether the climb over these legs is known: of every one on foot, or of any where all is water.
template <typename Wanted>
bool heights_known(const std::vector<PlanLeg>& legs, const Wanted& wanted) {
    bool on_foot = false;
    bool afloat = false;
    bool foot_known = true;
    bool water_known = false;
    for (const PlanLeg& leg : legs) {
        if (!wanted(leg))
            continue;
        if (is_ride(leg.travel))
            continue;
        if (planner::afloat(leg.travel)) {
            afloat = true;
            water_known = water_known || leg.heights_known;
            continue;
        }
        on_foot = true;
        foot_known = foot_known && leg.heights_known;
    }
    return on_foot ? foot_known : !afloat || water_known;
}

/// Sum of what left or reached accounts on one day, kilograms.
double booked_kg(const Ledger& ledger, int day, Part part, Account to) {
    std::int64_t sum_mg = 0;
    for (const Entry& entry : ledger.entries)
        if (entry.day == day && entry.part == part && entry.to == to)
            sum_mg += entry.mass_mg;
    return mg_to_kg(sum_mg);
}

void add_members(PlanDay& day,
                 const Assembly& draft,
                 std::size_t d,
                 const std::vector<PlanLeg>& legs) {
    const Solved& settled = draft.settled;
    const DaySpan& span = settled.timeline.days[d];
    for (std::size_t m = 0; m < draft.prepared.trip.party.size(); ++m) {
        MemberDay member;
        member.member = draft.prepared.trip.party[m].name;
        member.energy_j = settled.spent.day_j[d][m];
        for (const std::int64_t mg : settled.provisions.eaten[d][m])
            member.food_kg += mg_to_kg(mg);
        member.water_l = settled.water.camp_l[d][0] + settled.water.camp_l[d][1];
        for (std::size_t i = span.first; i < span.last; ++i)
            member.water_l += settled.water.drunk_l[i] + settled.water.scooped_l[i];
        member.pack_start_kg = settled.loads.day_start_kg[d][m];
        member.pack_end_kg = settled.loads.day_end_kg[d][m];
        if (!span.rest_day)
            member.set_off_kg =
                legs[settled.loads.plan_leg[span.first].index()].loads[m].pack_start_kg;
        for (std::size_t k = 0; k < legs.size(); ++k) {
            const PlanLeg& leg = legs[k];
            if (leg.day != span.day || !bears_packs(leg.travel))
                continue;
            if (leg.loads[m].pack_max_kg > member.heaviest_kg) {
                member.heaviest_kg = leg.loads[m].pack_max_kg;
                member.heaviest_leg = PlanLegNumber::of_index(k);
            }
        }
        day.members.push_back(std::move(member));
    }
}

void add_legs(PlanDay& day, const std::vector<PlanLeg>& legs) {
    for (const PlanLeg& leg : legs) {
        if (leg.day != day.day)
            continue;
        const double length_m = leg.length_m();
        switch (leg.travel) {
        case Travel::walk:
            day.walk_m += length_m;
            break;
        case Travel::portage:
            day.portage_m += length_m;
            break;
        case Travel::paddle:
            day.paddle_m += length_m;
            break;
        case Travel::line:
        case Travel::wade:
        case Travel::pole:
            day.led_m += length_m;
            break;
        case Travel::ride:
            day.ride_m += length_m;
            day.ride_s += leg.moving_s;
            break;
        }
        day.on_foot_m += leg.on_foot_m;
        day.ascent_m += leg.ascent_m;
        day.descent_m += leg.descent_m;
        day.moving_s += leg.moving_s;
        day.changeover_s += leg.changeover_s;
        day.rest_s += leg.rest_s;
        const auto early = std::chrono::seconds{std::llround(leg.moving_s - leg.moving_low_s)};
        const auto late = std::chrono::seconds{std::llround(leg.moving_high_s - leg.moving_s)};
        day.arrive_early -= early;
        day.arrive_late += late;
    }
}

/// Events of one stretch on the clock, in order.
void add_stretch_events(std::vector<Event>& events, const Assembly& draft, std::size_t i) {
    const Stretch& stretch = draft.prepared.stretches.stretches[i];
    const StretchTime& time = draft.settled.timeline.stretches[i];
    const AssumedTimes& times = draft.prepared.assumed.times;
    double at_s = time.start_s;
    const auto add = [&](EventKind kind, double along_m, double lasts_s, std::string place) {
        events.push_back({.kind = kind,
                          .day = time.day,
                          .leg = stretch.leg,
                          .along_m = along_m,
                          .at = instant(draft, time.day, at_s),
                          .lasts_s = lasts_s,
                          .place = std::move(place),
                          .litres = 0.0});
        at_s += lasts_s;
    };
    if (time.before.kind)
        add(*time.before.kind, stretch.from_m, time.before.lasts_s, boundary_name(draft, i));
    // Rests and landings to look are spread over the stretch: evenly for want of a better place.
    const int stops = time.rests + stretch.scouts;
    for (int k = 0; k < stops; ++k) {
        at_s += time.moving_s / (stops + 1);
        const double along_m = stretch.from_m + stretch.length_m() * (k + 1) / (stops + 1);
        if (k < stretch.scouts)
            add(EventKind::scout, along_m, times.scout_s, "");
        else
            add(EventKind::rest, along_m, times.rest_per_hour_s, "");
    }
    at_s += time.moving_s / (stops + 1);
    if (time.halt_s > 0.0) {
        const double goes_on_s = at_s;
        at_s = time.halt_at_s;
        add(EventKind::halt, stretch.from_m, time.halt_s, "");
        at_s = goes_on_s + time.halt_s;
    }
    if (time.after.kind)
        add(*time.after.kind, stretch.to_m, time.after.lasts_s, boundary_name(draft, i + 1));
}

} // namespace

std::vector<Event> plan_events(const Assembly& draft) {
    std::vector<Event> events;
    const std::vector<Boundary>& boundaries = draft.prepared.stretches.boundaries;

    struct Moment {
        int day;
        std::size_t boundary;
        double at_s;
        double litres = 0.0;
    };

    const auto add = [&](EventKind kind, const Moment& moment) {
        const std::size_t last = draft.prepared.stretches.stretches.size() - 1;
        events.push_back(
            {.kind = kind,
             .day = moment.day,
             .leg = draft.prepared.stretches.stretches[std::min(moment.boundary, last)].leg,
             .along_m = boundaries[moment.boundary].along_m,
             .at = instant(draft, moment.day, moment.at_s),
             .lasts_s = 0.0,
             .place = boundary_name(draft, moment.boundary),
             .litres = moment.litres});
    };
    const auto members = static_cast<double>(draft.prepared.assumed.members.size());
    const auto supply_kind = [&](std::size_t boundary) {
        for (const std::size_t place : boundaries[boundary].places)
            if (draft.prepared.route.places[place].kind == PlaceKind::cache)
                return EventKind::cache;
        return EventKind::resupply;
    };
    for (std::size_t d = 0; d < draft.settled.timeline.days.size(); ++d) {
        const DaySpan& day = draft.settled.timeline.days[d];
        if (day.rest_day)
            continue;
        const Timeline& timeline = draft.settled.timeline;
        const Moment arrival{day.day, day.last, timeline.arrive_s[d]};
        add(EventKind::set_off, {day.day, day.first, timeline.stretches[day.first].start_s});
        for (std::size_t i = day.first; i < day.last; ++i) {
            const double at_s = timeline.stretches[i].start_s;
            const double fill_l = draft.settled.water.fill_l[i];
            if (i > day.first && boundaries[i].supply)
                add(supply_kind(i), {day.day, i, at_s});
            if (fill_l > 0.0)
                add(EventKind::fill_water, {day.day, i, at_s, fill_l * members});
            add_stretch_events(events, draft, i);
        }
        add(EventKind::arrive, arrival);
        if (boundaries[day.last].supply && day.last + 1 < boundaries.size())
            add(supply_kind(day.last), arrival);
    }
    return events;
}

std::optional<sys_seconds> dusk_of(const PlanDay& day) {
    return evening_dusk(day.light);
}

std::vector<PlanDay> plan_days(const Assembly& draft, const std::vector<PlanLeg>& legs) {
    std::vector<PlanDay> days;
    const Prepared& prepared = draft.prepared;
    const Solved& settled = draft.settled;
    for (std::size_t d = 0; d < settled.timeline.days.size(); ++d) {
        const DaySpan& span = settled.timeline.days[d];
        PlanDay day;
        day.day = span.day;
        day.date = date_of(draft, span.day);
        day.rest_day = span.rest_day;
        if (span.waiting && settled.waiting)
            day.waiting_for = prepared.trip.connections[settled.waiting->connection].what;
        day.from = boundary_name(draft, span.first);
        day.to = boundary_name(draft, span.last);
        day.from_m = prepared.stretches.boundaries[span.first].along_m;
        day.to_m = prepared.stretches.boundaries[span.last].along_m;
        day.camp = prepared.route.at(day.to_m);
        day.camp_located = prepared.route.located(day.to_m);
        const double set_off_s = span.rest_day ? settled.timeline.arrive_s[d]
                                               : settled.timeline.stretches[span.first].start_s;
        day.set_off = instant(draft, span.day, set_off_s);
        if (d > 0 && !span.rest_day)
            day.rise =
                instant(draft, span.day, set_off_s - draft.prepared.assumed.times.break_camp_s);
        day.arrive = instant(draft, span.day, settled.timeline.arrive_s[d]);
        day.arrive_early = day.arrive;
        day.arrive_late = day.arrive;
        day.light = geo::daylight(day.date, day.camp, prepared.assumed.time_zone);
        if (const std::optional<sys_seconds> dusk = evening_dusk(day.light); dusk && !span.waiting)
            day.before_dusk_s = std::chrono::duration<double>(*dusk - day.arrive).count();
        day.dry_camp = settled.water.dry_camp[d];
        add_legs(day, legs);
        day.heights_known =
            heights_known(legs, [&](const PlanLeg& leg) { return leg.day == day.day; });
        add_members(day, draft, d, legs);
        for (const MemberDay& member : day.members)
            day.food_kg += member.food_kg;
        day.fuel_kg = booked_kg(settled.loads.ledger, span.day, Part::fuel, Account::burnt);
        day.water_l = booked_kg(settled.loads.ledger, span.day, Part::water, Account::drunk);
        days.push_back(std::move(day));
    }
    return days;
}

Totals plan_totals(const Assembly& draft,
                   const std::vector<PlanDay>& days,
                   const std::vector<PlanLeg>& legs) {
    Totals totals;
    totals.distance_m = draft.prepared.route.length_m;
    for (const PlanLeg& leg : legs) {
        const double length_m = leg.length_m();
        switch (leg.travel) {
        case Travel::walk:
            totals.walk_m += length_m;
            break;
        case Travel::portage:
            totals.portage_m += length_m;
            break;
        case Travel::paddle:
            totals.paddle_m += length_m;
            break;
        case Travel::line:
        case Travel::wade:
        case Travel::pole:
            totals.led_m += length_m;
            break;
        case Travel::ride:
            totals.ride_m += length_m;
            break;
        }
        totals.on_foot_m += leg.on_foot_m;
        totals.ascent_m += leg.ascent_m;
        totals.descent_m += leg.descent_m;
        totals.moving_s += leg.moving_s;
        totals.changeover_s += leg.changeover_s;
        totals.rest_s += leg.rest_s;
    }
    totals.heights_known = heights_known(legs, [](const PlanLeg&) { return true; });
    totals.days = static_cast<int>(days.size());
    totals.elapsed_s = static_cast<double>((days.back().arrive - days.front().set_off).count());
    for (const PlanDay& day : days)
        for (const MemberDay& member : day.members)
            totals.energy_j += member.energy_j;
    // Food and fuel are what was brought: from home, at supplies and from caches.
    std::int64_t food_mg = 0;
    for (const Entry& entry : draft.settled.loads.ledger.entries)
        if (entry.part == Part::food && entry.from == Account::outside && entry.to == Account::pack)
            food_mg += entry.mass_mg;
    totals.food_kg = mg_to_kg(food_mg);
    for (const SupplyStage& stage : draft.settled.provisions.stages)
        totals.fuel_kg += mg_to_kg(stage.fuel_packed_mg());
    return totals;
}

} // namespace tumpline::planner
