#include "planner/solution/night_costs.h"

#include "planner/conditions/calendar.h"
#include "planner/quantities/quantities.h"
#include "planner/route/place_snap.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tumpline::planner {

namespace {

constexpr double metres_per_km = 1000.0;

double seconds_between(geo::sys_seconds from, geo::sys_seconds to) {
    return static_cast<double>((to - from).count());
}

/// Food and fuel of each member for a day without moving, packaging included.
double night_mass_kg(const Assumed& assumed, const Solved& settled) {
    const AssumedFood& food = assumed.food;
    const std::size_t members = assumed.members.size();
    double still_j = 0.0; // of everybody on all days, moving left out
    for (const std::vector<double>& day : settled.spent.day_j)
        still_j += std::accumulate(day.begin(), day.end(), 0.0);
    for (const std::vector<double>& stretch : settled.spent.stretch_j)
        still_j -= std::accumulate(stretch.begin(), stretch.end(), 0.0);
    const double member_days = static_cast<double>(members * settled.spent.day_j.size());
    const double food_kg =
        food.ration_kg ? *food.ration_kg
                       : still_j / member_days * food.replace / food.energy_density_j_per_kg;
    return food_kg * (1.0 + food.packaging) + assumed.fuel.boiled_l * assumed.fuel.kg_per_litre;
}

} // namespace

std::vector<std::size_t> NightStops::nights(const std::vector<std::size_t>& stops) const {
    std::vector<std::size_t> result;
    result.reserve(stops.size());
    for (const std::size_t stop : stops)
        result.push_back(boundaries[stop]);
    return result;
}

std::vector<std::size_t> NightStops::stops(const std::vector<std::size_t>& nights) const {
    std::vector<std::size_t> result;
    for (std::size_t stop = 1; stop + 1 < boundaries.size(); ++stop)
        if (std::find(nights.begin(), nights.end(), boundaries[stop]) != nights.end())
            result.push_back(stop);
    return result;
}

NightStops night_stops(const Prepared& prepared) {
    const std::vector<Boundary>& boundaries = prepared.stretches.boundaries;
    const auto is_camp = [&](std::size_t place) {
        return prepared.route.places[place].kind == PlaceKind::camp &&
               prepared.route.places[place].off_m <= far_off_m;
    };
    std::vector<std::size_t> camps, leg_ends;
    for (std::size_t b = 1; b + 1 < boundaries.size(); ++b) {
        const std::vector<std::size_t>& places = boundaries[b].places;
        if (std::any_of(places.begin(), places.end(), is_camp))
            camps.push_back(b);
        if (boundaries[b].leg_end && boundaries[b].may_sleep)
            leg_ends.push_back(b);
    }
    const bool named = std::any_of(prepared.trip.route.places.begin(),
                                   prepared.trip.route.places.end(),
                                   [](const auto& place) { return place.kind == PlaceKind::camp; });
    NightStops stops{{0}, named};
    const std::vector<std::size_t>& between = named ? camps : leg_ends;
    stops.boundaries.insert(stops.boundaries.end(), between.begin(), between.end());
    stops.boundaries.push_back(boundaries.size() - 1);
    return stops;
}

NightLimits camp_limits(const Prepared& prepared, std::size_t boundary, const CampStay& stay) {
    NightLimits least = 0;
    bool any = false;
    for (const std::size_t index : prepared.stretches.boundaries[boundary].places) {
        const TripPlace& place = prepared.trip.route.places[prepared.route.places[index].spec];
        if (prepared.route.places[index].kind != PlaceKind::camp)
            continue;
        NightLimits broken = 0;
        if (place.holds && static_cast<std::size_t>(*place.holds) < prepared.trip.party.size())
            broken |= bit(NightLimit::camp_full);
        for (int night = stay.day; night <= stay.day + stay.rests; ++night)
            if (is_closed(place, date_of(prepared.assumed, night)))
                broken |= bit(NightLimit::camp_closed);
        if (broken == 0)
            return 0;
        if (!any)
            least = broken;
        any = true;
    }
    return least;
}

