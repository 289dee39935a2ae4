/// The loop of loads, pace, hours and food: when it ends, and that nothing but the trip decides
/// where.

#include "planner/solution/fixed_point.h"

#include "geo/input_error.h"
#include "tests/support/plain_trip.h"
#include "tests/support/random_trip.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::planner {
namespace {

/// Ada, at 1 m/s whatever she bears, over four legs of 14.4 km: four hours each.
test::PlainTrip four_legs() {
    test::PlainTrip plain = test::plain_trip(
        {test::walk(14'400.0), test::walk(14'400.0), test::walk(14'400.0), test::walk(14'400.0)});
    plain.trip.models.walking = "constant";
    plain.trip.models.load_effect = "none";
    plain.trip.party[0].level_speed_mps = 1.0;
    return plain;
}

TEST(FixedPoint, OfAPaceThatNoLoadChangesIsThereAtOnce) {
    const test::PlainTrip plain = four_legs();
    const Prepared prepared = prepare(plain.trip, plain.route);
    SolveOptions options;
    options.nights = {2}; // after the second leg
    const Solved solved = solve(prepared, options);
    EXPECT_TRUE(solved.converged.settled);
    ASSERT_EQ(solved.timeline.days.size(), 2U);
    double moving_s = 0.0; // four legs of 14.4 km at 1 m/s, however they are cut
    for (const StretchTime& stretch : solved.timeline.stretches)
        moving_s += stretch.by_day_s; // the evenings reach into the dark
    EXPECT_NEAR(moving_s, 4.0 * 14'400.0, 1e-6);
    // Times stand from the first round on, the food from the second, the loads from the third, the
    // fourth sees that nothing moves.
    EXPECT_LE(solved.converged.rounds, 4);
    EXPECT_EQ(solved.converged.largest_change_s, 0.0);
}

TEST(FixedPoint, IsSettledWhenWhatIsPrintedNoLongerMoves) {
    const test::RandomTrip random = test::random_trip(3);
    const Prepared prepared = prepare(random.trip, random.route);
    SolveOptions options;
    const Solved fine = solve(prepared, options);
    ASSERT_TRUE(fine.converged.settled);
    ASSERT_LE(fine.converged.rounds, 6);
    // Nothing is ever closer than 0 kg: after six rounds half of a printed digit is enough.
    options.close_kg = 0.0;
    const Solved shown = solve(prepared, options);
    EXPECT_TRUE(shown.converged.settled);
    EXPECT_EQ(shown.converged.rounds, 7);
    EXPECT_LT(shown.converged.largest_change_kg, 5e-3);
    // And where that is not enough either, the rounds end and the plan says so.
    options.shown_kg = 0.0;
    const Solved never = solve(prepared, options);
    EXPECT_FALSE(never.converged.settled);
    EXPECT_EQ(never.converged.rounds, options.most_rounds);
}

TEST(FixedPoint, KeepsTheLedgerAndEveryWayOfAPortageOnlyIfAsked) {
    int carried = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = test::random_trip(seed);
        const Prepared prepared = prepare(random.trip, random.route);
        SolveOptions options;
        const Solved told = solve(prepared, options);
        options.record = false;
        const Solved plain = solve(prepared, options);
        EXPECT_FALSE(told.loads.ledger.entries.empty());
        EXPECT_TRUE(plain.loads.ledger.entries.empty());
        EXPECT_EQ(told.converged.rounds, plain.converged.rounds);
        EXPECT_EQ(told.nights, plain.nights);
        for (std::size_t i = 0; i < told.loads.stretches.size(); ++i) {
            EXPECT_EQ(told.loads.stretches[i].start_kg, plain.loads.stretches[i].start_kg);
            EXPECT_EQ(told.loads.stretches[i].end_kg, plain.loads.stretches[i].end_kg);
            if (!told.loads.portages[i])
                continue;
            EXPECT_EQ(told.loads.portages[i]->moving_s, plain.loads.portages[i]->moving_s);
            EXPECT_GE(told.loads.portages[i]->choices.size(),
                      plain.loads.portages[i]->choices.size());
            ++carried;
        }
    }
    EXPECT_GT(carried, 20);
}

TEST(FixedPoint, DoesNotDependOnTheFirstGuess) {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = test::random_trip(seed);
        const Prepared prepared = prepare(random.trip, random.route);
        SolveOptions options;
        options.record = false;
        const Solved light = solve(prepared, options);
        options.guess = FirstGuess::full_limits;
        const Solved heavy = solve(prepared, options);
        if (!light.converged.settled || !heavy.converged.settled)
            continue; // between two choices either may stand
        ASSERT_EQ(light.nights, heavy.nights);
        for (std::size_t i = 0; i < light.loads.stretches.size(); ++i)
            for (std::size_t m = 0; m < random.trip.party.size(); ++m)
                EXPECT_NEAR(light.loads.stretches[i].start_kg[m],
                            heavy.loads.stretches[i].start_kg[m],
                            5e-3);
    }
}

TEST(ListedNights, MustFollowOneAnotherAlongTheRoute) {
    test::PlainTrip plain = four_legs();
    for (const double share : {0.25, 0.5}) {
        TripPlace camp;
        camp.name = share < 0.3 ? "first" : "second";
        camp.kind = PlaceKind::camp;
        plain.route.places.push_back({.name = camp.name,
                                      .kind = camp.kind,
                                      .at = plain.route.at(share * plain.route.length_m),
                                      .along_m = share * plain.route.length_m,
                                      .off_m = 0.0,
                                      .leg = share < 0.3 ? LegNumber{1} : LegNumber{2},
                                      .spec = plain.trip.route.places.size()});
        plain.trip.route.places.push_back(camp);
    }
    plain.trip.days.nights = {"first", "second"};
    EXPECT_EQ(listed_nights(prepare(plain.trip, plain.route)), (std::vector<std::size_t>{1, 2}));
    plain.trip.days.nights = {"second", "first"};
    try {
        (void)listed_nights(prepare(plain.trip, plain.route));
        FAIL() << "nights in the wrong order were taken";
    } catch (const geo::InputError& error) {
        ASSERT_EQ(error.problems().size(), 1U);
        EXPECT_EQ(error.problems()[0].place, "/days/nights/1");
        EXPECT_EQ(error.problems()[0].found, "\"first\"");
    }
}

} // namespace
} // namespace tumpline::planner
