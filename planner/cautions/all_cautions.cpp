#include "planner/cautions/all_cautions.h"

#include "planner/cautions/calendar_cautions.h"
#include "planner/cautions/camp_cautions.h"
#include "planner/cautions/caution_list.h"
#include "planner/cautions/caution_titles.h"
#include "planner/cautions/child_cautions.h"
#include "planner/cautions/condition_cautions.h"
#include "planner/cautions/darkness_cautions.h"
#include "planner/cautions/day_rule_cautions.h"
#include "planner/cautions/flow_cautions.h"
#include "planner/cautions/ford_cautions.h"
#include "planner/cautions/intake_cautions.h"
#include "planner/cautions/laid_food_cautions.h"
#include "planner/cautions/laid_fuel_cautions.h"
#include "planner/cautions/laid_water_cautions.h"
#include "planner/cautions/led_cautions.h"
#include "planner/cautions/left_cautions.h"
#include "planner/cautions/load_cautions.h"
#include "planner/cautions/model_range_cautions.h"
#include "planner/cautions/paddling_cautions.h"
#include "planner/cautions/ride_cautions.h"
#include "planner/cautions/safety_gear_cautions.h"
#include "planner/cautions/snow_cautions.h"
#include "planner/cautions/suitability_cautions.h"
#include "planner/cautions/supply_cautions.h"
#include "planner/cautions/upstream_cautions.h"
#include "planner/cautions/volume_cautions.h"
#include "planner/cautions/weather_cautions.h"
#include "planner/models/constants.h"
#include "planner/results/days.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