bool supply_closed(const Prepared& prepared, std::size_t boundary, Date date) {
    bool any = false;
    for (const std::size_t index : prepared.stretches.boundaries[boundary].places) {
        const RoutePlace& place = prepared.route.places[index];
        if (place.kind != PlaceKind::resupply && place.kind != PlaceKind::cache)
            continue;
        if (!is_closed(prepared.trip.route.places[place.spec], date))
            return false;
        any = true;
    }
    return any;
}

NightDays::NightDays(const Prepared& prepared, const NightStops& stops, const Solved& settled)
    : prepared_(prepared), stops_(stops), weights_{} {
    const Assumed& assumed = prepared.assumed;
    const std::vector<Stretch>& stretches = prepared.stretches.stretches;
    const std::size_t count = stretches.size();
    std::vector<BoatState> boats(count, BoatState::none);
    std::vector<DaySpan> each;
    // A stretch walked after dusk with these nights is walked by day with others; where there is no
    // light at all it is not.
    std::vector<bool> dark_days(count, false);
    for (std::size_t d = 0; d < settled.timeline.days.size(); ++d)
        for (std::size_t i = settled.timeline.days[d].first; i < settled.timeline.days[d].last; ++i)
            dark_days[i] = settled.darkness[d].all_day();
    double on_foot_m = 0.0, supply_m = 0.0, source_m = 0.0;
    for (std::size_t i = 0; i <= count; ++i) {
        if (prepared.stretches.boundaries[i].supply)
            supply_m = on_foot_m;
        if (wet(i))
            source_m = on_foot_m;
        on_foot_m_.push_back(on_foot_m);
        supply_m_.push_back(supply_m);
        source_m_.push_back(source_m);
        if (i == count)
            break;
        if (i > 0 && prepared.stretches.boundaries[i].supply)
            supplies_.push_back(i);
        on_foot_m += stretches[i].on_foot() ? stretches[i].length_m() : 0.0;
        const StretchTime& time = settled.timeline.stretches[i];
        moving_s_.push_back(dark_days[i] ? time.moving_s : time.by_day_s);
        if (settled.loads.portages[i])
            boats[i] = settled.loads.portages[i]->boats;
        each.push_back({static_cast<int>(i) + 1, false, i, i + 1});
    }
    by_day_.resize(count);
    each_a_day_.resize(count);
    set_changes(by_day_, prepared.stretches, {}, boats, assumed);
    set_changes(each_a_day_, prepared.stretches, each, boats, assumed);
    set_calendar(prepared.trip.days.rest_days_after);
    set_meetings();
    night_kg_ = night_mass_kg(assumed, settled);
    rows_.resize(stops.boundaries.size());
}

void NightDays::set_calendar(const std::vector<int>& rest_after) {
    int day = 1;
    for (std::size_t k = 0; k + 1 < stops_.boundaries.size(); ++k) {
        CampStay one{day, 0};
        while (std::find(rest_after.begin(), rest_after.end(), day) != rest_after.end()) {
            ++one.rests;
            ++day;
        }
        ++day;
        calendar_.push_back(one);
    }
}

void NightDays::set_meetings() {
    for (const Appointment& spec : prepared_.trip.appointments) {
        const std::chrono::local_days midnight{date_of(prepared_.assumed, spec.day)};
        Meeting meeting{&spec,
                        {},
                        geo::to_instant(midnight + spec.by, prepared_.assumed.time_zone) -
                            spec.margin};
        for (const RoutePlace& place : prepared_.route.passes(spec.at)) {
            const std::size_t boundary = prepared_.stretches.boundary_at(place.along_m);
            if (boundary > 0)
                meeting.passes.push_back(boundary);
        }
        if (!meeting.passes.empty())
            meetings_.push_back(std::move(meeting));
    }
}

bool NightDays::wet(std::size_t boundary) const {
    return prepared_.assumed.water.assumed_everywhere ||
           prepared_.stretches.boundaries[boundary].water;
}

