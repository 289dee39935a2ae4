/// What a recommended model and the one beside it are off by, each beside its name.

#include "cli/text/pace_text.h"

#include "tests/support/text_lines.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using planner::WalkingModel;
using testing::HasSubstr;

planner::LearnedPace learned(bool clear) {
    planner::LearnedPace pace;
    pace.model = WalkingModel::tobler;
    const planner::ModelFit best{
        .model = WalkingModel::tobler, .pace = 1.05, .scatter = 0.08, .off = 0.042};
    const planner::ModelFit other{
        .model = WalkingModel::langmuir_party, .pace = 0.95, .scatter = 0.11, .off = 0.073};
    pace.fits = {best, other};
    pace.advice = planner::ModelAdvice{best, other, 0.031, clear};
    return pace;
}

std::string one_line_of(std::string text) {
    text = test::squeezed(text);
    for (char& letter : text)
        if (letter == '\n')
            letter = ' ';
    return test::squeezed(text);
}

// 0.042 and 0.073 are 4.2 and 7.3 in the hundred, apart by 3.1.
TEST(PaceText, TellsByHowMuchEachModelMisses) {
    const std::string best(planner::walking_model_name(WalkingModel::tobler));
    const std::string other(planner::walking_model_name(WalkingModel::langmuir_party));
    const std::string misses = best + " misses stretches to which it was not fitted by 4.2 %, " +
                               other + " by 7.3 % (off, above)";
    EXPECT_THAT(one_line_of(pace_text(learned(true), {})),
                HasSubstr(best + " fits best: " + misses));
    const std::string unclear = one_line_of(pace_text(learned(false), {}));
    EXPECT_THAT(unclear, HasSubstr("No model fits clearly best: " + misses));
    EXPECT_THAT(unclear, HasSubstr("a difference of 3.1 % decides nothing."));
}

} // namespace
} // namespace tumpline::cli
