/// Paddling after dusk: on which water it is told, and in which words.

#include "planner/cautions/darkness_cautions.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::HasSubstr;

/// A leg of two hours afloat, set off at an hour: in December at 45 N, 40 W it is dark by UTC from
/// about 19:20 on, and light at noon.
std::vector<std::string> told(const test::PlainLeg& leg, int set_off_h) {
    test::PlainTrip plain = test::plain_trip({leg});
    plain.trip.start = std::chrono::year(2027) / 12 / 18;
    plain.trip.days.set_off = std::chrono::hours{set_off_h};
    return test::cautions_of(plain, "after-dusk-afloat");
}

test::PlainLeg river_of_class(RiverClass grade) {
    test::PlainLeg leg = test::river(7'200.0, 0.001);
    leg.spec.river_class = grade;
    return leg;
}

TEST(DarknessCautions, SpeakOfOpenWaterAfterDusk) {
    const std::vector<std::string> texts = told(test::lake(7'200.0), 20);
    ASSERT_EQ(texts.size(), 1U);
    EXPECT_THAT(texts[0], HasSubstr("2 h 00 min of this leg are paddled in the dark"));
    EXPECT_THAT(texts[0], HasSubstr("on open water"));
    EXPECT_TRUE(told(test::lake(7'200.0), 12).empty()) << "at noon";
}

TEST(DarknessCautions, SpeakOfRiversFromTheSecondClassOn) {
    EXPECT_TRUE(told(river_of_class(1), 20).empty());
    const std::vector<std::string> texts = told(river_of_class(2), 20);
    ASSERT_EQ(texts.size(), 1U);
    EXPECT_THAT(texts[0], HasSubstr("on water of class II: neither rocks nor trees"));
    EXPECT_TRUE(told(river_of_class(2), 12).empty()) << "at noon";
}

TEST(DarknessCautions, LeaveWalksToThePace) {
    EXPECT_TRUE(told(test::walk(7'200.0), 20).empty());
}

} // namespace
} // namespace tumpline::planner
