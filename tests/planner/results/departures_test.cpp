#include "planner/journey/pace.h"
#include "planner/solution/fixed_point.h"
#include "tests/support/random_trip.h"

#include <gtest/gtest.h>

#include <algorithm>

/// What draws change about a trip: the day's form, wind and current, and what was packed.
namespace tumpline::planner {
namespace {

/// A trip on foot and afloat of several days, with what the odds hold fast.
struct Case {
    explicit Case(std::uint64_t seed)
        : random(test::random_trip(seed)), prepared(prepare(random.trip, random.route)),
          settled(solve(prepared, first_options())), assumed(prepared.assumed) {}

    Case(const Case&) = delete; // what is prepared refers to the trip
    Case& operator=(const Case&) = delete;

    [[nodiscard]] SolveOptions first_options() const {
        SolveOptions options;
        if (!random.trip.days.nights.empty())
            options.nights = listed_nights(prepared);
        return options;
    }

    /// Every day as assumed, to be changed by the test.
    void open_departures() {
        assumed.departures.days.assign(settled.timeline.days.size(),
                                       {.pace = std::vector<double>(assumed.members.size(), 1.0)});
        for (const StretchTime& time : settled.timeline.stretches)
            assumed.departures.day_of.push_back(static_cast<std::size_t>(time.day - 1));
    }

    [[nodiscard]] Solved again() const {
        SolveOptions options;
        options.nights = settled.nights;
        options.assumed = &assumed;
        options.packed = &settled;
        return solve(prepared, options);
    }

    test::RandomTrip random;
    Prepared prepared;
    Solved settled;
    Assumed assumed;
};

/// The first made-up trip with several days, that walks on the first and paddles some time.
std::uint64_t mixed_trip() {
    for (std::uint64_t seed = 1;; ++seed) {
        const Case trip(seed);
        const std::vector<Stretch>& stretches = trip.prepared.stretches.stretches;
        const bool paddles =
            std::any_of(stretches.begin(), stretches.end(), [](const Stretch& stretch) {
                return stretch.travel == Travel::paddle;
            });
        if (trip.settled.timeline.days.size() >= 3 && !trip.assumed.craft.empty() && paddles &&
            stretches.front().travel == Travel::walk && trip.settled.converged.settled &&
            trip.prepared.trip.days.rest_days_after.empty())
            return seed;
    }
}

TEST(Departures, OfNothingChangeNothing) {
    Case trip(mixed_trip());
    trip.open_departures();
    const Solved again = trip.again();
    ASSERT_EQ(again.timeline.arrive_s.size(), trip.settled.timeline.arrive_s.size());
    for (std::size_t d = 0; d < again.timeline.arrive_s.size(); ++d)
        EXPECT_NEAR(again.timeline.arrive_s[d], trip.settled.timeline.arrive_s[d], 0.2);
    for (std::size_t i = 0; i < again.loads.stretches.size(); ++i)
        for (std::size_t m = 0; m < trip.assumed.members.size(); ++m)
            EXPECT_NEAR(again.loads.stretches[i].start_kg[m],
                        trip.settled.loads.stretches[i].start_kg[m],
                        1e-3);
}

TEST(Departures, HalfThePaceOfOneDayTakesTwiceItsTimeOnFoot) {
    Case trip(mixed_trip());
    trip.open_departures();
    for (double& pace : trip.assumed.departures.days.front().pace)
        pace = 0.5;
    const Solved slow = trip.again();
    for (std::size_t i = 0; i < slow.timeline.stretches.size(); ++i) {
        if (trip.prepared.stretches.stretches[i].travel != Travel::walk)
            continue;
        const double was_s = trip.settled.timeline.stretches[i].moving_s;
        const double is_s = slow.timeline.stretches[i].moving_s;
        // What is drunk on the way changes the load a little, hence the hundredth.
        const double factor = slow.timeline.stretches[i].day == 1 ? 2.0 : 1.0;
        EXPECT_NEAR(is_s, factor * was_s, 0.01 * factor * was_s) << "stretch " << i;
    }
}

TEST(Departures, AdverseCurrentOrCalmSpeedSlowsBoats) {
    Case trip(mixed_trip());
    const auto stretch =
        std::find_if(trip.prepared.stretches.stretches.begin(),
                     trip.prepared.stretches.stretches.end(),
                     [](const Stretch& one) { return one.travel == Travel::paddle; });
    Stretch river = *stretch;
    river.current_mps = 0.2;
    const AssumedCraft& craft = trip.assumed.craft.front();
    const auto time_s = [&](const Conditions& conditions) {
        return paddle(river, craft, trip.assumed, craft.reference_kg, conditions).moving_s;
    };
    EXPECT_LT(time_s({.current = 2.0}), time_s({}));
    EXPECT_GT(time_s({.current = 0.0}), time_s({}));
    EXPECT_GT(time_s({.calm_speed = 0.8}), time_s({}));
}

TEST(Departures, WhatWasPackedIsCarriedWhateverIsEaten) {
    Case trip(mixed_trip());
    trip.open_departures();
    trip.assumed.food.replace *= 0.7;
    if (trip.assumed.food.ration_kg)
        *trip.assumed.food.ration_kg *= 0.7;
    const Solved frugal = trip.again();
    const SupplyStage& planned = trip.settled.provisions.stages.front();
    const SupplyStage& drawn = frugal.provisions.stages.front();
    EXPECT_LT(drawn.food_mg, planned.food_mg);
    EXPECT_EQ(drawn.food_mg + drawn.reserve_mg, planned.food_mg + planned.reserve_mg);
    for (std::size_t m = 0; m < trip.assumed.members.size(); ++m)
        EXPECT_NEAR(frugal.loads.day_start_kg.front()[m],
                    trip.settled.loads.day_start_kg.front()[m],
                    0.3); // only the water differs
}

} // namespace
} // namespace tumpline::planner
