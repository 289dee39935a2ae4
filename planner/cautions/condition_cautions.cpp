#include "planner/cautions/condition_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/trip/kit_names.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

namespace tumpline::planner {

namespace {

/// A forecast is hardly better; common practice, no source.
constexpr double narrow_c = 2.0;
/// From about here on halts are planned by the heat: at half humidity this is the second of five
/// categories of heat of [TBMED507], in which moderate work rests ten minutes in the hour.
constexpr double hot_c = 30.0;

class ConditionWatch {
  public:
    ConditionWatch(const Assembly& draft, const Plan& plan)
        : prepared_(draft.prepared), trip_(draft.prepared.trip), plan_(plan) {}

    std::vector<Caution> run() {
        not_known();
        payload();
        ice();
        heat();
        near_misses();
        return list_.take();
    }

  private:
    void not_known();
    void payload();
    void ice();
    void heat();
    void near_misses();
    void near_miss(const KitItem& item, const std::string& what, double is_c, double asked_c);

    /// Speaks of the first leg on which `holds`; whether there is one.
    template <typename Holds> bool at_first(Holds holds) {
        const auto first =
            std::find_if(plan_.legs.begin(), plan_.legs.end(), [&](const PlanLeg& leg) {
                return afloat(leg.travel) &&
                       holds(prepared_.route.legs[leg.leg.index()].spec.on_water());
            });
        if (first == plan_.legs.end())
            return false;
        list_.at(first->day, first->leg);
        return true;
    }

    const Prepared& prepared_;
    const Trip& trip_;
    const Plan& plan_;
    CautionList list_;
};

void ConditionWatch::not_known() {
    const auto any = [](Water) { return true; };
    const auto open = [](Water water) { return water != Water::river; };
    if (!trip_.weather.water_c && at_first(any))
        list_.add(Level::caution,
                  "water-temperature-unknown",
                  "The water's temperature is not given: whether it asks for a suit, and how long "
                  "a swimmer can help themselves, is not judged. Give \"water\" in the weather.",
                  "ColdWater1101");
    const auto blind = std::find_if(plan_.legs.begin(), plan_.legs.end(), [&](const PlanLeg& leg) {
        return afloat(leg.travel) && !leg.wind_known &&
               open(prepared_.route.legs[leg.leg.index()].spec.on_water());
    });
    if (trip_.weather.wind_mps && blind != plan_.legs.end()) {
        list_.at(blind->day, blind->leg);
        list_.add(Level::caution,
                  "wind-unknown",
                  "No wind is given for these hours: the plan crosses open water in calm air, "
                  "which no forecast promises. Give \"wind\" in an entry of the weather that "
                  "holds then.");
    }
    if (!trip_.weather.wind_mps && at_first(open))
        list_.add(Level::caution,
                  "wind-unknown",
                  "No wind is given: the plan crosses open water in calm air, which no forecast "
                  "promises. Give \"wind\" in the weather.");
    list_.anywhere();
}

void ConditionWatch::payload() {
    for (const PlanLeg& leg : plan_.legs)
        for (const CraftLoad& load : leg.craft) {
            const auto same = [&](const PlanLeg& other) {
                return std::any_of(other.craft.begin(), other.craft.end(), [&](const auto& one) {
                    return one.craft == load.craft;
                });
            };
            const auto first = std::find_if(plan_.legs.begin(), plan_.legs.end(), same);
            if (load.payload_kg > 0.0 || &*first != &leg)
                continue;
            list_.at(leg.day, leg.leg);
            Caution& caution = list_.add(
                Level::caution,
                "payload-unknown",
                format_both("{} bears {} and its payload is not given: whether that is too much "
                            "is not judged.",
                            load.craft,
                            in_both(show_mass, load.load_kg)));
            caution.subject = load.craft;
            set_figure(caution, in_both(show_mass, load.load_kg), load.load_kg);
        }
    list_.anywhere();
}

void ConditionWatch::ice() {
    const std::optional<double> coldest_c =
        trip_.weather.low_c ? trip_.weather.low_c : trip_.weather.high_c;
    if (!coldest_c || *coldest_c >= 0.0 || !at_first([](Water) { return true; }))
        return;
    Caution& caution = list_.add(
        Level::caution,
        "ice-on-water",
        format_both("Air down to {}: is there ice on the water? Still water freezes first at its "
                    "shores and in bays, ice at a river's banks cuts off landings, and spray "
                    "freezes on people and boats. Ask somebody who sees that water; the plan "
                    "takes it as open and never counts ice as a way.",
                    in_both(show_temperature, *coldest_c)));
    set_figure(caution, in_both(show_temperature, *coldest_c), -*coldest_c);
    list_.anywhere();
}

void ConditionWatch::heat() {
    if (trip_.weather.humidity || !trip_.weather.high_c || *trip_.weather.high_c < hot_c)
        return; // with humidity there is a better figure
    const UnitText high = in_both(show_temperature, *trip_.weather.high_c);
    Caution& caution = list_.add(
        Level::caution,
        "heat",
        format_both("Air up to {}: heavy work under a pack needs rest in every hour and more from "
                    "those not used to heat; humid air and full sun make it worse, and the plan "
                    "knows neither. Walk early, rest in shade, watch one another.",
                    high),
        "TBMED507");
    set_figure(caution, high, *trip_.weather.high_c);
}

void ConditionWatch::near_miss(const KitItem& item,
                               const std::string& what,
                               double is_c,
                               double asked_c) {
    const UnitText is = in_both(show_temperature, is_c);
    const UnitText asked = in_both(show_temperature, asked_c);
    Caution& caution = list_.add(
        Level::caution,
        "near-miss",
        format_both("{} stays at home: {} of {} where below {} brings it. Nobody knows the {} "
                    "that well.",
                    name_with_owner(item),
                    what,
                    is,
                    asked,
                    what));
    caution.subject = name_with_owner(item);
    set_figure(caution, format_both("{} of {}, asked below {}", what, is, asked), asked_c - is_c);
}

void ConditionWatch::near_misses() {
    const AssumedWeather& weather = prepared_.assumed.weather;
    const auto narrowly = [](const std::optional<double>& is_c, std::optional<double> asked_c) {
        return is_c && asked_c && *is_c >= *asked_c && *is_c - *asked_c <= narrow_c;
    };
    for (std::size_t k = 0; k < trip_.kit.size(); ++k) {
        const KitItem& item = trip_.kit[k];
        if (prepared_.kit.brought[k] || item.bring)
            continue; // who says "bring": false has looked at it
        for (const Condition& when : item.when)
            if (narrowly(weather.water_c, when.water_below_c)) {
                near_miss(item, "water", *weather.water_c, *when.water_below_c);
                break;
            } else if (narrowly(weather.low_c, when.night_below_c)) {
                near_miss(item, "night", *weather.low_c, *when.night_below_c);
                break;
            }
    }
}

} // namespace

std::vector<Caution> condition_cautions(const Assembly& draft, const Plan& plan) {
    return ConditionWatch(draft, plan).run();
}

} // namespace tumpline::planner
