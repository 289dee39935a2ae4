#include "planner/cautions/led_cautions.h"

#include "tests/support/led_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

std::vector<Caution> led_said(const test::LedLegs& legs, const std::string& code) {
    std::vector<Caution> found;
    for (const Caution& caution : test::led_plan(legs).cautions)
        if (caution.code == code)
            found.push_back(caution);
    return found;
}

TEST(LedCautions, EachPaceSaysThatItHasNoSource) {
    test::LedLegs legs;
    ASSERT_THAT(led_said(legs, "led-pace"), SizeIs(3));
    EXPECT_THAT(led_said(legs, "led-pace")[0].text, HasSubstr("without a source"));
    legs.line = R"("speed": "1.8 km/h")";
    EXPECT_THAT(led_said(legs, "led-pace")[0].text,
                testing::AllOf(testing::Not(HasSubstr("without a source")), HasSubstr("guide")));
}

TEST(LedCautions, ARapidIsNotRun) {
    const std::vector<Caution> said = led_said({}, "rapid-not-run");
    ASSERT_THAT(said, SizeIs(2)); // lined at III, waded at I; the poled one is met aboard
    EXPECT_EQ(said[0].level, Level::caution);
    EXPECT_EQ(said[0].leg, 2);
    EXPECT_EQ(said[1].level, Level::note);
    EXPECT_THAT(said[1].text, HasSubstr("line it from dry ground"));
    test::LedLegs flat;
    flat.line = flat.wade = "";
    EXPECT_THAT(led_said(flat, "rapid-not-run"), IsEmpty());
}

TEST(LedCautions, FootingIsThatOfAFordAllAlong) {
    test::LedLegs legs;
    EXPECT_THAT(led_said(legs, "wade-deep"), IsEmpty());      // 0.5 m x 0.8 m/s = 0.40 m2/s
    legs.wade = R"("current": "-3.6 km/h", "depth": "knee")"; // 0.5 x 1.0 = 0.50
    ASSERT_THAT(led_said(legs, "wade-deep"), SizeIs(1));
    EXPECT_EQ(led_said(legs, "wade-deep")[0].level, Level::caution);
    EXPECT_THAT(led_said(legs, "wade-deep")[0].text,
                testing::AllOf(HasSubstr("0.50 m2/s"), HasSubstr("Ada")));
    legs.wade = R"("current": "-3.6 km/h", "depth": "thigh")"; // 0.8 x 1.0 = 0.80
    EXPECT_EQ(led_said(legs, "wade-deep").at(0).level, Level::stop);
    legs.wade = R"("current": "3.6 km/h", "depth": "thigh")"; // as fast down
    EXPECT_EQ(led_said(legs, "wade-deep").at(0).level, Level::stop);
}

TEST(LedCautions, FootingIsNotJudgedWithoutDepthOrCurrent) {
    test::LedLegs legs;
    legs.wade = R"("current": "-2.88 km/h")";
    EXPECT_THAT(led_said(legs, "wade-unknown").at(0).text, HasSubstr("How deep"));
    legs.wade = R"("depth": "knee")";
    EXPECT_THAT(led_said(legs, "wade-unknown").at(0).text, HasSubstr("How fast"));
    legs.wade = R"("depth": "1.3 m")"; // too deep in still water
    EXPECT_THAT(led_said(legs, "wade-unknown"), IsEmpty());
    EXPECT_EQ(led_said(legs, "wade-deep").at(0).level, Level::stop);
}

TEST(LedCautions, ColdWaterIsSaidWithItsHours) {
    test::LedLegs legs;
    ASSERT_THAT(led_said(legs, "wade-cold"), SizeIs(1));
    EXPECT_THAT(led_said(legs, "wade-cold")[0].text,
                testing::AllOf(HasSubstr("1 h 07 min"), HasSubstr("9 C")));
    legs.water = "15 C";
    EXPECT_THAT(led_said(legs, "wade-cold"), IsEmpty());
}

TEST(LedCautions, APoleHoldsAgainstSoMuch) {
    test::LedLegs legs;
    legs.pole = R"("current": "-5.4 km/h")"; // 1.5 m/s
    EXPECT_THAT(led_said(legs, "pole-current"), IsEmpty());
    legs.pole = R"("current": "-5.5 km/h")";
    ASSERT_THAT(led_said(legs, "pole-current"), SizeIs(1));
    EXPECT_EQ(led_said(legs, "pole-current")[0].level, Level::stop);
    legs.pole = R"("current": "5.5 km/h")"; // down with it
    EXPECT_THAT(led_said(legs, "pole-current"), IsEmpty());
}

TEST(LedCautions, ABoatIsLedBySomebody) {
    test::LedLegs legs;
    EXPECT_THAT(led_said(legs, "led-by-nobody"), IsEmpty());
    legs.crew = "[]";
    ASSERT_THAT(led_said(legs, "led-by-nobody"), SizeIs(1));
    EXPECT_EQ(led_said(legs, "led-by-nobody")[0].subject, "red boat");
}

} // namespace
} // namespace tumpline::planner
