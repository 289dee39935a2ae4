#include "planner/cautions/led_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/cautions/smallest_wader.h"
#include "planner/defaults/led_boats.h"
#include "planner/models/ford.h"
#include "planner/quantities/leg_number.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <cmath>
#include <set>
#include <string>
#include <string_view>

namespace tumpline::planner {

namespace {

constexpr std::string_view led_source = "docs/upstream.md";
constexpr double wading_cold_below_c = 15.0;
constexpr RiverClass hard_to_lead_class = 3;

class LedWatch {
  public:
    LedWatch(const Assembly& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    std::vector<Caution> run();

  private:
    void pace(const PlanLeg& leg);
    void rapid(const PlanLeg& leg);
    void hands();
    void footing(const PlanLeg& leg);
    void cold(const PlanLeg& leg);
    void poled(const PlanLeg& leg);

    [[nodiscard]] const TripLeg& spec(const PlanLeg& leg) const {
        return draft_.prepared.route.legs[leg.leg.index()].spec;
    }

    const Assembly& draft_;
    const Plan& plan_;
    CautionList list_;
};

void LedWatch::pace(const PlanLeg& leg) {
    const LedRange range = led_range(leg.travel);
    const UnitText pace =
        spec(leg).led_mps
            ? UnitText("")
            : format_both("The pace here, {}, is common practice without a source; the trade "
                          "speaks of {} to {}, slowest among boulders and brush. ",
                          in_both(show_speed, usual_led_mps(leg.travel)),
                          in_both(show_speed, range.slow_mps),
                          in_both(show_speed, range.fast_mps));
    list_.add(Level::caution,
              "led-pace",
              format_both("{}Whether shore and bed let a boat be {} here, at this level, is not "
                          "known. Ask the river's information service, the local authority or a "
                          "qualified guide, and know where you can carry instead.",
                          pace,
                          past_word(leg.travel)),
              led_source);
}

/// Lining and wading are how a rapid is not run.
void LedWatch::rapid(const PlanLeg& leg) {
    const RiverClass here = spec(leg).river_class.value_or(0);
    if (here == 0 || !beside_boat(leg.travel))
        return;
    list_.add(here >= hard_to_lead_class ? Level::caution : Level::note,
              "rapid-not-run",
              fmt::format("Class {} is {}, not run: what people and boats can run is not asked "
                          "here. {}A boat that fills or broaches pulls harder than people hold: "
                          "no rope around hand or body, nobody downstream of the boat, let go "
                          "before it takes you.",
                          class_word(here),
                          past_word(leg.travel),
                          leg.travel == Travel::wade
                              ? "A foot caught between stones in such water drowns people in the "
                                "depth of a thigh: line it from dry ground, or carry. "
                              : ""),
              led_source);
}

void LedWatch::hands() {
    const std::vector<AssumedCraft>& craft = draft_.prepared.assumed.craft;
    for (std::size_t c = 0; c < craft.size(); ++c)
        if (craft[c].crew.empty())
            list_
                .add(Level::stop,
                     "led-by-nobody",
                     fmt::format("Nobody is of the crew of {}, so nobody leads it. Give it a "
                                 "\"crew\".",
                                 draft_.prepared.trip.craft[c].name),
                     led_source)
                .subject = draft_.prepared.trip.craft[c].name;
}

void LedWatch::footing(const PlanLeg& leg) {
    const std::optional<double>& depth_m = spec(leg).wading_m;
    const double speed_mps = std::abs(leg.current_mps);
    const bool speed_known = spec(leg).current_mps || leg.current_estimate;
    if (!depth_m || (!speed_known && *depth_m <= refused_ford_m)) {
        list_.add(Level::caution,
                  "wade-unknown",
                  fmt::format("How {} the water is that is waded is not known, so people's footing "
                              "in it is not judged. Give {}. Feel the bed with a stick, stay "
                              "upstream of the boat, and turn back at the thigh.",
                              depth_m ? "fast" : "deep",
                              depth_m ? "\"current\" of the leg" : "\"depth\" of the leg"),
                  led_source);
        return;
    }
    const Wading wading = smallest_wader(draft_.prepared.trip);
    const FordWater water{.depth_m = *depth_m, .speed_mps = speed_mps};
    const FordRisk risk = ford_risk(water, wading.wader);
    if (risk == FordRisk::shallow)
        return;
    const UnitText met = format_both(
        "{} at {}", in_both(show_length, water.depth_m), in_both(show_speed, speed_mps));
    Caution& caution = list_.add(
        risk == FordRisk::refused ? Level::stop : Level::caution,
        "wade-deep",
        format_both("{} is {:.2f} m2/s (depth times speed) for {}, the smallest of the party, all "
                    "along this leg. {} River beds are rougher than the floors of these tests.",
                    met,
                    ford_flow_m2ps(water),
                    wading.name,
                    risk == FordRisk::refused
                        ? "That is not planned: line it from the shore, carry, or wait for lower "
                          "water."
                        : "More than is planned by (0.40 m2/s, and knee deep): line it from the "
                          "shore, or carry."),
        "ARRFloodway");
    set_figure(caution, met, ford_flow_m2ps(water));
}

/// Hours with the legs in water that is cold.
void LedWatch::cold(const PlanLeg& leg) {
    const std::optional<double>& water_c = draft_.prepared.assumed.weather.water_c;
    if (!water_c || *water_c >= wading_cold_below_c)
        return;
    list_.add(Level::caution,
              "wade-cold",
              format_both("{} of wading in water of {}: feet lose feeling and strength, and with "
                          "them the footing, long before the body is cold. Something warm on legs "
                          "and feet, and a dry change at hand; go ashore to warm up.",
                          show_duration(leg.moving_s),
                          in_both(show_temperature, *water_c)),
              "ColdWater1101");
}

void LedWatch::poled(const PlanLeg& leg) {
    const double against_mps = -leg.current_mps;
    if (!too_swift_to_pole(against_mps))
        return;
    Caution& caution = list_.add(
        Level::stop,
        "pole-current",
        format_both("{} of current are more than a boat is poled up against ({}): line it from the "
                    "shore, wait for lower water, or carry.",
                    in_both(show_speed, against_mps),
                    in_both(show_speed, most_poled_mps)),
        led_source);
    set_figure(caution, in_both(show_speed, against_mps), against_mps - most_poled_mps);
}

std::vector<Caution> LedWatch::run() {
    std::set<LegNumber> told;
    for (const PlanLeg& leg : plan_.legs) {
        if (!led(leg.travel))
            continue;
        list_.at(leg.day, leg.leg);
        if (told.insert(leg.leg).second) {
            if (told.size() == 1)
                hands();
            pace(leg);
            rapid(leg);
        }
        if (leg.travel == Travel::wade) {
            footing(leg);
            cold(leg);
        } else if (leg.travel == Travel::pole) {
            poled(leg);
        }
    }
    return list_.take();
}

} // namespace

std::vector<Caution> led_cautions(const Assembly& draft, const Plan& plan) {
    return LedWatch(draft, plan).run();
}

} // namespace tumpline::planner
