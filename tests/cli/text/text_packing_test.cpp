/// What comes and what stays, each in its own table.

#include "cli/text/plan_text.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;
using testing::Not;

// The dry suit comes for cold water; no leg asks for the thigh straps. 0.45 kg over 19.36 km
// are 8.7 kg km, and over 640 m up 290 kg m; 1.4 kg are 27.1 and 900.
TEST(TextPacking, KeepsWhatComesFromWhatStays) {
    const std::string text = test::squeezed(plan_text(test::hand_built_plan(),
                                                      {.units = planner::UnitSystem::metric,
                                                       .colour = false,
                                                       .show = {.sections = {Section::kit}}}));
    const std::size_t stay = text.find("Left at home");
    const std::size_t come = text.find("Packed because");
    ASSERT_LT(stay, come) << text;
    ASSERT_NE(come, std::string::npos);
    const std::string left = text.substr(stay, come - stay);
    EXPECT_THAT(left, HasSubstr("Item Mass Carry cost saved Climb cost saved Why\n"));
    EXPECT_THAT(left,
                HasSubstr("thigh straps (Ada) 450 g 8.7 kg km 290 kg m no leg is of class III"));
    EXPECT_THAT(left, Not(HasSubstr("dry suit")));
    EXPECT_THAT(text.substr(come), HasSubstr("dry suit (Ada) 1.4 kg 27.1 kg km 900 kg m water at"));
    EXPECT_THAT(text.substr(come), Not(HasSubstr("thigh straps")));
}

} // namespace
} // namespace tumpline::cli
