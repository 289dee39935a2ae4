#include "planner/day_rules.h"
#include "planner/model_ranges.h"
#include "planner/models/constants.h"
#include "planner/models/paddling.h"
#include "planner/models/river.h"
#include "planner/models/wind.h"
#include "planner/plan_draft.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <set>
#include <string_view>

namespace tumpline::planner {

namespace {

constexpr std::string_view practice = "common practice, no source";
constexpr std::array<std::string_view, 7> roman{"0", "I", "II", "III", "IV", "V", "VI"};

std::string clock(const Draft& draft, sys_seconds at) {
    const auto minute = std::chrono::round<std::chrono::minutes>(at); // as the text shows it
    return geo::rfc3339(minute, draft.prepared.assumed.time_zone).substr(11, 5);
}

std::string spell(double duration_s) {
    const long minutes = std::lround(duration_s / 60.0);
    return minutes >= 60 ? fmt::format("{} h {:02} min", minutes / 60, minutes % 60)
                         : fmt::format("{} min", minutes);
}

/// Collects cautions in the order in which they are asked for.
class Watch {
  public:
    Watch(const Draft& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    std::vector<Caution> run();

  private:
    void say(Level level, std::string code, std::string text, std::string_view source = practice) {
        said_.push_back({level, std::move(code), day_, leg_, std::move(text), std::string(source)});
    }

    void days();
    void packs();
    void water_legs();
    void estimates();
    void wind_on(const PlanLeg& leg);
    void river_on(const PlanLeg& leg);
    void estimated_current_on(const PlanLeg& leg);
    void craft_on(const PlanLeg& leg);
    void appointments();
    void route();
    void whole_trip();
    void usual_water();

    [[nodiscard]] const TripLeg& asked(const PlanLeg& leg) const {
        return draft_.prepared.route.legs[leg.leg - 1].asked;
    }

    const Draft& draft_;
    const Plan& plan_;
    std::optional<int> day_;
    std::optional<std::size_t> leg_;
    std::set<std::size_t> told_uneven_; ///< craft whose bags were spoken of
    std::vector<Caution> said_;
};

void Watch::days() {
    const AssumedTimes& times = draft_.prepared.assumed.times;
    for (const PlanDay& day : plan_.days) {
        if (day.rest_day)
            continue;
        day_ = day.day;
        leg_.reset();
        const std::optional<sys_seconds>& dawn = day.light.twilight.rise;
        const std::optional<sys_seconds> dusk = dusk_of(day);
        const bool dark_all_day = day.light.twilight.day == geo::SunDay::always_below;
        const Level dusk_level =
            draft_.prepared.trip.days.dusk_is_limit.value_or(false) ? Level::stop : Level::caution;
        if (dark_all_day)
            say(dusk_level,
                "after-dusk",
                "The sun stays so low all day that there is not even twilight; every leg is in the "
                "dark.",
                "NOAASolar");
        else if (dusk && day.arrive > *dusk)
            say(dusk_level,
                "after-dusk",
                fmt::format(
                    "Arrival at {} is {} after dusk ({}). Set off earlier or sleep before it.",
                    clock(draft_, day.arrive),
                    spell(static_cast<double>((day.arrive - *dusk).count())),
                    clock(draft_, *dusk)),
                "NOAASolar");
        else if (dusk && day.arrive_late > *dusk)
            say(Level::note,
                "dusk-within-band",
                fmt::format(
                    "On a slow day arrival falls after dusk ({}): the late end of the band is {}.",
                    clock(draft_, *dusk),
                    clock(draft_, day.arrive_late)),
                "NOAASolar");
        if (!dark_all_day && dawn && day.set_off < *dawn)
            say(Level::caution,
                "before-dawn",
                fmt::format("Setting off at {} is before first light ({}).",
                            clock(draft_, day.set_off),
                            clock(draft_, *dawn)),
                "NOAASolar");
        if (times.hours_limit_s && day.moving_s > *times.hours_limit_s)
            say(Level::stop,
                "hours-over-limit",
                fmt::format("{} of moving is more than the limit of {}.",
                            spell(day.moving_s),
                            spell(*times.hours_limit_s)));
        else if (day.moving_s > times.hours_s * 1.001)
            say(Level::caution,
                "longer-than-asked",
                fmt::format(
                    "{} of moving; asked were {}.", spell(day.moving_s), spell(times.hours_s)));
        if (day.dry_camp)
            say(Level::note,
                "dry-camp",
                fmt::format("No dependable water is known at {}: the litres for the night are "
                            "carried there.",
                            day.to));
        for (const MemberDay& member : day.members) {
            constexpr double least_j = 10e6,
                             most_j = 27e6; // field values, docs/models/resting_energy.md
            if (member.energy_j < least_j || member.energy_j > most_j)
                say(Level::note,
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
    day_.reset();
    const std::vector<Caution> camps = camp_cautions(draft_);
    said_.insert(said_.end(), camps.begin(), camps.end());
}

void Watch::packs() {
    std::set<std::size_t> told_crushed;
    for (const PlanLeg& leg : plan_.legs) {
        if (leg.travel == Travel::paddle)
            continue;
        day_ = leg.day;
        leg_ = leg.leg;
        for (const MemberLoad& load : leg.loads) {
            const auto member = static_cast<std::size_t>(&load - leg.loads.data());
            const double body_kg = draft_.prepared.trip.party[member].body_kg;
            if (load.pack_max_kg > load.limit_kg + shown_over_kg)
                say(Level::caution,
                    "pack-over-limit",
                    fmt::format(
                        "{} carries {:.1f} kg, {:.1f} kg over the limit of {:.1f} kg ({:.0f} % of "
                        "body mass).",
                        load.member,
                        load.pack_max_kg,
                        load.pack_max_kg - load.limit_kg,
                        load.limit_kg,
                        100.0 * load.pack_max_kg / body_kg),
                    "Bastien2016");
            if (leg.travel == Travel::walk && load.pack_max_kg > body_kg &&
                told_crushed.insert(member).second)
                say(Level::stop,
                    "pack-over-body",
                    fmt::format("{}'s pack of {:.1f} kg is heavier than its bearer: no day is "
                                "walked under it. Take less, put in a supply, or carry in stages.",
                                load.member,
                                load.pack_max_kg),
                    "Bastien2016");
        }
    }
    day_.reset();
    leg_.reset();
}

void Watch::craft_on(const PlanLeg& leg) {
    const Trip& trip = draft_.prepared.trip;
    const RiverClass here = asked(leg).river_class.value_or(0);
    for (std::size_t c = 0; c < leg.craft.size(); ++c) {
        const CraftLoad& load = leg.craft[c];
        if (load.payload_kg > 0.0 && load.load_kg > load.payload_kg)
            say(Level::stop,
                "craft-over-payload",
                fmt::format("{} bears {:.1f} kg, {:.1f} kg over its payload of {:.1f} kg.",
                            load.craft,
                            load.load_kg,
                            load.load_kg - load.payload_kg,
                            load.payload_kg));
        if (!load.fits_volume)
            say(Level::caution,
                "bags-too-small",
                fmt::format("What goes into the bags of {} does not fit their volume.",
                            load.craft));
        const double apart_kg = std::abs(load.left_kg - load.right_kg);
        if (apart_kg > 2.0 && told_uneven_.insert(c).second)
            say(Level::note,
                "bags-uneven",
                fmt::format(
                    "The two bags of {} differ by {:.1f} kg: no piece can be moved to level them.",
                    load.craft,
                    apart_kg));
        if (trip.craft[c].river_class && here > *trip.craft[c].river_class)
            say(Level::stop,
                "class-over-craft",
                fmt::format("Class {} is harder than {} is meant for (class {}). Plan a portage.",
                            roman[static_cast<std::size_t>(here)],
                            load.craft,
                            roman[static_cast<std::size_t>(*trip.craft[c].river_class)]),
                "AWScale");
    }
    for (const Member& member : trip.party)
        if (member.river_class && here > *member.river_class)
            say(Level::stop,
                "class-over-party",
                fmt::format(
                    "Class {} is harder than {} paddles (class {}). Plan a portage, or paddle it "
                    "with a qualified guide.",
                    roman[static_cast<std::size_t>(here)],
                    member.name,
                    roman[static_cast<std::size_t>(*member.river_class)]),
                "AWScale");
}

void Watch::wind_on(const PlanLeg& leg) {
    const AssumedWeather& weather = draft_.prepared.assumed.weather;
    if (leg.stopped) {
        bool by_current = false;
        for (std::size_t i = 0; i < draft_.settled.afloat.size(); ++i)
            if (draft_.settled.loads.plan_leg[i] + 1 ==
                static_cast<std::size_t>(&leg - plan_.legs.data()) + 1)
                by_current = by_current || draft_.settled.afloat[i].paddle.by_current;
        if (by_current)
            say(Level::stop,
                "current-stops-boat",
                "Against this current the boat makes less than 0.3 m/s: line it from the bank or "
                "carry. "
                "The time shown is at 0.3 m/s.");
        else
            say(Level::stop,
                "wind-stops-boat",
                fmt::format(
                    "Against {:.0f} km/h of wind the boat makes less than 0.3 m/s: wait, follow "
                    "the sheltered shore or carry. The time shown is at 0.3 m/s.",
                    weather.wind_mps * 3.6));
    }
    if (asked(leg).water.value_or(Water::lake) != Water::river &&
        !asked(leg).open_crossing.value_or(false)) {
        for (std::size_t c = 0; c < draft_.prepared.assumed.craft.size(); ++c) {
            const double ceiling_mps = draft_.prepared.assumed.craft[c].wind_ceiling_mps;
            const double here_mps = weather.wind_mps * (1.0 - asked(leg).shelter.value_or(0.0));
            if (here_mps > ceiling_mps)
                say(Level::caution,
                    "wind-over-ceiling",
                    fmt::format(
                        "Wind of {:.0f} km/h (force {}) is above the ceiling of {:.0f} km/h for "
                        "open water with {}: wait, or keep to a sheltered shore.",
                        here_mps * 3.6,
                        beaufort(here_mps),
                        ceiling_mps * 3.6,
                        draft_.prepared.trip.craft[c].name));
        }
    }
    if (!asked(leg).open_crossing.value_or(false))
        return;
    const int force = beaufort(weather.wind_mps);
    for (std::size_t c = 0; c < draft_.prepared.assumed.craft.size(); ++c) {
        const AssumedCraft& craft = draft_.prepared.assumed.craft[c];
        if (weather.wind_mps > craft.wind_ceiling_mps)
            say(Level::stop,
                "exposed-crossing",
                fmt::format("Open crossing in {:.0f} km/h of wind (force {}): above the ceiling of "
                            "{:.0f} km/h "
                            "for {}. Wait, or follow the shore.",
                            weather.wind_mps * 3.6,
                            force,
                            craft.wind_ceiling_mps * 3.6,
                            draft_.prepared.trip.craft[c].name));
    }
    say(Level::caution,
        "exposed-crossing",
        fmt::format("Open crossing from {} to {} at force {}: wind often rises by midday and a "
                    "lake can turn "
                    "rough within 20 minutes. Turn back on your own limit.",
                    clock(draft_, leg.start),
                    clock(draft_, leg.end),
                    force));
}

void Watch::river_on(const PlanLeg& leg) {
    if (asked(leg).water.value_or(Water::lake) != Water::river)
        return;
    const RiverClass here = asked(leg).river_class.value_or(0);
    if (here >= 3)
        say(Level::caution,
            "class-hard",
            fmt::format(
                "Class {} is what your source said of one day and one level. Look before you run; "
                "landing and walking is always an available plan. Ask a guide who knows it now.",
                roman[static_cast<std::size_t>(here)]),
            "AWScale");
    if (here == 0)
        say(Level::note,
            "class-unknown",
            "No class is given for this river: treat it as unknown until you have seen it.",
            "AWScale");
    if (std::abs(leg.gradient) > 0.0)
        say(Level::note,
            "gradient-hint",
            fmt::format("The river falls {:.1f} m/km ({:.0f} ft/mile), in its steepest 500 m "
                        "{:.1f} m/km ({:.0f} ft/mile): {}. "
                        "Gradient is a hint where to look closer, never a class.",
                        m_per_km(leg.gradient),
                        ft_per_mile(leg.gradient),
                        m_per_km(leg.steepest_500m),
                        ft_per_mile(leg.steepest_500m),
                        gradient_hint(std::abs(leg.gradient))));
    if (leg.current_estimate && leg.current_mps != 0.0)
        estimated_current_on(leg);
    else if (leg.current_mps == 0.0)
        say(Level::note,
            "no-current",
            "No current is given for this river: times are those of still water.");
}

void Watch::estimated_current_on(const PlanLeg& leg) {
    const PlanCurrent& guess = *leg.current_estimate;
    const auto kmh = [](double mps) { return 3.6 * std::abs(mps); };
    say(Level::note,
        "current-estimated",
        fmt::format(
            "No current is given: {:.1f} km/h{} is Manning's estimate from a fall of {:.1f} "
            "m/km, {:.1f} m of depth and the bed {}{}, between {:.1f} and {:.1f} km/h for "
            "its roughness alone.{} A gauge, or a stick timed over a known length, is "
            "better.",
            kmh(guess.likely_mps),
            guess.likely_mps < 0.0 ? " against" : "",
            m_per_km(guess.slope),
            guess.depth_m,
            guess.bed,
            guess.steep ? ", as rough as steep streams are" : "",
            kmh(guess.slow_mps),
            kmh(guess.fast_mps),
            guess.limited ? " It is held at critical flow (Froude number 1): a river that "
                            "steep is falls and pools, not one even current."
                          : ""),
        guess.steep ? "Jarrett1985" : "Chow1959");
}

void Watch::water_legs() {
    const Assumed& assumed = draft_.prepared.assumed;
    const bool any_paddle =
        std::any_of(plan_.legs.begin(), plan_.legs.end(), [](const PlanLeg& leg) {
            return leg.travel == Travel::paddle;
        });
    if (any_paddle && assumed.craft.empty())
        say(Level::stop, "no-craft", "The route has legs afloat and the trip names no craft.");
    for (std::size_t m = 0; any_paddle && !assumed.craft.empty() && m < assumed.members.size();
         ++m) {
        const bool seated =
            std::any_of(assumed.craft.begin(), assumed.craft.end(), [&](const AssumedCraft& craft) {
                return std::find(craft.crew.begin(), craft.crew.end(), m) != craft.crew.end();
            });
        if (!seated)
            say(Level::stop,
                "no-craft",
                fmt::format("{} sits in no craft.", draft_.prepared.trip.party[m].name));
    }
    for (const PlanLeg& leg : plan_.legs) {
        if (leg.travel != Travel::paddle)
            continue;
        day_ = leg.day;
        leg_ = leg.leg;
        craft_on(leg);
        wind_on(leg);
        river_on(leg);
    }
    day_.reset();
    leg_.reset();
    if (any_paddle)
        estimates();
}

/// What is an estimate without a published test behind it says so.
void Watch::estimates() {
    const Assumed& assumed = draft_.prepared.assumed;
    const bool windy =
        assumed.models.paddling == PaddlingModel::power_balance && assumed.weather.wind_mps > 0.0;
    std::vector<std::string> under_wind, usual;
    for (std::size_t c = 0; c < assumed.craft.size(); ++c) {
        const AssumedCraft& craft = assumed.craft[c];
        const std::string& name = draft_.prepared.trip.craft[c].name;
        if (windy && hull_is_estimate(craft.kind))
            under_wind.push_back(name);
        if (craft.usual_speed && calm_speed_is_estimate(craft.kind))
            usual.push_back(name);
    }
    std::string text;
    if (!under_wind.empty())
        text = fmt::format("Speeds under wind are an estimate ({}): no published test of such "
                           "boats was found.",
                           fmt::join(under_wind, ", "));
    if (!usual.empty())
        text += fmt::format("{}So is the calm speed ({}), which the trip file does not give: your "
                            "own recorded one is better.",
                            text.empty() ? "" : " ",
                            fmt::join(usual, ", "));
    if (under_wind.empty() && !usual.empty())
        text = fmt::format("The calm speed is an estimate ({}), since the trip file does not give "
                           "it and no published test of such boats was found: your own recorded "
                           "one is better.",
                           fmt::join(usual, ", "));
    if (!text.empty())
        say(Level::note, "paddling-estimate", std::move(text), "docs/models/paddling.md");
}

void Watch::appointments() {
    for (const PlanAppointment& one : plan_.appointments) {
        day_ = one.day;
        if (one.spare_s < 0.0)
            say(one.hard ? Level::stop : Level::caution,
                "appointment-missed",
                fmt::format("{} at {}: arrival {} leaves {} of the {} wanted before {}.",
                            one.what,
                            one.at,
                            clock(draft_, one.arrive),
                            one.spare_s + one.margin_s < 0.0 ? std::string("nothing")
                                                             : spell(one.spare_s + one.margin_s),
                            spell(one.margin_s),
                            clock(draft_, one.by)));
    }
    day_.reset();
}

void Watch::route() {
    const Route& route = draft_.prepared.route;
    for (const Caution& caution : route.cautions)
        said_.push_back(caution);
    for (std::size_t i = 0; i < route.legs.size(); ++i) {
        const RouteLeg& leg = route.legs[i];
        leg_ = i + 1;
        if (leg.profile.heights_m.empty() && leg.travel != Travel::paddle)
            say(Level::caution,
                "no-elevation",
                "No heights are known here: the ground is taken as level, so time, climb and "
                "energy are too low "
                "if it is not.");
        else if (leg.profile.unknown > 0 && leg.travel != Travel::paddle)
            say(Level::caution,
                "level-ground-assumed",
                fmt::format("{} of {} heights are missing over more than 500 m: the least climb is "
                            "assumed there.",
                            leg.profile.unknown,
                            leg.profile.heights_m.size()));
    }
    leg_.reset();
    const geo::Repairs& mended = route.repairs;
    const std::size_t count = mended.duplicates + mended.spikes + mended.invalid_points +
                              mended.void_heights + mended.backward_times;
    if (count > 0)
        say(Level::note,
            "tracks-mended",
            fmt::format("{} points of the tracks were mended: {} duplicates, {} spikes, {} without "
                        "a place on "
                        "Earth, {} void heights, {} times running backwards.",
                        count,
                        mended.duplicates,
                        mended.spikes,
                        mended.invalid_points,
                        mended.void_heights,
                        mended.backward_times),
            "docs/tracks.md");
}

void Watch::whole_trip() {
    const Assumed& assumed = draft_.prepared.assumed;
    said_.insert(said_.end(), draft_.settled.cautions.begin(), draft_.settled.cautions.end());
    if (!plan_.converged.settled)
        say(Level::note,
            "nights-flipped",
            "Two answers took turns and did not settle: of nights the earlier stop was kept, of "
            "carries the one with more lengths, of the sharing out the last.");
    if (!draft_.prepared.trip.start.ok())
        say(Level::caution, "no-date", "No start date is given: daylight is that of 21 June.");
    if (assumed.weather.water_c && *assumed.weather.water_c < 15.0 && plan_.totals.paddle_m > 0.0)
        say(Level::caution,
            "cold-water",
            fmt::format(
                "Water at {:.0f} C: about a minute to get the breath back, ten minutes of useful "
                "movement, an hour before consciousness goes. {}Dress for the water, not for the "
                "air.",
                *assumed.weather.water_c,
                *assumed.weather.water_c < 10.0
                    ? "Below 10 C a wetsuit or dry suit is held to be essential. "
                    : ""),
            "ColdWater1101");
}

void Watch::usual_water() {
    if (plan_.totals.paddle_m <= 0.0)
        return;
    say(Level::caution,
        "usual-water",
        "On the water: life jackets are worn. Trees in the water are on no map; expect them at "
        "bends and after "
        "high water. Weirs and low dams are never run: land well above. Thunder heard: off the "
        "water. Times on "
        "moving water hold for the flow you entered: compare with the gauge and with local advice "
        "on the day. "
        "The rules of the local authority, current river information and qualified guides come "
        "before this plan.",
        "USCGStatistics");
}

std::vector<Caution> Watch::run() {
    days();
    packs();
    water_legs();
    const std::vector<Caution> supplies = supply_cautions(draft_, plan_);
    said_.insert(said_.end(), supplies.begin(), supplies.end());
    appointments();
    route();
    for (const std::vector<Caution>& more :
         {range_cautions(draft_, plan_), day_rule_cautions(draft_, plan_)})
        said_.insert(said_.end(), more.begin(), more.end());
    whole_trip();
    usual_water();
    return std::move(said_);
}

} // namespace

std::vector<Caution> plan_cautions(const Draft& draft, const Plan& plan) {
    return Watch(draft, plan).run();
}

} // namespace tumpline::planner
