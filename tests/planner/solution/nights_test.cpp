/// Chosen nights against the plan and against trying every set of nights.

#include "planner/solution/nights.h"

#include "planner/make_plan.h"
#include "planner/results/assembly.h"
#include "planner/solution/night_costs.h"
#include "tests/support/random_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

namespace tumpline::planner {
namespace {

using Nights = std::vector<std::size_t>;

/// A made-up trip whose nights are to be chosen.
test::RandomTrip open_trip(std::uint64_t seed) {
    test::RandomTrip random = test::random_trip(seed);
    random.trip.days.nights.clear();
    random.trip.days.nights_auto = true;
    if (seed % 3 == 0)
        random.trip.days.hours_limit = random.trip.days.hours.value_or(8.0) + 1.0;
    if (seed % 4 == 0)
        random.trip.days.dusk_is_limit = true;
    return random;
}

/// Every set of nights; none where there are too many to try.
std::vector<Nights> every_choice(const NightStops& stops) {
    std::vector<Nights> all;
    const std::size_t between = stops.boundaries.size() - 2;
    if (between > 6)
        return all;
    for (std::uint64_t set = 0; set < (std::uint64_t{1} << between); ++set) {
        Nights nights;
        for (std::size_t k = 0; k < between; ++k)
            if ((set >> k & 1U) != 0)
                nights.push_back(stops.boundaries[k + 1]);
        all.push_back(std::move(nights));
    }
    return all;
}

/// The limits that a finished plan says are broken.
NightLimits broken_in(const Plan& plan) {
    NightLimits broken = 0;
    for (const Caution& caution : plan.cautions) {
        if (caution.level != Level::stop)
            continue;
        if (caution.code == "hours-over-limit")
            broken |= bit(NightLimit::most_hours);
        if (caution.code == "after-dusk")
            broken |= bit(NightLimit::dusk);
        if (caution.code == "water-over-capacity")
            broken |= bit(NightLimit::water);
        if (caution.code == "camp-closed")
            broken |= bit(NightLimit::camp_closed);
        if (caution.code == "camp-too-small")
            broken |= bit(NightLimit::camp_full);
        if (caution.code == "supply-closed")
            broken |= bit(NightLimit::supply_closed);
        if (caution.code == "appointment-missed")
            broken |= bit(NightLimit::appointment);
    }
    return broken;
}

/// Longer than a day of the calendar: its clock runs past what limits speak of.
bool past_midnight(const NightsSettled& one) {
    constexpr double day_s = 86400.0;
    return std::any_of(one.settled.timeline.arrive_s.begin(),
                       one.settled.timeline.arrive_s.end(),
                       [](double arrive_s) { return arrive_s > day_s; });
}

TEST(NightDays, BreakWhatThePlanSaysIsBroken) {
    std::set<NightLimits> seen;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = open_trip(seed);
        const Prepared prepared = prepare(random.trip, random.route);
        const std::vector<Nights> choices = every_choice(night_stops(prepared));
        for (std::size_t k = 0; k < choices.size(); k += 1 + choices.size() / 4) {
            const NightsSettled one = settled_at(prepared, choices[k]);
            if (past_midnight(one))
                continue;
            const NightLimits told = broken_in(assemble_plan(prepared, one.settled));
            EXPECT_EQ(one.broken, told) << "choice " << k;
            seen.insert(told);
        }
        if (testing::Test::HasFailure())
            return;
    }
    EXPECT_GE(seen.size(), 6U); // limits of several kinds were broken, and none
    EXPECT_TRUE(seen.contains(0));
}

TEST(NightDays, KeepTheClockOfTheLoop) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = open_trip(seed);
        const Prepared prepared = prepare(random.trip, random.route);
        const NightStops stops = night_stops(prepared);
        const Nights nights(stops.boundaries.begin() + 1, stops.boundaries.end() - 1);
        const NightsSettled one = settled_at(prepared, nights);
        NightDays days(prepared, stops, one.settled);
        std::size_t d = 0;
        for (const DaySpan& span : one.settled.timeline.days) {
            if (!span.rest_day) {
                const NightDays::Reached& there = days.row(d++)[span.last - span.first - 1];
                const double way_s = one.settled.timeline.stretches[span.last - 1].end_s -
                                     one.settled.timeline.stretches[span.first].start_s;
                double dark_s = 0.0;
                for (std::size_t i = span.first; i < span.last; ++i)
                    dark_s += one.settled.timeline.stretches[i].dark_s;
                // A day's way is priced as walked by day: with other nights it would be.
                if (dark_s > 0.0)
                    EXPECT_LE(there.evening_s, way_s + 1e-6) << "day " << span.day;
                else
                    EXPECT_NEAR(there.evening_s, way_s, 1e-6) << "day " << span.day;
            }
        }
    }
}