double NightDays::room_l() const {
    const AssumedWater& water = prepared_.assumed.water;
    return water.assumed_everywhere ? HUGE_VAL : water.capacity_l - water.reserve_l;
}

const std::vector<NightDays::Reached>& NightDays::row(std::size_t from) {
    std::vector<Reached>& row = rows_[from];
    if (!row.empty())
        return row;
    const Assumed& assumed = prepared_.assumed;
    const std::size_t first = stops_.boundaries[from];
    Reached now{};
    double since_l = 0.0;
    for (std::size_t i = first; i < moving_s_.size(); ++i) {
        if (i > first && wet(i)) {
            if (!now.source)
                now.to_source_l = since_l;
            now.between_l = std::max(now.between_l, now.source ? since_l : 0.0);
            now.source = true;
            since_l = 0.0;
        }
        const double before_h = std::floor(now.moved_s / s_per_h);
        now.moved_s += prepared_.stretches.stretches[i].own_effort_s(moving_s_[i]);
        const double after_h = std::floor(now.moved_s / s_per_h);
        const bool at_the_door = after_h * s_per_h == now.moved_s && after_h > before_h;
        const Change& begins = i == first ? each_a_day_[i].before : by_day_[i].before;
        const double started_s = now.way_s + moving_s_[i] + begins.lasts_s + by_day_[i].scout_s;
        const double rests = after_h - before_h;
        const double rest_s = assumed.times.rest_per_hour_s;
        const double goes_on_s = started_s + rests * rest_s + by_day_[i].after.lasts_s;
        const double ends_s =
            started_s + (rests - (at_the_door ? 1.0 : 0.0)) * rest_s + each_a_day_[i].after.lasts_s;
        const auto drunk_l = [&](double until_s) {
            const Stretch& stretch = prepared_.stretches.stretches[i];
            return stretch.drinkable
                       ? 0.0
                       : drunk_under_way_l(assumed.water,
                                           stretch,
                                           {moving_s_[i], until_s - now.way_s - moving_s_[i]});
        };
        const double evening_l = since_l + drunk_l(ends_s);
        since_l += drunk_l(goes_on_s);
        now.way_s = goes_on_s;
        now.evening_s = ends_s;
        Reached here = now;
        (here.source ? here.after_source_l : here.to_source_l) = evening_l;
        row.push_back(here);
    }
    return row;
}

geo::sys_seconds NightDays::at(int day, double way_s) {
    const AssumedTimes& times = prepared_.assumed.times;
    const double set_off_s = day == 1 ? times.first_set_off_s : times.set_off_s;
    const auto known = set_off_.find(day);
    const geo::sys_seconds set_off =
        known != set_off_.end()
            ? known->second
            : set_off_.emplace(day, instant(prepared_.assumed, {day, set_off_s})).first->second;
    return set_off + std::chrono::seconds{std::llround(way_s)};
}

const NightDays::Light& NightDays::light(std::size_t stop, int day) {
    const auto known = light_.find({stop, day});
    if (known != light_.end())
        return known->second;
    const double along_m = prepared_.stretches.boundaries[stops_.boundaries[stop]].along_m;
    const geo::Daylight light = geo::daylight(
        date_of(prepared_.assumed, day), prepared_.route.at(along_m), prepared_.assumed.time_zone);
    const bool dark = light.twilight.day == geo::SunDay::always_below;
    return light_.emplace(std::pair{stop, day}, Light{evening_dusk(light), dark}).first->second;
}

bool NightDays::meets_closed_supply(const NightSpan& span, const CampStay& day) const {
    return std::any_of(supplies_.begin(), supplies_.end(), [&](std::size_t b) {
        return b > stops_.boundaries[span.from] && b <= stops_.boundaries[span.to] &&
               supply_closed(prepared_, b, date_of(prepared_.assumed, day.day));
    });
}

