#include "tests/support/random_trip.h"

#include "planner/trip/cross_check.h"
#include "planner/trip/value_reader.h"

#include <gtest/gtest.h>

#include <set>

namespace tumpline::test {
namespace {

TEST(RandomTrip, IsValidWhateverTheSeed) {
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const RandomTrip random = random_trip(seed);
        planner::Problems problems("random.json");
        planner::check_trip(random.trip, problems);
        for (const geo::Problem& problem : problems.take())
            ADD_FAILURE() << "seed " << seed << ": " << to_string(problem);
    }
}

TEST(RandomTrip, HasLegsThatMeetAndPlacesInOrder) {
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        SCOPED_TRACE(seed);
        const planner::Route route = random_trip(seed).route;
        double along_m = 0.0;
        for (const planner::RouteLeg& leg : route.legs) {
            EXPECT_EQ(leg.from_m, along_m);
            EXPECT_NEAR(leg.profile.length_m, leg.line.length_m(), 1e-6);
            along_m = leg.to_m;
        }
        EXPECT_EQ(along_m, route.length_m);
        double last_m = 0.0;
        for (const planner::RoutePlace& place : route.places) {
            EXPECT_GE(place.along_m, last_m);
            EXPECT_LE(place.along_m, route.length_m);
            last_m = place.along_m;
        }
    }
}

TEST(RandomTrip, IsTheSameForTheSameSeed) {
    const RandomTrip one = random_trip(7);
    const RandomTrip other = random_trip(7);
    EXPECT_EQ(one.route.length_m, other.route.length_m);
    EXPECT_EQ(one.trip.kit.size(), other.trip.kit.size());
    EXPECT_EQ(one.trip.party.front().body_kg, other.trip.party.front().body_kg);
}

TEST(RandomTrip, CoversWhatTripsMayHave) {
    std::set<planner::Travel> ways;
    std::set<std::size_t> sizes;
    int automatic = 0, listed = 0, by_hours = 0;
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const RandomTrip random = random_trip(seed);
        for (const planner::RouteLeg& leg : random.route.legs)
            ways.insert(leg.travel);
        sizes.insert(random.trip.party.size());
        automatic += random.trip.days.nights_auto ? 1 : 0;
        listed += random.trip.days.nights.empty() ? 0 : 1;
        by_hours += !random.trip.days.nights_auto && random.trip.days.nights.empty() ? 1 : 0;
    }
    EXPECT_EQ(ways.size(), 6U);
    EXPECT_EQ(sizes.size(), 5U);
    EXPECT_GT(automatic, 10);
    EXPECT_GT(listed, 10);
    EXPECT_GT(by_hours, 10);
}

} // namespace
} // namespace tumpline::test
