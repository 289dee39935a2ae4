#include "planner/cautions/paddling_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/loads/limits.h"
#include "planner/models/paddling.h"
#include "planner/models/river.h"
#include "planner/models/wind.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

namespace tumpline::planner {

namespace {

/// Six inches; common practice for open boats, no source.
constexpr double least_freeboard_m = 0.1524;

/// "class III where class II is the most".
std::string class_of_class(RiverClass here, RiverClass most) {
    return fmt::format("class {}, at most class {}", class_word(here), class_word(most));
}

/// What is to be said of boats, wind and rivers, leg by leg.
class WaterWatch {
  public:
    WaterWatch(const Assembly& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    std::vector<Caution> run() {
        water_legs();
        return list_.take();
    }

  private:
    void water_legs();
    void estimates();
    void wind_on(const PlanLeg& leg);
    void wind_over_ceiling(const PlanLeg& leg, bool crossing);
    void river_on(const PlanLeg& leg);
    void hard_class(RiverClass here);
    void estimated_current_on(const PlanLeg& leg);
    void craft_on(const PlanLeg& leg);
    void boat_on(const CraftLoad& load);
    void class_over_craft(const Craft& craft, RiverClass here);
    void class_over_member(const Member& member, RiverClass here);

    [[nodiscard]] const TripLeg& spec(const PlanLeg& leg) const {
        return draft_.prepared.route.legs[leg.leg.index()].spec;
    }

    const Assembly& draft_;
    const Plan& plan_;
    CautionList list_;
    std::set<std::size_t> told_uneven_; ///< craft whose bags were spoken of
};

void WaterWatch::boat_on(const CraftLoad& load) {
    if (load.payload_kg > 0.0 && over_limit(load.load_kg, load.payload_kg)) {
        Caution& caution = list_.add(Level::stop,
                                     "craft-over-payload",
                                     format_both("{} bears {}, {} over its payload of {}.",
                                                 load.craft,
                                                 in_both(show_mass, load.load_kg),
                                                 in_both(show_mass, load.load_kg - load.payload_kg),
                                                 in_both(show_mass, load.payload_kg)));
        caution.subject = load.craft;
        set_figure(caution,
                   format_both("{} of {}",
                               in_both(show_mass, load.load_kg),
                               in_both(show_mass, load.payload_kg)),
                   load.load_kg - load.payload_kg);
    }
    if (load.freeboard_m && *load.freeboard_m < least_freeboard_m) {
        Caution& caution =
            list_.add(*load.freeboard_m <= 0.0 ? Level::stop : Level::caution,
                      "low-freeboard",
                      format_both("{} has {} of freeboard under this load; with less than {} "
                                  "small waves come in. Take less, or another craft.",
                                  load.craft,
                                  in_both(show_length, *load.freeboard_m),
                                  in_both(show_length, least_freeboard_m)));
        caution.subject = load.craft;
        set_figure(caution, in_both(show_length, *load.freeboard_m), -*load.freeboard_m);
    }
    if (!load.fits_volume)
        list_
            .add(
                Level::caution,
                "bags-too-small",
                fmt::format("What goes into the bags of {} does not fit their volume.", load.craft))
            .subject = load.craft;
}

void WaterWatch::craft_on(const PlanLeg& leg) {
    const Trip& trip = draft_.prepared.trip;
    const RiverClass here = draft_.prepared.route.legs[leg.leg.index()].class_run().value_or(0);
    for (std::size_t c = 0; c < leg.craft.size(); ++c) {
        const CraftLoad& load = leg.craft[c];
        boat_on(load);
        const double apart_kg = std::abs(load.left_kg - load.right_kg);
        if (apart_kg > 2.0 && told_uneven_.insert(c).second)
            list_.add(
                Level::note,
                "bags-uneven",
                format_both("The two bags of {} differ by {}: no piece can be moved to level them.",
                            load.craft,
                            in_both(show_mass, apart_kg)));
        class_over_craft(trip.craft[c], here);
    }
    for (const Member& member : trip.party)
        class_over_member(member, here);
}

void WaterWatch::class_over_craft(const Craft& craft, RiverClass here) {
    if (!craft.river_class || here <= *craft.river_class)
        return;
    Caution& caution =
        list_.add(Level::stop,
                  "class-over-craft",
                  fmt::format("Class {} is harder than {} is meant for (class {}). Plan a portage.",
                              class_word(here),
                              craft.name,
                              class_word(*craft.river_class)),
                  "AWScale");
    caution.subject = craft.name;
    set_figure(caution, class_of_class(here, *craft.river_class), here);
}

void WaterWatch::class_over_member(const Member& member, RiverClass here) {
    if (!member.river_class || here <= *member.river_class)
        return;
    Caution& caution = list_.add(
        Level::stop,
        "class-over-party",
        fmt::format("Class {} is harder than {} paddles (class {}). Plan a portage, or paddle it "
                    "with a qualified guide.",
                    class_word(here),
                    member.name,
                    class_word(*member.river_class)),
        "AWScale");
    caution.subject = member.name;
    set_figure(caution, class_of_class(here, *member.river_class), here);
}

/// Every lake and the sea have the ceiling of the boats on them; far from shore it forbids.
void WaterWatch::wind_over_ceiling(const PlanLeg& leg, bool crossing) {
    const double open = crossing ? 1.0 : 1.0 - spec(leg).shelter.value_or(0.0);
    const bool gusts = leg.gusts_mps.value_or(0.0) > leg.open_wind_mps;
    const double here_mps = open * (gusts ? *leg.gusts_mps : leg.open_wind_mps);
    const UnitText blows = gusts ? format_both("gusts of {}", wind_words(here_mps))
                                 : format_both("{} of wind", wind_words(here_mps));
    for (std::size_t c = 0; c < draft_.prepared.assumed.craft.size(); ++c) {
        const double ceiling_mps = draft_.prepared.assumed.craft[c].wind_ceiling_mps;
        if (here_mps <= ceiling_mps)
            continue;
        const std::string& name = draft_.prepared.trip.craft[c].name;
        Caution& caution = list_.add(
            crossing ? Level::stop : Level::caution,
            crossing ? "exposed-crossing" : "wind-over-ceiling",
            format_both(crossing ? "Open crossing in {} (force {}): above the ceiling of {} for "
                                   "{}. Wait, or follow the shore."
                                 : "{} (force {}) is above the ceiling of {} for open water "
                                   "with {}: wait, or keep to a sheltered shore.",
                        crossing ? blows
                        : gusts  ? format_both("Wind in gusts of {}", wind_words(here_mps))
                                 : format_both("Wind of {}", wind_words(here_mps)),
                        beaufort(here_mps),
                        wind_words(ceiling_mps),
                        name));
        caution.subject = name;
        set_figure(
            caution,
            format_both(
                "force {}, {}, ceiling {}", beaufort(here_mps), blows, wind_words(ceiling_mps)),
            here_mps - ceiling_mps);
    }
}

void WaterWatch::wind_on(const PlanLeg& leg) {
    if (leg.stopped) {
        bool by_current = false;
        for (std::size_t i = 0; i < draft_.settled.afloat.size(); ++i)
            if (draft_.settled.loads.plan_leg[i] ==
                PlanLegNumber::of_index(static_cast<std::size_t>(&leg - plan_.legs.data())))
                by_current = by_current || draft_.settled.afloat[i].paddle.by_current;
        if (by_current)
            list_.add(
                Level::stop,
                "current-stops-boat",
                format_both(
                    "Against this current the boat makes less than {0}: line it from the bank, "
                    "wade "
                    "beside it or pole it (\"travel\": \"line\", \"wade\" or \"pole\" on this "
                    "leg), or carry. The time shown is at {0}.",
                    in_both(show_speed, 0.3)),
                "docs/upstream.md");
        else
            list_.add(
                Level::stop,
                "wind-stops-boat",
                format_both("Against {0} of wind the boat makes less than {1}: wait, follow the "
                            "sheltered shore or carry. The time shown is at {1}.",
                            wind_words(leg.open_wind_mps),
                            in_both(show_speed, 0.3)));
    }
    const bool crossing = spec(leg).open_crossing.value_or(false);
    if (crossing || spec(leg).on_water() != Water::river)
        wind_over_ceiling(leg, crossing);
    if (!crossing)
        return;
    list_.add(
        Level::caution,
        "exposed-crossing",
        fmt::format("Open crossing from {} to {} at force {}: wind often rises by midday and a "
                    "lake can turn "
                    "rough within 20 minutes. Turn back on your own limit.",
                    clock_words(leg.start, draft_.prepared.assumed.time_zone),
                    clock_words(leg.end, draft_.prepared.assumed.time_zone),
                    beaufort(leg.open_wind_mps)));
}

/// A class that somebody should know to paddle, where the trip file says that of nobody.
void WaterWatch::hard_class(RiverClass here) {
    const std::vector<Member>& party = draft_.prepared.trip.party;
    const bool known = std::any_of(
        party.begin(), party.end(), [](const Member& one) { return one.river_class.has_value(); });
    if (known)
        return;
    Caution& caution =
        list_.add(Level::caution,
                  "class-unjudged",
                  fmt::format("Class {} is planned and the trip file says of nobody what class "
                              "they paddle (\"class\" of a member of the party): whether this crew "
                              "can run it is not known. Plan a portage, or say what they paddle.",
                              class_word(here)),
                  "AWScale");
    set_figure(caution, fmt::format("class {}", class_word(here)), here);
}

void WaterWatch::river_on(const PlanLeg& leg) {
    if (spec(leg).on_water() != Water::river)
        return;
    const RiverClass here = draft_.prepared.route.legs[leg.leg.index()].class_run().value_or(0);
    if (here >= 3)
        hard_class(here);
    if (here >= 3)
        list_.add(
            Level::caution,
            "class-hard",
            fmt::format(
                "Class {} is what your source said of one day and one level. Look before you run; "
                "landing and walking is always an available plan. Ask a guide who knows it now.",
                class_word(here)),
            "AWScale");
    if (!spec(leg).river_class.value_or(0))
        list_.add(Level::caution,
                  "class-unknown",
                  "No class is given for this river: treat it as unknown until you have seen it.",
                  "AWScale");
    if (std::abs(leg.gradient) > 0.0)
        list_.add(Level::note,
                  "gradient-hint",
                  format_both("The river falls {:.1f} m/km ({:.0f} ft/mile), in its steepest {} "
                              "{:.1f} m/km ({:.0f} ft/mile): {}. "
                              "Gradient is a hint where to look closer, never a class.",
                              m_per_km(leg.gradient),
                              ft_per_mile(leg.gradient),
                              in_both(show_distance, 500.0),
                              m_per_km(leg.steepest_500m),
                              ft_per_mile(leg.steepest_500m),
                              gradient_hint(std::abs(leg.gradient))));
    if (leg.current_estimate && leg.current_mps != 0.0)
        estimated_current_on(leg);
    else if (leg.current_mps == 0.0 && !led(leg.travel))
        list_.add(Level::note,
                  "no-current",
                  "No current is given for this river: times are those of still water.");
}

void WaterWatch::estimated_current_on(const PlanLeg& leg) {
    const PlanCurrent& guess = *leg.current_estimate;
    const auto flow = [](double mps) { return in_both(show_speed, std::abs(mps)); };
    list_.add(
        Level::note,
        "current-estimated",
        format_both(
            "No current is given: {}{} is Manning's estimate from a fall of {}, {} of depth and "
            "the bed {}{}, between {} and {} for its roughness alone.{} A gauge, or a stick timed "
            "over a known length, is better.",
            flow(guess.likely_mps),
            guess.likely_mps < 0.0 ? " against" : "",
            in_both(show_gradient, guess.slope),
            UnitText(fmt::format("{:.1f} m", guess.depth_m),
                     fmt::format("{:.1f} ft", guess.depth_m / m_per_foot)),
            guess.bed,
            guess.steep ? ", as rough as steep streams are" : "",
            flow(guess.slow_mps),
            flow(guess.fast_mps),
            guess.limited ? " It is held at critical flow (Froude number 1): a river that "
                            "steep is falls and pools, not one even current."
                          : ""),
        guess.steep ? "Jarrett1985" : "Chow1959");
}

void WaterWatch::water_legs() {
    const Assumed& assumed = draft_.prepared.assumed;
    const bool any_paddle = std::any_of(plan_.legs.begin(),
                                        plan_.legs.end(),
                                        [](const PlanLeg& leg) { return afloat(leg.travel); });
    if (any_paddle && assumed.craft.empty())
        list_.add(
            Level::stop, "no-craft", "The route has legs afloat and the trip names no craft.");
    const bool any_aboard = std::any_of(plan_.legs.begin(),
                                        plan_.legs.end(),
                                        [](const PlanLeg& leg) { return aboard(leg.travel); });
    for (std::size_t m = 0; any_aboard && !assumed.craft.empty() && m < assumed.members.size();
         ++m) {
        const bool seated =
            std::any_of(assumed.craft.begin(), assumed.craft.end(), [&](const AssumedCraft& craft) {
                return std::find(craft.crew.begin(), craft.crew.end(), m) != craft.crew.end();
            });
        if (!seated)
            list_.add(
                Level::stop,
                "no-craft",
                fmt::format("{} has no seat in any boat.", draft_.prepared.trip.party[m].name));
    }
    for (const PlanLeg& leg : plan_.legs) {
        if (!afloat(leg.travel))
            continue;
        list_.at(leg.day, leg.leg);
        craft_on(leg);
        wind_on(leg);
        river_on(leg);
    }
    list_.anywhere();
    if (std::any_of(plan_.legs.begin(), plan_.legs.end(), [](const PlanLeg& leg) {
            return leg.travel == Travel::paddle;
        }))
        estimates();
}

/// What is an estimate without a published test behind it says so.
void WaterWatch::estimates() {
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
        list_.add(Level::note, "paddling-estimate", std::move(text), "docs/models/paddling.md");
}

} // namespace

std::vector<Caution> water_cautions(const Assembly& draft, const Plan& plan) {
    return WaterWatch(draft, plan).run();
}

std::vector<Caution> usual_water_cautions(const Plan& plan) {
    if (plan.totals.paddle_m <= 0.0)
        return {};
    CautionList list;
    list.add(
        Level::note,
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
    return list.take();
}

} // namespace tumpline::planner
