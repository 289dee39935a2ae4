/// Hazards and notes in the text of a plan: on the first screen, and where they come up.

#include "cli/text/plan_text.h"
#include "tests/support/hand_built_plan.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

planner::Plan with_hazards(int count) {
    planner::Plan plan = test::hand_built_plan();
    plan.hazards.clear();
    for (int k = 1; k <= count; ++k)
        plan.hazards.push_back({.hazard = true,
                                .place = planner::PlaceKind::hazard,
                                .name = fmt::format("Ledge {}", k),
                                .note = k == 1 ? "scout left" : "",
                                .day = plan.legs[0].day,
                                .leg = plan.legs[0].leg,
                                .along_m = 1000.0 * k});
    return plan;
}

TEST(TextHazards, StandOnTheFirstScreenInOrder) {
    const std::string text = plan_text(with_hazards(2), {});
    EXPECT_THAT(text,
                HasSubstr("\nHazards along the way\n"
                          "  day 1, leg 1, at 1.0 km: Ledge 1: scout left\n"
                          "  day 1, leg 1, at 2.0 km: Ledge 2\n"));
    EXPECT_LT(text.find("\nDays"), text.find("\nHazards along the way"));
    EXPECT_THAT(plan_text(with_hazards(0), {}), Not(HasSubstr("Hazards along the way")));
}

TEST(TextHazards, OfManyAreCounted) {
    const std::string text = plan_text(with_hazards(11), {});
    EXPECT_THAT(text, HasSubstr("Ledge 8"));
    EXPECT_THAT(text, Not(HasSubstr("Ledge 9")));
    EXPECT_THAT(text, HasSubstr("and 3 more: --show legs"));
}

TEST(TextHazards, AndNotesStandUnderTheirLeg) {
    planner::Plan plan = with_hazards(1);
    plan.hazards.push_back({.hazard = false,
                            .place = planner::PlaceKind::camp,
                            .name = "Birch spit",
                            .note = "flat ground for one tent",
                            .day = plan.legs[0].day,
                            .leg = plan.legs[0].leg,
                            .along_m = 3000.0});
    plan.hazards.push_back({.name = "the leg",
                            .note = "leaves the road behind the barn",
                            .day = plan.legs[0].day,
                            .leg = plan.legs[0].leg});
    const std::string text = plan_text(plan, {.show = {{Section::legs}}});
    EXPECT_THAT(text, HasSubstr("hazard at 1.0 km: Ledge 1: scout left"));
    EXPECT_THAT(text, HasSubstr("at 3.0 km: Birch spit: flat ground for one tent"));
    EXPECT_THAT(text, HasSubstr("note: leaves the road behind the barn"));
    EXPECT_THAT(plan_text(plan, {}), Not(HasSubstr("flat ground for one tent")));
}

} // namespace
} // namespace tumpline::cli
