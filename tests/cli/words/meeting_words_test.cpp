#include "cli/words/meeting_words.h"

#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

/// To be there by 16:00 with 30 min in hand: who arrives at 15:00 has 30 min to spare, at 15:40
/// meets it with 10 min less than wanted, at 16:20 is 20 min late.
TEST(MeetingWords, ALateOneIsMissedByWhatIsBeyondItsMargin) {
    const Figures shown(planner::UnitSystem::metric, "Europe/London", Blank::plain);
    constexpr double min_s = 60.0;
    const auto words = [&](double spare_min) {
        return meeting_words({.spare_s = spare_min * min_s, .margin_s = 30.0 * min_s}, shown);
    };
    EXPECT_EQ(words(30.0), "30 min to spare");
    EXPECT_EQ(words(-10.0), "met, but with 10 min less than the margin of 30 min");
    EXPECT_EQ(words(-50.0), "missed by 20 min");
}

} // namespace
} // namespace tumpline::cli
