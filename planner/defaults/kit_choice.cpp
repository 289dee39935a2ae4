#include "planner/defaults/kit_choice.h"

#include "planner/quantities/unit_text.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>

namespace tumpline::planner {

namespace {

/// Whether one condition holds, in words, with the leg that decides it.
struct Finding {
    bool holds;
    UnitText why;
    LegNumber leg; ///< none: none in particular
};

/// `more` after `text` and what parts them, or alone.
UnitText joined(const UnitText& text, std::string_view between, const UnitText& more) {
    return text.metric.empty() ? more : format_both("{}{}{}", text, between, more);
}

class Judge {
  public:
    Judge(const Route& route, const Assumed& assumed) : route_(route), assumed_(assumed) {}

    [[nodiscard]] Finding judge(const Condition& condition) const;

  private:
    [[nodiscard]] Finding river_class(RiverClass wanted) const;
    [[nodiscard]] Finding open_crossing() const;
    [[nodiscard]] Finding snow() const;

    const Route& route_;
    const Assumed& assumed_;
};

Finding Judge::river_class(RiverClass wanted) const {
    RiverClass hardest = 0;
    for (std::size_t i = 0; i < route_.legs.size(); ++i) {
        const RouteLeg& leg = route_.legs[i];
        const RiverClass here = leg.class_run().value_or(0);
        if (here >= wanted)
            return {true,
                    fmt::format("class {} on \"{}\"", class_word(here), leg.name),
                    LegNumber::of_index(i)};
        hardest = std::max(hardest, here);
    }
    return {false,
            hardest == 0
                ? fmt::format("no water of class {} or harder is named", class_word(wanted))
                : fmt::format("the hardest water is class {}, not {}",
                              class_word(hardest),
                              class_word(wanted)),
            {}};
}

Finding Judge::open_crossing() const {
    for (std::size_t i = 0; i < route_.legs.size(); ++i)
        if (route_.legs[i].spec.open_crossing.value_or(false))
            return {true,
                    fmt::format("open crossing on \"{}\"", route_.legs[i].name),
                    LegNumber::of_index(i)};
    return {false, "no open crossing", {}};
}

Finding Judge::snow() const {
    for (std::size_t i = 0; i < route_.legs.size(); ++i)
        if (route_.legs[i].spec.terrain == Terrain::snow)
            return {
                true, fmt::format("snow on \"{}\"", route_.legs[i].name), LegNumber::of_index(i)};
    return assumed_.weather.snow ? Finding{true, "snow is expected", {}}
                                 : Finding{false, "no snow is expected", {}};
}

Finding Judge::judge(const Condition& condition) const {
    Finding all{true, "", {}};
    const auto also = [&](const Finding& next) {
        if (!next.holds && all.holds)
            all = next;
        else if (next.holds && all.holds) {
            all.why = joined(all.why, ", ", next.why);
            all.leg = next.leg.none() ? all.leg : next.leg;
        }
    };
    const auto below =
        [&](const std::optional<double>& known, double limit_c, std::string_view what) {
            if (!known)
                return Finding{true, fmt::format("the {} temperature is not given", what), 0};
            return Finding{*known < limit_c,
                           format_both("{} at {}, {} {}",
                                       what,
                                       in_both(show_temperature, *known),
                                       *known < limit_c ? "below" : "not below",
                                       in_both(show_temperature, limit_c)),
                           0};
        };
    if (condition.river_class)
        also(river_class(*condition.river_class));
    if (condition.open_crossing)
        also([&] {
            Finding finding = open_crossing();
            finding.holds = finding.holds == *condition.open_crossing;
            return finding;
        }());
    if (condition.snow)
        also([&] {
            Finding finding = snow();
            finding.holds = finding.holds == *condition.snow;
            return finding;
        }());
    if (condition.rain)
        also({!assumed_.weather.rain_known || assumed_.weather.rain == *condition.rain,
              assumed_.weather.rain_known
                  ? (assumed_.weather.rain ? "rain is expected" : "no rain is expected")
                  : "nothing is said of rain",
              0});
    if (condition.water_below_c)
        also(below(assumed_.weather.water_c, *condition.water_below_c, "water"));
    if (condition.night_below_c)
        also(below(assumed_.weather.low_c, *condition.night_below_c, "night"));
    return all;
}

/// Whether an item's conditions hold; each of them if none does.
Finding judge_all(const Judge& judge, const std::vector<Condition>& conditions) {
    UnitText against("");
    for (const Condition& condition : conditions) {
        Finding one = judge.judge(condition);
        if (one.holds)
            return one;
        against = joined(against, "; ", one.why);
    }
    return {conditions.empty(), against, {}};
}

} // namespace

KitChoice choose_kit(const Trip& trip, const Route& route, const Assumed& assumed) {
    const Judge judge(route, assumed);
    KitChoice choice;
    for (const KitItem& item : trip.kit) {
        Finding finding = judge_all(judge, item.when);
        const std::optional<bool> bring = item.must ? std::optional(true) : item.bring;
        const bool comes = bring.value_or(finding.holds);
        const bool overridden = bring && *bring != finding.holds;
        if (overridden)
            finding.why =
                format_both("{} by the trip file, although {}",
                            comes ? "brought" : "left",
                            finding.why.metric.empty() ? UnitText("it always comes") : finding.why);
        choice.brought.push_back(comes);
        choice.reasons.push_back({finding.why, finding.leg, overridden});
    }
    return choice;
}

} // namespace tumpline::planner
