#include "planner/cautions/supply_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/loads/limits.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::planner {

namespace {

/// What would help: the night that is too much names itself.
UnitText way_out_of(const WaterStretch& stretch) {
    const auto night = std::find_if(stretch.dry_nights.begin(),
                                    stretch.dry_nights.end(),
                                    [](const DryNight& one) { return one.too_much; });
    if (night != stretch.dry_nights.end())
        return format_both("It is the night of day {} at {} that makes it too much, with {} "
                           "in camp; travelling alone takes {}. Sleep at water, or take more "
                           "vessels.",
                           night->day,
                           night->place,
                           in_both(show_volume, night->litres),
                           in_both(show_volume, stretch.way_l));
    if (!stretch.dry_nights.empty())
        return format_both("Travelling alone, without the dry {}, takes {}. Find a source on "
                           "the way or take more vessels.",
                           stretch.dry_nights.size() == 1 ? "night" : "nights",
                           in_both(show_volume, stretch.way_l));
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

UnitText what_lacks(const Stage& stage) {
    const double reserve_kg = stage.reserve_kg;
    const UnitText text = format_both("{} holds {} of food and the stage to {} needs {}, {} more.",
                                      stage.from,
                                      in_both(show_mass, stage.declared_kg.value_or(0.0)),
                                      stage.to,
                                      in_both(show_mass, stage.food_kg),
                                      in_both(show_mass, stage.declared_short_kg));
    if (stage.declared_short_kg <= reserve_kg + 1e-3)
        return format_both("{} What is missing is of the reserve.", text);
    return format_both(
        "{} The reserve of {} does not cover it: the food ends {}. The packs shown are "
        "those with enough.",
        text,
        in_both(show_mass, reserve_kg),
        stage.food_ends_day ? fmt::format("on the evening of day {}", *stage.food_ends_day)
                            : std::string("on the first day"));
}

} // namespace

std::vector<Caution> supply_cautions(const Assembly& draft, const Plan& plan) {
    CautionList list;
    for (const WaterStretch& stretch : plan.water) {
        list.at(stretch.first_day);
        if (stretch.over_capacity)
            list.add(Level::stop,
                     "water-over-capacity",
                     format_both("From {} to {} each needs {}{} and has vessels for {}. {}",
                                 stretch.from,
                                 stretch.to,
                                 in_both(show_volume, stretch.fill_l.front()),
                                 stretch.laid_l > 0.0
                                     ? format_both(", of which {} are to be left on the way,",
                                                   in_both(show_volume, stretch.laid_l))
                                     : UnitText(""),
                                 in_both(show_volume, stretch.capacity_l),
                                 way_out_of(stretch)));
    }
    for (const Stage& stage : plan.stages) {
        list.at(stage.first_day);
        if (stage.closed)
            list.add(Level::stop,
                     "supply-closed",
                     fmt::format("{} is closed on {}, the day on which it is reached. {}",
                                 stage.from,
                                 show_date(stage.reached),
                                 open_again(stage)));
        if (over_limit(stage.declared_short_kg, 0.0))
            list.add(Level::caution, "supply-short", what_lacks(stage));
    }
    list.anywhere();
    if (draft.prepared.assumed.water.assumed_everywhere)
        list.add(Level::caution,
                 "water-assumed",
                 "No place of kind \"water\" is given: the plan assumes that drinking water "
                 "is found on the way and at every camp. Name the dependable sources, and the "
                 "dry camps.");
    return list.take();
}

} // namespace tumpline::planner