std::optional<double>
NightDays::late_for(const Meeting& meeting, const NightSpan& span, const CampStay& day) {
    const std::size_t first = stops_.boundaries[span.from];
    const std::size_t last = stops_.boundaries[span.to];
    const bool ends = span.to + 1 == stops_.boundaries.size();
    const int spec = meeting.spec->day;
    if (spec < day.day || (spec > day.day + day.rests && !ends))
        return {};
    for (const std::size_t pass : meeting.passes) {
        if (pass < (spec > day.day ? last : first) || pass > last)
            continue;
        if (pass == first || spec > day.day)
            return {}; // slept there, or a day of rest there, or all is over
        const Reached& there = row(span.from)[pass - first - 1];
        const double late_s = seconds_between(
            meeting.latest, at(day.day, pass == last ? there.evening_s : there.way_s));
        return late_s > 0.0 ? std::optional(std::min(weights_.most_late_h, late_s / s_per_h))
                            : std::nullopt;
    }
    return meeting.passes.back() > last ? std::optional(weights_.most_late_h) : std::nullopt;
}

void NightDays::price_hours(NightDay& result, double moved_s) const {
    const AssumedTimes& times = prepared_.assumed.times;
    const double over_h = (moved_s - times.hours_s) / s_per_h;
    result.cost.over_wish = weights_.over_wish_per_h * std::max(0.0, over_h);
    result.cost.uneven = weights_.uneven_per_h2 * over_h * over_h;
    if (over_h >= 0.0)
        result.longer_costs_at_least = result.cost.over_wish + result.cost.uneven;
    if (times.hours_limit_s && moved_s > *times.hours_limit_s) {
        result.broken |= bit(NightLimit::most_hours);
        result.longer_costs_at_least = HUGE_VAL;
    }
}

void NightDays::price_evening(NightDay& result,
                              const NightSpan& span,
                              const CampStay& day,
                              double evening_s) {
    const bool dusk_is_limit = prepared_.trip.days.dusk_is_limit.value_or(false);
    const Light& sky = light(span.to, day.day);
    if (dusk_is_limit && sky.dark_all_day)
        result.broken |= bit(NightLimit::dusk);
    double late_s = std::max(0.0, evening_s - weights_.out_of_camp_s);
    if (sky.dusk) {
        const double spare_s = seconds_between(at(day.day, evening_s), *sky.dusk);
        late_s = std::max(late_s, weights_.light_in_camp_s - spare_s);
        if (dusk_is_limit && spare_s < 0.0)
            result.broken |= bit(NightLimit::dusk);
    }
    result.cost.late = weights_.late_per_h * late_s / s_per_h;
    for (const Meeting& meeting : meetings_) {
        const std::optional<double> late_h = late_for(meeting, span, day);
        if (late_h && meeting.spec->hard)
            result.broken |= bit(NightLimit::appointment);
        else if (late_h)
            result.cost.missed += weights_.missed + weights_.missed_per_h * *late_h;
    }
}

/// Kilograms of each over kilometres on foot for some nights at a camp with so much water for them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): called twice, beside here
double NightDays::carried_kg_km(std::size_t camp, double nights, double litres) const {
    return (nights * night_kg_ * (on_foot_m_[camp] - supply_m_[camp]) +
            litres * (on_foot_m_[camp] - source_m_[camp])) / // a kilogram each
           metres_per_km;
}

/// Litres that are carried to a camp for the night after a day of travel and the days of rest
/// there.
double NightDays::camp_water_l(std::size_t camp, const CampStay& day, double evening_s) const {
    if (wet(camp))
        return 0.0;
    const AssumedTimes& times = prepared_.assumed.times;
    const double set_off_s = day.day == 1 ? times.first_set_off_s : times.set_off_s;
    const double night_s = s_per_day + times.set_off_s - set_off_s - evening_s;
    return used_in_camp_l(prepared_.assumed.water, night_s) +
           day.rests * used_in_camp_l(prepared_.assumed.water, s_per_day);
}

