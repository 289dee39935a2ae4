/// A whole trip with boats that are lined, waded with and poled, its figures worked out by hand.

#include "tests/support/led_trip.h"

#include "geo/light/time_zone.h"
#include "planner/defaults/defaults.h"
#include "planner/models/compendium.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using test::led_plan;
using test::led_trip;
using testing::Contains;
using testing::ElementsAre;
using testing::Not;

std::vector<std::string> codes_of(const Plan& plan) {
    std::vector<std::string> codes;
    for (const Caution& caution : plan.cautions)
        codes.push_back(caution.code);
    return codes;
}

TEST(LedTrip, HasTheTimesOfItsOwnPaces) {
    const Plan plan = led_plan();
    ASSERT_EQ(plan.legs.size(), 6U);
    std::vector<std::string> ends;
    for (const PlanLeg& leg : plan.legs)
        ends.push_back(geo::rfc3339(leg.end, "UTC").substr(11, 8));
    // 5 000 s on foot; 40 min rigging, two looks of 15 min and 3 000 m at 0.4 m/s; 1 200 m at
    // 0.3 m/s; into the boat, 1 800 m at 0.6 m/s and ashore, 10 min each; the next day ashore
    // again.
    ASSERT_GE(ends.size(), 4U);
    EXPECT_EQ(ends[0], "09:23:20");
    EXPECT_EQ(ends[1], "12:38:20");
    EXPECT_EQ(ends[2], "13:45:00");
    EXPECT_EQ(ends[3], "14:55:00");
    EXPECT_NEAR(plan.legs[1].moving_s, 7'500.0, 1e-6);
    EXPECT_NEAR(plan.legs[1].moving_low_s, 7'500.0 * 0.4 / 0.7, 1e-6);
    EXPECT_NEAR(plan.legs[1].moving_high_s, 15'000.0, 1e-6); // 0.2 m/s
    EXPECT_NEAR(plan.legs[3].speed_mps.value(), 0.6, 1e-9);
}

TEST(LedTrip, GoesByItsOwnSpeedWhereOneIsGiven) {
    test::LedLegs legs;
    legs.line = R"("speed": "1.8 km/h")";
    const Plan plan = led_plan(legs);
    EXPECT_NEAR(plan.legs[1].moving_s, 6'000.0, 1e-6); // 3 000 m at 0.5 m/s
    EXPECT_NEAR(plan.legs[1].moving_low_s / 6'000.0,
                plan.legs[0].moving_low_s / plan.legs[0].moving_s,
                1e-9); // the band on foot
    std::vector<std::string> families;
    for (const BandUsed& band : plan.bands)
        families.push_back(band.family);
    EXPECT_THAT(families, ElementsAre("walking", "paddling", "line", "wade", "pole"));
}

TEST(LedTrip, CountsItsDistanceApart) {
    const Plan plan = led_plan();
    EXPECT_NEAR(plan.totals.led_m, 6'000.0, 0.01);
    EXPECT_NEAR(plan.totals.paddle_m, 6'000.0, 0.01);
    EXPECT_NEAR(plan.totals.walk_m, 10'000.0, 0.01);
    EXPECT_NEAR(plan.totals.on_foot_m, 14'200.0, 0.01); // 5 000 twice, 3 000 and 1 200
    EXPECT_NEAR(plan.days.at(0).led_m, 6'000.0, 0.01);
    EXPECT_NEAR(plan.days.at(0).on_foot_m, 9'200.0, 0.01);
    EXPECT_NEAR(plan.days.at(1).led_m, 0.0, 0.01);
}

TEST(LedTrip, HasNobodyInABoatThatIsLedFromOutside) {
    const Plan plan = led_plan();
    const auto goods_kg = [&](std::size_t leg) { return plan.legs[leg].loads.at(0).pack_start_kg; };
    ASSERT_EQ(plan.legs[1].craft.size(), 1U);
    EXPECT_NEAR(plan.legs[1].craft[0].load_kg, goods_kg(1) + 1.0, 1e-9); // the paddle lies in it
    EXPECT_NEAR(plan.legs[2].craft.at(0).load_kg, goods_kg(2) + 1.0, 1e-9);
    EXPECT_NEAR(plan.legs[3].craft.at(0).load_kg,
                goods_kg(3) + 68.0 + 1.7,
                1e-9); // Ada, paddle and life jacket
    EXPECT_FALSE(has_limit(plan.legs[1], plan.legs[1].loads[0]));
}

TEST(LedTrip, CostsTheBodyWhatItsLikesDo) {
    const Plan plan = led_plan();
    const double body_kg = assume(led_trip()).members.at(0).met_body_kg;
    EXPECT_NEAR(plan.legs[1].loads.at(0).energy_j,
                met_energy_j({.met = 6.0, .body_kg = body_kg, .duration_s = 7'500.0}),
                1.0);
    EXPECT_NEAR(plan.legs[2].loads.at(0).energy_j,
                met_energy_j({.met = 7.0, .body_kg = body_kg, .duration_s = 4'000.0}),
                1.0);
    EXPECT_NEAR(plan.legs[3].loads.at(0).energy_j,
                met_energy_j({.met = 5.8, .body_kg = body_kg, .duration_s = 3'000.0}),
                1.0);
}

TEST(LedTrip, DoesNotRunTheClassThatItLines) {
    EXPECT_THAT(codes_of(led_plan()), Not(Contains("class-over-craft"))); // III for a boat of II
    EXPECT_THAT(codes_of(led_plan()), Contains("rapid-not-run"));
    const Plan plan = led_plan();
    const auto straps = std::find_if(plan.items.begin(), plan.items.end(), [](const auto& row) {
        return row.item == "thigh straps";
    });
    ASSERT_NE(straps, plan.items.end());
    EXPECT_FALSE(straps->comes);
    test::LedLegs legs;
    legs.pole = R"("class": "III", "current": "-3.6 km/h")";
    EXPECT_THAT(codes_of(led_plan(legs)), Contains("class-over-craft"));
}

TEST(LedTrip, GoesByTheRiversLevelAsPaddlingDoes) {
    test::LedLegs legs;
    const auto at = [&](const std::string& now) {
        legs.line =
            R"("flow": {"gauge": "bridge", "low": {"current": "-3 km/h", "reading": "5 m3/s"},
                        "normal": {"current": "-5 km/h", "reading": "10 m3/s"},
                        "high": {"current": "-7 km/h", "reading": "30 m3/s"}, "now": ")" +
            now + R"(", "runnable": ["4 m3/s", "20 m3/s"]})";
        return led_plan(legs);
    };
    const Plan low = at("5 m3/s");
    EXPECT_NEAR(low.legs[1].current_mps, -3.0 / 3.6, 1e-9);
    EXPECT_NEAR(low.legs[1].moving_s, 7'500.0, 1e-6); // whatever the current
    EXPECT_THAT(codes_of(low), Not(Contains("flow-not-runnable")));
    EXPECT_THAT(codes_of(at("30 m3/s")), Contains("flow-not-runnable"));
}

TEST(LedTrip, IsSlowerInTheDark) {
    test::LedLegs legs;
    legs.start = "2027-12-18"; // at 61.5 degrees north: dusk before the end of the third leg, 16:15
    legs.set_off = "10:30";
    const Plan plan = led_plan(legs);
    const PlanLeg& stones = plan.legs.at(2);
    ASSERT_GT(stones.dark_s, 600.0);
    // What is done in the dark takes 1 / 0.64 = 1.5625 times as long: 0.36 of it is the night's.
    EXPECT_NEAR(stones.moving_s - 4'000.0, 0.36 * stones.dark_s, 1.0);
    EXPECT_THAT(codes_of(plan), Contains("after-dusk-afloat"));
}

TEST(LedTrip, NeedsNoWindToBeKnownOrBorne) {
    const Plan plan = led_plan(); // 20 m/s, force 8
    for (const std::size_t leg : {1U, 2U, 3U})
        EXPECT_FALSE(plan.legs[leg].stopped);
    for (const Caution& caution : plan.cautions)
        if (caution.code == "wind-stops-boat") {
            EXPECT_EQ(caution.leg, 5); // the paddled one alone
        }
}

TEST(LedTrip, IsAdvisedWhereACurrentStopsTheBoat) {
    test::LedLegs legs;
    legs.paddle = R"("class": "II", "current": "-8 km/h")"; // faster than the boat
    legs.water = "16 C";
    std::string advice;
    for (const Caution& caution : led_plan(legs).cautions)
        if (caution.code == "current-stops-boat")
            advice = caution.text;
    EXPECT_THAT(advice, testing::HasSubstr(R"("line", "wade" or "pole")"));
}

} // namespace
} // namespace tumpline::planner
