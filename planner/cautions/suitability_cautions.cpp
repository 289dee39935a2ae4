#include "planner/cautions/suitability_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/trip/vocabulary.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace tumpline::planner {

namespace {

std::string what_is_wrong(const LegSuitability& row, SuitReason reason) {
    if (reason == SuitReason::class_over)
        return fmt::format("Class {} is harder than {} is made for (\"suits\": rivers up to {}).",
                           class_word(row.river_class.value_or(0)),
                           row.what,
                           class_word(row.hardest));
    return fmt::format("{} is not made for this water: its \"suits\" does not name {}.",
                       row.what,
                       waters_word(row.water));
}

std::optional<int> day_of(const Plan& plan, LegNumber leg) {
    const auto found = std::find_if(
        plan.legs.begin(), plan.legs.end(), [&](const PlanLeg& one) { return one.leg == leg; });
    return found == plan.legs.end() ? std::nullopt : std::optional(found->day);
}

} // namespace

std::vector<Caution> suitability_cautions(const Plan& plan) {
    CautionList list;
    for (const LegSuitability& row : plan.suitability.legs)
        for (const SuitRemark& remark : row.remarks) {
            if (remark.suits != Suits::no)
                continue;
            list.at(day_of(plan, row.leg), row.leg);
            list.add(Level::stop,
                     "water-not-suited",
                     what_is_wrong(row, remark.reason) + " Take another boat, or plan a portage.",
                     "docs/craft.md");
        }
    return list.take();
}

} // namespace tumpline::planner