namespace tumpline::planner {

namespace {

std::string clock(const Assembly& draft, sys_seconds at) {
    return clock_words(at, draft.prepared.assumed.time_zone);
}

/// The same with the day of the trip where that is another than the one spoken of.
std::string clock_on(const Assembly& draft, sys_seconds at, int day) {
    const auto date = [&](sys_seconds moment) {
        return std::chrono::floor<std::chrono::days>(
            geo::to_local(moment, draft.prepared.assumed.time_zone));
    };
    const auto later = (date(at) - date(instant(draft, day, 43'200.0))).count();
    return later == 0 ? clock(draft, at)
                      : fmt::format("{} on day {}", clock(draft, at), day + later);
}

/// Collects cautions in the order in which they are asked for.
class CautionRules {
  public:
    CautionRules(const Assembly& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    std::vector<Caution> run();

  private:
    void days();
    void light(const PlanDay& day);
    void energy(const PlanDay& day);
    void arrival_after(const PlanDay& day, sys_seconds dusk, Level level);
    void moving_time(const PlanDay& day);
    void rest_days();
    void appointments();
    void route();
    void undrawn(const RouteLeg& leg);
    void whole_trip();
    /// What is walked at the night's pace on a day; empty if nothing is.
    [[nodiscard]] std::string in_the_dark(int day) const;

    const Assembly& draft_;
    const Plan& plan_;
    CautionList list_;
};

std::string CautionRules::in_the_dark(int day) const {
    double dark_s = 0.0;
    for (const PlanLeg& leg : plan_.legs)
        if (leg.day == day && on_foot(leg.travel))
            dark_s += leg.dark_s;
    constexpr double shortest_s = 60.0;
    return dark_s < shortest_s ? std::string()
                               : fmt::format("{} on foot are planned at the pace of the night. ",
                                             show_duration(dark_s));
}

void CautionRules::arrival_after(const PlanDay& day, sys_seconds dusk, Level level) {
    const auto late_s = static_cast<double>((day.arrive - dusk).count());
    Caution& caution = list_.add(
        level,
        "after-dusk",
        fmt::format("Arrival at {} is {} after dusk ({}). {}Set off earlier or sleep before it.",
                    clock_on(draft_, day.arrive, day.day),
                    show_duration(late_s),
                    clock(draft_, dusk),
                    in_the_dark(day.day)),
        "NOAASolar");
    set_figure(caution, show_duration(late_s) + " late", late_s);
}

void CautionRules::moving_time(const PlanDay& day) {
    const AssumedTimes& times = draft_.prepared.assumed.times;
    const double moving_s = day.moving_s - day.ride_s;
    const std::string moving = show_duration(moving_s);
    const auto add = [&](Level level, std::string code, std::string_view what, double limit_s) {
        const std::string limit = show_duration(limit_s);
        Caution& caution =
            list_.add(level, std::move(code), fmt::format(fmt::runtime(what), moving, limit));
        set_figure(caution, fmt::format("{} of {}", moving, limit), moving_s - limit_s);
    };
    if (times.hours_limit_s && moving_s > *times.hours_limit_s)
        add(Level::stop,
            "hours-over-limit",
            "{} of moving is more than the limit of {}.",
            *times.hours_limit_s);
    else if (moving_s > times.hours_s * 1.001)
        add(Level::caution, "longer-than-asked", "{} of moving; asked were {}.", times.hours_s);
}

/// Of the hours of light.
void CautionRules::light(const PlanDay& day) {
    const std::optional<sys_seconds>& dawn = day.light.twilight.rise;
    const std::optional<sys_seconds> dusk = dusk_of(day);
    const bool dark_all_day = day.light.twilight.day == geo::SunDay::always_below;
    const Level dusk_level =
        draft_.prepared.trip.days.dusk_is_limit.value_or(false) ? Level::stop : Level::caution;
    if (dark_all_day)
        list_.add(
            dusk_level,
            "after-dusk",
            fmt::format("The sun stays so low all day that there is not even twilight. {}Every "
                        "leg is in the dark.",
                        in_the_dark(day.day)),
            "NOAASolar");
    else if (dusk && day.arrive > *dusk)
        arrival_after(day, *dusk, dusk_level);
    else if (dusk && day.arrive_late > *dusk)
        list_.add(
            Level::note,
            "dusk-within-band",
            fmt::format(
                "On a slow day arrival falls after dusk ({}): the late end of the band is {}.",
                clock(draft_, *dusk),
                clock_on(draft_, day.arrive_late, day.day)),
            "NOAASolar");
    if (!dark_all_day && dawn && day.set_off < *dawn)
        list_.add(Level::caution,
                  "before-dawn",
                  fmt::format("Setting off at {} is before first light ({}).",
                              clock(draft_, day.set_off),
                              clock(draft_, *dawn)),
                  "NOAASolar");
}

void CautionRules::energy(const PlanDay& day) {
    if (day.ride_s > 0.0 && day.moving_s <= day.ride_s)
        return; // no day of effort
    for (std::size_t m = 0; m < day.members.size(); ++m) {
        if (draft_.prepared.assumed.members[m].least_day.of_rest_j > 0.0)
            continue; // measured on adults
        const MemberDay& member = day.members[m];
        constexpr double least_j = 10e6,
                         most_j = 27e6; // field values, docs/models/resting_energy.md
        if (member.energy_j < least_j || member.energy_j > most_j)
            list_.add(
                Level::note,
                "energy-out-of-bounds",
                fmt::format(
                    "{} would spend {:.1f} MJ ({:.0f} kcal), outside the 10 to 27 MJ measured "
                    "on comparable days: check the inputs.",
                    member.member,
                    member.energy_j / 1e6,
                    member.energy_j / j_per_kcal),
                "Ruby2002");
    }
}

void CautionRules::days() {
    for (const PlanDay& day : plan_.days) {
        if (day.rest_day)
            continue;
        list_.at(day.day);
        light(day);
        moving_time(day);
        if (day.dry_camp)
            list_.add(
                Level::note,
                "dry-camp",
                fmt::format("No dependable water is known at {}: the litres for the night are "
                            "carried there.",
                            day.to));
        energy(day);
    }
    list_.anywhere();
    const std::vector<Caution> camps = camp_cautions(draft_);
    list_.add(camps);
}

/// A day of rest follows a night: where none does, the trip file asks for what nobody gets.
void CautionRules::rest_days() {
    for (const int day : draft_.prepared.trip.days.rest_days_after) {
        const bool taken = std::any_of(plan_.days.begin(), plan_.days.end(), [&](const auto& one) {
            return one.day == day + 1 && one.rest_day;
        });
        if (!taken)
            list_.add(Level::caution,
                      "rest-day-unused",
                      fmt::format("No night follows day {} on this trip, so that the day of rest "
                                  "asked for after it is not taken.",
                                  day));
    }
}

void CautionRules::appointments() {
    for (const PlanAppointment& one : plan_.appointments) {
        list_.at(one.day);
        if (one.spare_s >= 0.0)
            continue;
        const double early_s = one.spare_s + one.margin_s;
        const std::string arrive = clock_on(draft_, one.arrive, one.day);
        Caution& caution = list_.add(
            one.hard ? Level::stop : Level::caution,
            "appointment-missed",
            early_s < 0.0
                ? fmt::format("{} at {}: arrival {} is {} after {} on day {}, when it is gone.",
                              one.what,
                              one.at,
                              arrive,
                              show_duration(-early_s),
                              clock(draft_, one.by),
                              one.day)
                : fmt::format("{} at {}: arrival {} leaves {} of the {} wanted before {}.",
                              one.what,
                              one.at,
                              arrive,
                              show_duration(early_s),
                              show_duration(one.margin_s),
                              clock(draft_, one.by)));
        caution.subject = fmt::format("{} at {}", one.what, one.at);
        set_figure(caution,
                   early_s < 0.0 ? fmt::format("missed by {}", show_duration(-early_s))
                                 : fmt::format("{} less than the margin asked for",
                                               show_duration(-one.spare_s)),
                   -one.spare_s);
    }
    list_.anywhere();
}

/// What is not known of a leg without a line.
void CautionRules::undrawn(const RouteLeg& leg) {
    list_.add(
        Level::caution,
        "undrawn-leg",
        led(leg.travel)
            ? "No line is known for this leg: it is as long as the trip file says, stands on no "
              "map and in no track, and the river's fall is not known. Find it on a map before "
              "you go."
        : afloat(leg.travel)
            ? "No line is known for this leg: it is as long as the trip file says, stands on "
              "no map and in no track, the wind counts as from ahead all the way, and a "
              "river's fall is not known. Find it on a map before you go."
            : "No line is known for this leg: length and climb are the trip file's, spread "
              "evenly and as steep up as down; it stands on no map and in no track. Where it "
              "is steep, exposed or hard to find is not known. Find it on a map before you "
              "go.",
        "docs/route.md");
}

void CautionRules::route() {
    const Route& route = draft_.prepared.route;
    for (const Caution& caution : route.cautions)
        list_.add({caution});
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const RouteLeg& leg = route.legs[i];
        list_.at({}, LegNumber::of_index(i));
        if (!leg.drawn() && !is_ride(leg.travel))
            undrawn(leg);
        if (!leg.climb_known() && on_foot(leg.travel))
            list_.add(Level::caution,
                      "no-elevation",
                      "No heights are known here: the ground is taken as level, so time, climb and "
                      "energy are too low "
                      "if it is not.");
        else if (leg.profile.unknown > 0 && on_foot(leg.travel))
            list_.add(
                Level::caution,
                "level-ground-assumed",
                fmt::format("{} of {} heights are missing over more than 500 m: the least climb is "
                            "assumed there.",
                            leg.profile.unknown,
                            leg.profile.heights_m.size()));
    }
    list_.anywhere();
    const geo::Repairs& repaired = route.repairs;
    const std::size_t count = repaired.duplicates + repaired.spikes + repaired.invalid_points +
                              repaired.void_heights + repaired.backward_times +
                              repaired.invalid_times;
    if (count > 0)
        list_.add(Level::note,
                  "tracks-repaired",
                  fmt::format(
                      "{} points of the tracks were repaired: {} duplicates, {} spikes, {} without "
                      "a place on "
                      "Earth, {} void heights, {} times running backwards, {} that are no times.",
                      count,
                      repaired.duplicates,
                      repaired.spikes,
                      repaired.invalid_points,
                      repaired.void_heights,
                      repaired.backward_times,
                      repaired.invalid_times),
                  "docs/tracks.md");
}

void CautionRules::whole_trip() {
    const Assumed& assumed = draft_.prepared.assumed;
    list_.add(draft_.settled.cautions);
    if (!plan_.converged.settled)
        list_.add(
            Level::note,
            "nights-flipped",
            "Loads and times did not converge: they alternated between two solutions. The heavier "
            "one is shown: the earlier stop for the night, the carry with more lengths, the last "
            "sharing out.");
    if (!draft_.prepared.trip.start.ok())
        list_.add(
            Level::caution, "no-date", "No start date is given: daylight is that of 21 June.");
    if (assumed.weather.water_c && *assumed.weather.water_c < 15.0 && plan_.totals.paddle_m > 0.0)
        list_.add(
            Level::note,
            "cold-water",
            format_both(
                "Water at {}: about a minute to get the breath back, ten minutes of useful "
                "movement, an hour before consciousness goes. {}Dress for the water, not for the "
                "air.",
                in_both(show_temperature, *assumed.weather.water_c),
                *assumed.weather.water_c < 10.0
                    ? format_both("Below {} a wetsuit or dry suit is held to be essential. ",
                                  in_both(show_temperature, 10.0))
                    : UnitText("")),
            "ColdWater1101");
}

std::vector<Caution> CautionRules::run() {
    days();
    rest_days();
    list_.add(load_cautions(draft_, plan_));
    list_.add(volume_cautions(plan_));
    list_.add(child_cautions(draft_, plan_));
    list_.add(water_cautions(draft_, plan_));
    list_.add(upstream_cautions(draft_, plan_));
    list_.add(left_cautions(draft_, plan_));
    list_.add(laid_food_cautions(draft_));
    list_.add(laid_fuel_cautions(draft_));
    list_.add(laid_water_cautions(draft_));
    list_.add(suitability_cautions(plan_));
    list_.add(flow_cautions(plan_));
    list_.add(darkness_cautions(draft_, plan_));
    list_.add(ride_cautions(plan_));
    list_.add(led_cautions(draft_, plan_));
    list_.add(safety_gear_cautions(draft_, plan_));
    list_.add(condition_cautions(draft_, plan_));
    list_.add(weather_cautions(draft_, plan_));
    list_.add(snow_cautions(draft_, plan_));
    list_.add(ford_cautions(draft_));
    list_.add(supply_cautions(draft_, plan_));
    list_.add(intake_cautions(draft_, plan_));
    appointments();
    list_.add(calendar_cautions(draft_, plan_));
    route();
    list_.add(range_cautions(draft_, plan_));
    list_.add(day_rule_cautions(draft_, plan_));
    whole_trip();
    list_.add(usual_water_cautions(plan_));
    return list_.take();
}

} // namespace

std::vector<Caution> plan_cautions(const Assembly& draft, const Plan& plan) {
    std::vector<Caution> cautions = CautionRules(draft, plan).run();
    for (Caution& caution : cautions)
        caution.title = caution_kind(caution.code).title;
    return cautions;
}

} // namespace tumpline::planner