TEST(Nights, AreTheCheapestOfAllAtTheirOwnLoads) {
    // Every set of nights is brought to its own fixed point. (200 trips with 1508 sets agree as
    // well; here as many as there is time for.)
    int compared = 0, without = 0;
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = open_trip(seed);
        const Prepared prepared = prepare(random.trip, random.route);
        const std::vector<Nights> choices = every_choice(night_stops(prepared));
        if (choices.empty() || choices.size() > 8)
            continue;
        const NightsChosen chosen = choose_nights(prepared, 0);
        EXPECT_FALSE(chosen.flipped);
        without += chosen.needs_without.empty() ? 0 : 1;
        bool any = false;
        for (const Nights& nights : choices) {
            const NightsSettled other = settled_at(prepared, nights);
            any = any || other.broken == 0;
            if (other.broken != 0)
                continue;
            ++compared;
            EXPECT_GE(other.cost(), chosen.best.cost() - 1e-9) << nights.size() << " nights";
        }
        EXPECT_EQ(any, chosen.needs_without.empty());
    }
    EXPECT_GT(compared, 60);
    EXPECT_GT(without, 0);
}

TEST(Nights, GiveThePlanOfThoseNightsListed) {
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        test::RandomTrip random = open_trip(seed);
        const Prepared prepared = prepare(random.trip, random.route);
        const NightsChosen chosen = choose_nights(prepared, 0);
        const Plan automatic = make_plan(random.trip, random.route);
        if (chosen.best.nights.empty() || !chosen.needs_without.empty())
            continue;
        random.trip.days.nights_auto = false;
        for (const std::size_t night : chosen.best.nights)
            for (const std::size_t place : prepared.stretches.boundaries[night].places)
                if (random.route.places[place].kind == PlaceKind::camp) {
                    random.trip.days.nights.push_back(random.route.places[place].name);
                    break;
                }
        const Plan listed = make_plan(random.trip, random.route);
        ASSERT_EQ(automatic.days.size(), listed.days.size());
        for (std::size_t d = 0; d < listed.days.size(); ++d) {
            EXPECT_EQ(automatic.days[d].to, listed.days[d].to);
            EXPECT_EQ(automatic.days[d].arrive, listed.days[d].arrive);
            EXPECT_EQ(automatic.days[d].moving_s, listed.days[d].moving_s);
        }
        ASSERT_EQ(automatic.ledger.entries.size(), listed.ledger.entries.size());
        for (std::size_t k = 0; k < listed.ledger.entries.size(); ++k)
            EXPECT_EQ(automatic.ledger.entries[k].mass_mg, listed.ledger.entries[k].mass_mg);
        EXPECT_EQ(automatic.cautions.size(), listed.cautions.size());
    }
}

TEST(Nights, AreAnsweredAgainAtTheirOwnLoads) {
    for (std::uint64_t seed = 101; seed <= 140; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = open_trip(seed);
        const Prepared prepared = prepare(random.trip, random.route);
        const NightsChosen chosen = choose_nights(prepared, 2);
        if (chosen.flipped || !chosen.needs_without.empty())
            continue;
        const NightStops stops = night_stops(prepared);
        NightDays days(prepared, stops, chosen.best.settled);
        const std::vector<NightChoice> again =
            best_nights({.stops = stops.boundaries.size(),
                         .room_l = days.room_l(),
                         .day = [&](const NightSpan& span) { return days(span); }},
                        1);
        ASSERT_FALSE(again.empty());
        EXPECT_EQ(stops.nights(again[0].stops), chosen.best.nights);
        EXPECT_EQ(again[0].cost, chosen.best.cost());
        for (const NightsSettled& next : chosen.next)
            EXPECT_EQ(next.broken, 0U);
    }
}

} // namespace
} // namespace tumpline::planner
