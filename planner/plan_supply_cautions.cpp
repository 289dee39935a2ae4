#include "planner/plan_draft.h"
#include "planner/units.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::planner {

namespace {

/// Collects what is to be said of one day after the other.
class Sayings {
  public:
    void say(Level level, std::string code, int day, std::string text) {
        said_.push_back({.level = level,
                         .code = std::move(code),
                         .day = day > 0 ? std::optional(day) : std::nullopt,
                         .leg = {},
                         .text = std::move(text),
                         .source = "common practice, no source"});
    }

    [[nodiscard]] std::vector<Caution> take() { return std::move(said_); }

  private:
    std::vector<Caution> said_;
};

/// What would help: the night that is too much names itself.
std::string way_out_of(const WaterStretch& stretch) {
    const auto night = std::find_if(stretch.dry_nights.begin(),
                                    stretch.dry_nights.end(),
                                    [](const DryNight& one) { return one.too_much; });
    if (night != stretch.dry_nights.end())
        return fmt::format("It is the night of day {} at {} that makes it too much, with {:.1f} L "
                           "in camp; the way alone drinks {:.1f} L. Sleep at water, or take more "
                           "vessels.",
                           night->day,
                           night->place,
                           night->litres,
                           stretch.way_l);
    if (!stretch.dry_nights.empty())
        return fmt::format("The way alone, without the dry {}, drinks {:.1f} L. Find a source on "
                           "the way or take more vessels.",
                           stretch.dry_nights.size() == 1 ? "night" : "nights",
                           stretch.way_l);
    return "Find a source on the way, sleep elsewhere or take more vessels.";
}

/// When a closed place is open, before and after.
std::string open_again(const Stage& stage) {
    std::vector<std::string> ways;
    const auto days = [](int count) {
        return count == 1 ? std::string("a day") : fmt::format("{} days", count);
    };
    if (stage.open_earlier_days)
        ways.push_back(fmt::format("{} earlier", days(*stage.open_earlier_days)));
    if (stage.open_later_days)
        ways.push_back(fmt::format("{} later", days(*stage.open_later_days)));
    if (ways.empty())
        return "No date within a month of it is open.";
    return fmt::format("It is open {}.", fmt::join(ways, " and "));
}

std::string what_lacks(const Stage& stage) {
    const double reserve_kg = stage.reserve_kg;
    std::string text = fmt::format("At {} lie {:.1f} kg of food and the stage to {} needs {:.1f} "
                                   "kg, {:.1f} kg more.",
                                   stage.from,
                                   stage.declared_kg.value_or(0.0),
                                   stage.to,
                                   stage.food_kg,
                                   stage.declared_short_kg);
    if (stage.declared_short_kg <= reserve_kg + 1e-3)
        return text + " What is missing is of the reserve.";
    return text + fmt::format(" The reserve of {:.1f} kg does not cover it: the food ends {}. The "
                              "packs shown are those with enough.",
                              reserve_kg,
                              stage.food_ends_day
                                  ? fmt::format("on the evening of day {}", *stage.food_ends_day)
                                  : std::string("on the first day"));
}

} // namespace

std::vector<Caution> supply_cautions(const Draft& draft, const Plan& plan) {
    Sayings sayings;
    for (const WaterStretch& stretch : plan.water)
        if (stretch.over_capacity)
            sayings.say(Level::stop,
                        "water-over-capacity",
                        stretch.first_day,
                        fmt::format("From {} to {} each needs {:.1f} L and has vessels for {:.1f} "
                                    "L. {}",
                                    stretch.from,
                                    stretch.to,
                                    stretch.fill_l.front(),
                                    stretch.capacity_l,
                                    way_out_of(stretch)));
    for (const Stage& stage : plan.stages) {
        if (stage.closed)
            sayings.say(Level::stop,
                        "supply-closed",
                        stage.first_day,
                        fmt::format("{} is closed on {}, the day on which it is reached. {}",
                                    stage.from,
                                    show_date(stage.reached),
                                    open_again(stage)));
        constexpr double shown_kg = 0.05; // less does not show beside figures of a tenth
        if (stage.declared_short_kg > shown_kg)
            sayings.say(Level::caution, "supply-short", stage.first_day, what_lacks(stage));
    }
    if (draft.prepared.assumed.water.assumed_everywhere)
        sayings.say(Level::caution,
                    "water-assumed",
                    0,
                    "No place of kind \"water\" is given: the plan takes it that drinking water "
                    "is found on the way and at every camp. Name the dependable sources, and the "
                    "dry camps.");
    return sayings.take();
}

} // namespace tumpline::planner
