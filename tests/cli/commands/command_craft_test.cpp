#include "tests/support/said.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

using testing::HasSubstr;

const std::string three_days = (test::root / "sample-routes/three-day-pass/trip.json").string();

test::Said craft_said(std::vector<std::string> more) {
    std::vector<std::string> words{"craft", three_days};
    words.insert(words.end(), more.begin(), more.end());
    return test::say(words);
}

TEST(CraftCommand, IsDoneIfAnyChoiceServes) {
    EXPECT_EQ(craft_said({}).code, ExitCode::done);
    EXPECT_EQ(craft_said({"--strict"}).code, ExitCode::done);
    // a limit that nobody keeps with any boat: it can be done, but breaks what was asked
    const std::vector<std::string> light{"--set", "/party/0/carry_limit=5 kg"};
    EXPECT_EQ(craft_said(light).code, ExitCode::done);
    EXPECT_EQ(craft_said({"--strict", light[0], light[1]}).code, ExitCode::no_plan);
    // people over a boat's class stop it whatever the boat
    const test::Said stopped = craft_said({"--set", "/party/0/class=I"});
    EXPECT_EQ(stopped.code, ExitCode::no_plan);
    EXPECT_THAT(stopped.out, HasSubstr("None of them can be done"));
}

TEST(CraftCommand, WantsBoatsToChooseFrom) {
    const test::Said none = craft_said({"--set", "/craft_choices=[]"});
    EXPECT_EQ(none.code, ExitCode::bad_input);
    EXPECT_THAT(none.err, HasSubstr("found no boats to choose from, expected one or more"));
}

} // namespace
} // namespace tumpline::cli