double NightDays::least(std::size_t from, std::size_t to) {
    const std::size_t camp = stops_.boundaries[to];
    const Reached& there = row(from)[camp - stops_.boundaries[from] - 1];
    NightDay day;
    price_hours(day, there.moved_s);
    day.cost.late =
        weights_.late_per_h * std::max(0.0, there.evening_s - weights_.out_of_camp_s) / s_per_h;
    if (to + 1 < stops_.boundaries.size()) {
        day.cost.dry_camp = wet(camp) ? 0.0 : weights_.dry_camp_per_night;
        const AssumedTimes& times = prepared_.assumed.times;
        const CampStay shortest{times.first_set_off_s > times.set_off_s ? 1 : 2, 0};
        day.cost.carried = weights_.carried_per_kg_km *
                           carried_kg_km(camp, 1.0, camp_water_l(camp, shortest, there.evening_s));
    }
    return day.cost.sum();
}

void NightDays::price_night(NightDay& result,
                            const NightSpan& span,
                            const CampStay& day,
                            double evening_s) const {
    const std::size_t camp = stops_.boundaries[span.to];
    const double nights = 1.0 + day.rests;
    const double litres = camp_water_l(camp, day, evening_s);
    if (!wet(camp)) {
        result.cost.dry_camp = weights_.dry_camp_per_night * nights;
        (result.source ? result.after_source_l : result.to_source_l) += litres;
    }
    result.cost.carried = weights_.carried_per_kg_km * carried_kg_km(camp, nights, litres);
    result.broken |= camp_limits(prepared_, camp, day);
}

/// Nights of waiting at the end for the connection that a day's arrival there reaches.
void NightDays::price_waiting(NightDay& result, const CampStay& day, double evening_s) {
    if (!leaves_by_connection(prepared_.trip))
        return;
    const std::optional<Leaving> leaving =
        first_leaving(prepared_.trip, prepared_.assumed, at(day.day, evening_s));
    if (!leaving) {
        result.cost.missed += weights_.missed + weights_.missed_per_h * weights_.most_late_h;
        return;
    }
    const int nights = nights_until(prepared_.assumed, day.day, leaving->at);
    result.cost.missed += weights_.waited_per_night * nights;
    const std::size_t end = stops_.boundaries.back();
    double litres = 0.0;
    if (!wet(end) && nights > 0) {
        litres = camp_water_l(end, {.day = day.day, .rests = nights - 1}, evening_s);
        result.cost.dry_camp += weights_.dry_camp_per_night * nights;
        (result.source ? result.after_source_l : result.to_source_l) += litres;
    }
    result.cost.carried += weights_.carried_per_kg_km * carried_kg_km(end, nights, litres);
}

NightDay NightDays::operator()(const NightSpan& span) {
    const std::size_t first = stops_.boundaries[span.from];
    const std::size_t last = stops_.boundaries[span.to];
    const CampStay& day = calendar_[static_cast<std::size_t>(span.travel_day) - 1];
    const Reached& there = row(span.from)[last - first - 1];
    NightDay result;
    result.to_source_l = there.to_source_l;
    result.source = there.source;
    result.after_source_l = there.after_source_l;
    price_hours(result, there.moved_s);
    price_evening(result, span, day, there.evening_s);
    if (span.to + 1 < stops_.boundaries.size())
        price_night(result, span, day, there.evening_s);
    else
        price_waiting(result, day, there.evening_s);
    const double end_l = result.source ? result.after_source_l : result.to_source_l;
    double most_l = there.between_l;
    if (result.source && (wet(last) || span.to + 1 == stops_.boundaries.size()))
        most_l = std::max(most_l, end_l);
    if (most_l > room_l() + 1e-9)
        result.broken |= bit(NightLimit::water);
    if (wet(last)) {
        result.source = true;
        result.after_source_l = 0.0;
    }
    if (prepared_.trip.days.most_days && day.day > *prepared_.trip.days.most_days)
        result.broken |= bit(NightLimit::most_days);
    if (meets_closed_supply(span, day))
        result.broken |= bit(NightLimit::supply_closed);
    return result;
}

} // namespace tumpline::planner
