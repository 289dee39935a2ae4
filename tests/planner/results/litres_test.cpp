/// The litres along the route, and the night that makes a stretch too long for the vessels.

#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>

namespace tumpline::planner {
namespace {

/// Two days of 20 km at 0.36 L/h, a dry camp of 3 L between them; springs at both ends.
test::RandomTrip dry_night() {
    test::RandomTrip made =
        test::level_trip({{.length_m = 20e3}, {.length_m = 20e3}},
                         {{"Rim camp", PlaceKind::camp, 20e3}, {"Spring", PlaceKind::water, 40e3}});
    made.trip.route.places[0].water = false;
    made.trip.days.nights = {"Rim camp"};
    made.trip.water.walking_lps = 1e-4; // 2 L over 20 km
    made.trip.water.camp_l = 3.0;
    made.trip.water.reserve_l = 0.5;
    made.trip.water.capacity_l = 8.0;
    return made;
}

TEST(WaterLine, FallsAsWorkedOutByHand) {
    const test::RandomTrip made = dry_night();
    const Plan plan = make_plan(made.trip, made.route);

    struct Wanted {
        double along_m, each_l;
        LitresStep after;
    };

    // 2 L each day, 2 L of the camp in the evening, 1 L in the morning, half a litre to the end.
    const std::vector<Wanted> wanted{{0.0, 0.0, LitresStep::way},
                                     {0.0, 7.5, LitresStep::filled},
                                     {20e3, 5.5, LitresStep::way},
                                     {20e3, 3.5, LitresStep::camp},
                                     {20e3, 2.5, LitresStep::camp},
                                     {40e3, 0.5, LitresStep::way}};
    ASSERT_EQ(plan.litres.size(), wanted.size());
    for (std::size_t k = 0; k < wanted.size(); ++k) {
        EXPECT_NEAR(plan.litres[k].along_m, wanted[k].along_m, 0.5);
        EXPECT_NEAR(plan.litres[k].each_l, wanted[k].each_l, 1e-3) << k;
        EXPECT_EQ(plan.litres[k].after, wanted[k].after) << k;
    }
}

TEST(WaterStretch, NamesTheNightThatIsTooMuch) {
    test::RandomTrip made = dry_night();
    const Plan fits = make_plan(made.trip, made.route);
    ASSERT_EQ(fits.water.size(), 1U);
    EXPECT_FALSE(fits.water[0].over_capacity);
    EXPECT_NEAR(fits.water[0].way_l, 4.0, 1e-3);
    EXPECT_NEAR(fits.water[0].camps_l, 3.0, 1e-9);
    ASSERT_EQ(fits.water[0].dry_nights.size(), 1U);
    EXPECT_FALSE(fits.water[0].dry_nights[0].too_much);

    made.trip.water.capacity_l = 6.0; // the way alone would do
    const Plan night = make_plan(made.trip, made.route);
    EXPECT_TRUE(night.water[0].over_capacity);
    EXPECT_TRUE(night.water[0].dry_nights[0].too_much);
    const auto said =
        std::find_if(night.cautions.begin(), night.cautions.end(), [](const Caution& one) {
            return one.code == "water-over-capacity";
        });
    ASSERT_NE(said, night.cautions.end());
    EXPECT_NE(said->text.find("the night of day 1 at Rim camp that makes it too much"),
              std::string::npos)
        << said->text;

    made.trip.water.capacity_l = 4.0; // the way alone is too much
    const Plan way = make_plan(made.trip, made.route);
    EXPECT_TRUE(way.water[0].over_capacity);
    EXPECT_FALSE(way.water[0].dry_nights[0].too_much);
}

TEST(WaterStretch, OfSeveralDryNightsNamesTheFirstThatDoesNotFit) {
    test::RandomTrip made =
        test::level_trip({{.length_m = 10e3}, {.length_m = 10e3}, {.length_m = 10e3}},
                         {{"One", PlaceKind::camp, 10e3},
                          {"Two", PlaceKind::camp, 20e3},
                          {"Spring", PlaceKind::water, 30e3}});
    for (TripPlace& place : made.trip.route.places)
        if (place.kind == PlaceKind::camp)
            place.water = false;
    made.trip.days.nights = {"One", "Two"};
    made.trip.water.walking_lps = 1e-4;
    made.trip.water.camp_l = 3.0;
    made.trip.water.reserve_l = 0.0;
    made.trip.water.capacity_l = 7.0; // the way takes 3, one night 3 more
    const std::vector<DryNight> nights = make_plan(made.trip, made.route).water.at(0).dry_nights;
    ASSERT_EQ(nights.size(), 2U);
    EXPECT_FALSE(nights[0].too_much);
    EXPECT_TRUE(nights[1].too_much);
    EXPECT_EQ(nights[1].place, "Two");
    EXPECT_EQ(nights[1].day, 2);
}

TEST(WaterLine, OfRandomTripsIsWhatTheLedgerHolds) {
    int dry = 0;
    for (std::uint64_t seed = 1; seed <= 120; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = test::random_trip(seed);
        const Plan plan = make_plan(random.trip, random.route);
        ASSERT_FALSE(plan.litres.empty());
        for (const Litres& point : plan.litres)
            EXPECT_GE(point.each_l, -1e-9);
        // At the end of each day the pack holds it (to a gram, which is a millilitre).
        for (const PlanDay& day : plan.days) {
            std::int64_t held_mg = 0;
            for (const Entry& entry : plan.ledger.entries) {
                if (entry.member != 0 || entry.part != Part::water || entry.day > day.day)
                    continue;
                held_mg += entry.to == Account::pack ? entry.mass_mg : 0;
                held_mg -= entry.from == Account::pack ? entry.mass_mg : 0;
            }
            const auto last =
                std::find_if(plan.litres.rbegin(), plan.litres.rend(), [&](const Litres& point) {
                    return point.day <= day.day;
                });
            ASSERT_NE(last, plan.litres.rend());
            EXPECT_NEAR(last->each_l, static_cast<double>(held_mg) / 1e6, 1e-3);
        }
        for (const WaterStretch& stretch : plan.water) {
            double nights_l = 0.0;
            for (const DryNight& night : stretch.dry_nights)
                nights_l += night.litres;
            EXPECT_NEAR(nights_l, stretch.camps_l, 1e-9);
            EXPECT_EQ(static_cast<int>(stretch.dry_nights.size()), stretch.nights);
            dry += stretch.nights;
        }
    }
    EXPECT_GT(dry, 20);
}

} // namespace
} // namespace tumpline::planner
