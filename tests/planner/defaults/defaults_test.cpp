#include "planner/defaults/defaults.h"

#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <string>

namespace tumpline::planner {
namespace {

constexpr double kcal_per_day_w = 4184.0 / 86400.0;

/// The trip of one walk by one member.
Assumed of(const Member& member) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    plain.trip.party = {member};
    return assume(plain.trip);
}

Member somebody(double body_kg, double age_years) {
    Member member;
    member.name = "Ada";
    member.body_kg = body_kg;
    member.age_years = age_years;
    member.height_m = 1.7;
    member.sex = Sex::male;
    return member;
}

std::string noted(const Assumed& assumed, const std::string& key) {
    for (const DefaultUsed& used : assumed.defaults)
        if (used.key == key)
            return used.value + " [" + used.source + "]";
    return {};
}

TEST(Defaults, OfAnAdult) {
    const Assumed assumed = of(somebody(80.0, 40.0));
    const AssumedMember& adult = assumed.members[0];
    EXPECT_NEAR(adult.walk_limit_kg, 24.0, 1e-9);    // 30 %
    EXPECT_NEAR(adult.portage_limit_kg, 36.0, 1e-9); // 45 %
    EXPECT_EQ(adult.pace, 1.0);
    EXPECT_EQ(adult.met_body_kg, 80.0);
    EXPECT_EQ(adult.least_day.of_rest_j, 0.0);
    EXPECT_EQ(noted(assumed, "/party/0/carry_limit"), "30 % of body mass [ADP390]");
    EXPECT_EQ(noted(assumed, "/party/0/portage_limit"), "45 % of body mass [FM3218]");
}

TEST(Defaults, OfAChildAreItsOwn) {
    const Assumed assumed = of(somebody(30.0, 9.0));
    const AssumedMember& child = assumed.members[0];
    EXPECT_NEAR(child.walk_limit_kg, 4.5, 1e-9); // 15 %
    EXPECT_NEAR(child.portage_limit_kg, 4.5, 1e-9);
    // 22.706 x 30 + 504.3 = 1185.48 kcal a day, the rest of 49.4 kg by 1 kcal per kg and hour.
    EXPECT_NEAR(child.resting_w, 1185.48 * kcal_per_day_w, 1e-9);
    EXPECT_NEAR(child.met_body_kg, 1185.48 / 24.0, 1e-9);
    EXPECT_NEAR(child.least_day.of_rest_j, 1972.5 * 4184.0, 1e-3);
    EXPECT_NEAR(child.least_day.of_travel_j, 1.15 * 1972.5 * 4184.0, 1e-3);
    EXPECT_EQ(noted(assumed, "/party/0/carry_limit"), "15 % of body mass [AAPBackpack]");
}

TEST(Defaults, OfTheOldFollowTheirWalkingSpeed) {
    const Assumed assumed = of(somebody(70.0, 72.0));
    EXPECT_NEAR(assumed.members[0].pace, 0.861, 5e-4); // 1.195 over 1.388 m/s
    EXPECT_NEAR(assumed.members[0].walk_limit_kg, 0.3 * 70.0 * 0.8607, 1e-2);
    EXPECT_EQ(noted(assumed, "/party/0/pace"), "0.86 [Bohannon2011]");
    Member own = somebody(70.0, 72.0);
    own.pace = 1.1;
    EXPECT_EQ(of(own).members[0].pace, 1.1);
    own.age_years = 90.0; // beyond the formula of the default
    // 11.711 x 70 + 587.7 = 1407.47 kcal; the form in MJ rounds to 0.049 x 70 + 2.459 = 5.889.
    EXPECT_NEAR(of(own).members[0].resting_w, 5.889e6 / 86400.0, 1e-6);
}

TEST(Defaults, OfDrinkingGoByTheHeat) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    plain.trip.weather.high_c = 35.0; // twice the litres of 15 C
    const AssumedWater water = assume(plain.trip).water;
    EXPECT_NEAR(water.walking_lps * 3600.0, 0.90, 1e-9);
    EXPECT_NEAR(water.climbing_lps * 3600.0, 1.20, 1e-9);
    EXPECT_NEAR(water.halting_lps * 3600.0, 0.60, 1e-9);
    EXPECT_NEAR(water.camp_lps * 3600.0, 2.0 * 1.75 / 24.0, 1e-9);
    EXPECT_EQ(noted(assume(plain.trip), "/water/camp"),
              "1.2 L and 0.15 L/h in camp [JequierConstant2010]");
    plain.trip.weather.low_c = 15.0; // 25 C in camp, half as much again as at 15 C
    EXPECT_NEAR(assume(plain.trip).water.camp_lps * 3600.0, 1.5 * 1.75 / 24.0, 1e-9);
    plain.trip.water.walking_lps = 1e-4;
    EXPECT_EQ(assume(plain.trip).water.climbing_lps, 1e-4);
    EXPECT_EQ(assume(plain.trip).water.carrying_lps, 1e-4);
}

TEST(Defaults, OfABoatFollowItsMassAndCrew) {
    test::PlainTrip plain = test::plain_trip({test::lake(1000.0)});
    Craft& boat = plain.trip.craft[0];
    boat.kind.reset();
    boat.mass_kg = 3.0;
    EXPECT_EQ(assume(plain.trip).craft[0].kind, HullKind::packraft);
    EXPECT_TRUE(assume(plain.trip).craft[0].rolls_up);
    EXPECT_NEAR(assume(plain.trip).craft[0].wet_kg, 0.15 * 3.0, 1e-9);
    boat.mass_kg = 16.0;
    EXPECT_EQ(assume(plain.trip).craft[0].kind, HullKind::solo_canoe);
    EXPECT_FALSE(assume(plain.trip).craft[0].rolls_up);
    EXPECT_NEAR(assume(plain.trip).craft[0].wet_kg, 0.02 * 16.0, 1e-9);
    EXPECT_NEAR(assume(plain.trip).craft[0].reference_kg, 16.0 + 70.0 + 20.0, 1e-9);
}

TEST(Defaults, OfTheHoursADayAreEightOrTheirLimit) {
    test::PlainTrip plain = test::plain_trip({test::walk(1000.0)});
    const auto hours = [&](std::optional<double> wished, std::optional<double> limit) {
        plain.trip.days.hours = wished;
        plain.trip.days.hours_limit = limit;
        return assume(plain.trip).times.hours_s / 3600.0;
    };
    EXPECT_EQ(hours({}, {}), 8.0);
    EXPECT_EQ(hours({}, 6.0), 6.0);
    EXPECT_EQ(hours({}, 9.0), 8.0);
    EXPECT_EQ(hours(5.0, 6.0), 5.0) << "what is wished is not the limit";
    EXPECT_EQ(hours(9.0, {}), 9.0);
}

} // namespace
} // namespace tumpline::planner
