#include "planner/cautions/volume_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/quantities/unit_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace tumpline::planner {

namespace {

std::string listed_names(const std::vector<std::string>& names) {
    return fmt::format("{}", fmt::join(names, ", "));
}

void pack(CautionList& list, const Plan& plan, const PackVolume& one) {
    if (one.fits() || one.plan_leg.none())
        return;
    list.at(one.day, plan.legs[one.plan_leg.index()].leg);
    const UnitText needs = in_both(show_volume, one.needs_l);
    const UnitText holds = in_both(show_volume, one.holds_l);
    Caution& caution =
        list.add(Level::caution,
                 "pack-too-small",
                 format_both("What goes into {}'s pack takes {} and the pack holds {}: {} would "
                             "have to go outside, or to somebody else.",
                             one.member,
                             needs,
                             holds,
                             one.left_out.empty() ? std::string("food or water")
                                                  : listed_names(one.left_out)));
    caution.subject = one.member;
    set_figure(caution, format_both("{} into {}", needs, holds), one.needs_l - one.holds_l);
}

void container(CautionList& list, const ContainerVolume& one) {
    const auto fullest =
        std::max_element(one.nights.begin(), one.nights.end(), [](const auto& a, const auto& b) {
            return a.needs_l < b.needs_l;
        });
    if (fullest == one.nights.end() || fullest->fits)
        return;
    list.anywhere();
    const UnitText needs = in_both(show_volume, fullest->needs_l);
    const UnitText holds = in_both(show_volume, one.holds_l);
    const std::string when =
        one.fits_from_day
            ? fmt::format("All of it fits from the night after day {} on", *one.fits_from_day)
            : std::string("It fits on no night");
    Caution& caution = list.add(
        Level::caution,
        "container-too-small",
        format_both("{} {} would have to hold {} and holds {}. {}; until then food lies outside, "
                    "where animals come to it: take a second container, or smaller food, and keep "
                    "to the rules of the area.",
                    fullest->day == 0 ? std::string("When setting off")
                                      : fmt::format("On the night after day {}", fullest->day),
                    one.name,
                    needs,
                    holds,
                    when));
    caution.subject = one.name;
    set_figure(caution, format_both("{} into {}", needs, holds), fullest->needs_l - one.holds_l);
}

} // namespace

std::vector<Caution> volume_cautions(const Plan& plan) {
    CautionList list;
    for (const PackVolume& one : plan.volumes.packs)
        pack(list, plan, one);
    if (plan.volumes.container)
        container(list, *plan.volumes.container);
    return list.take();
}

} // namespace tumpline::planner
