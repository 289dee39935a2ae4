/// The programme against exhaustive search: every set of stops is tried on cases small enough.

#include "planner/solution/night_search.h"

#include "tests/support/random_draws.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <optional>
#include <tuple>

namespace tumpline::planner {
namespace {

/// A made-up trip: what each day costs, limits and sources drawn. Costs are eighths, so that sums
/// are exact and equals occur.
struct Drawn {
    std::size_t stops;
    std::map<std::tuple<std::size_t, std::size_t, int>, NightDay> days;
    double room_l;
    double told; ///< share of the least cost that is told

    [[nodiscard]] double least(std::size_t from, std::size_t to) const {
        double least = HUGE_VAL;
        for (int day = 1; static_cast<std::size_t>(day) < stops; ++day)
            least = std::min(least, days.at({from, to, day}).cost.sum());
        return told * least;
    }

    [[nodiscard]] NightProgramme programme() const {
        return {.stops = stops,
                .room_l = room_l,
                .day =
                    [this](const NightSpan& span) {
                        return days.at({span.from, span.to, span.travel_day});
                    },
                .least = [this](std::size_t from, std::size_t to) { return least(from, to); }};
    }
};

NightDay drawn_day(test::Draws& draws, double hours, double wish, std::optional<double> limit) {
    const auto eighths = [&](int most) { return draws.whole(0, most) / 8.0; };
    NightDay day;
    day.cost.over_wish = std::max(0.0, hours - wish);
    day.cost.uneven = 0.25 * (hours - wish) * (hours - wish);
    if (draws.chance(0.5))
        day.cost.late = eighths(24);
    if (draws.chance(0.3))
        day.cost.dry_camp = 0.5;
    day.cost.carried = eighths(4);
    if (draws.chance(0.1))
        day.cost.missed = 2.0 + eighths(8);
    if (draws.chance(0.15))
        day.broken = draws.chance(0.5) ? bit(NightLimit::dusk) : bit(NightLimit::camp_closed);
    if (hours >= wish)
        day.longer_costs_at_least = day.cost.over_wish + day.cost.uneven;
    if (limit && hours > *limit) {
        day.broken |= bit(NightLimit::most_hours);
        day.longer_costs_at_least = HUGE_VAL;
    }
    day.source = draws.chance(0.5);
    day.to_source_l = draws.whole(0, 6) / 2.0;
    if (day.source)
        day.after_source_l = draws.whole(0, 4) / 2.0;
    return day;
}

Drawn drawn(std::uint64_t seed) {
    test::Draws draws(seed);
    Drawn trip;
    trip.told = draws.whole(0, 2) / 2.0;
    trip.stops = static_cast<std::size_t>(draws.whole(2, 10));
    trip.room_l = draws.chance(0.5) ? draws.whole(2, 8) / 2.0 : HUGE_VAL;
    const double wish = draws.whole(2, 8);
    const std::optional<double> limit =
        draws.chance(0.5) ? std::optional<double>(wish + draws.whole(0, 3)) : std::nullopt;
    std::vector<double> hours; // between neighbours, halves
    for (std::size_t i = 0; i + 1 < trip.stops; ++i)
        hours.push_back(draws.whole(1, 8) / 2.0);
    for (std::size_t from = 0; from < trip.stops; ++from) {
        double moving_h = 0.0;
        for (std::size_t to = from + 1; to < trip.stops; ++to) {
            moving_h += hours[to - 1];
            for (int day = 1; static_cast<std::size_t>(day) < trip.stops; ++day)
                trip.days[{from, to, day}] = drawn_day(draws, moving_h, wish, limit);
        }
    }
    return trip;
}

/// What one set of stops costs, or nothing if it breaks a limit.
std::optional<double> cost_of(const NightProgramme& programme,
                              const std::vector<std::size_t>& nights) {
    std::size_t from = 0;
    double cost = 0.0;
    double since_source_l = 0.0;
    for (std::size_t d = 0; d <= nights.size(); ++d) {
        const std::size_t to = d < nights.size() ? nights[d] : programme.stops - 1;
        const NightDay day = programme.day({from, to, static_cast<int>(d) + 1});
        if ((day.broken & ~programme.waived) != 0)
            return {};
        since_source_l += day.to_source_l;
        if ((programme.waived & bit(NightLimit::water)) == 0 && since_source_l > programme.room_l)
            return {};
        if (day.source)
            since_source_l = day.after_source_l;
        cost += day.cost.sum();
        from = to;
    }
    return cost;
}

/// Every set of stops that keeps the limits, cheapest first, of equals the one that stops earlier.
std::vector<NightChoice> tried_out(const NightProgramme& programme) {
    std::vector<NightChoice> all;
    const std::size_t between = programme.stops - 2;
    for (std::uint64_t set = 0; set < (std::uint64_t{1} << between); ++set) {
        std::vector<std::size_t> nights;
        for (std::size_t k = 0; k < between; ++k)
            if ((set >> k & 1U) != 0)
                nights.push_back(k + 1);
        if (const std::optional<double> cost = cost_of(programme, nights))
            all.push_back({nights, *cost});
    }
    std::sort(all.begin(), all.end(), [&](const NightChoice& a, const NightChoice& b) {
        const auto with_finish = [&](std::vector<std::size_t> stops) {
            stops.push_back(programme.stops - 1);
            return stops;
        };
        return a.cost != b.cost ? a.cost < b.cost : with_finish(a.stops) < with_finish(b.stops);
    });
    return all;
}

void expect_agreement(const NightProgramme& programme, std::size_t how_many) {
    std::vector<NightChoice> all = tried_out(programme);
    const std::vector<NightChoice> best = best_nights(programme, how_many);
    ASSERT_EQ(best.size(), std::min(how_many, all.size()));
    for (std::size_t k = 0; k < best.size(); ++k) {
        EXPECT_EQ(best[k].stops, all[k].stops) << "choice " << k;
        EXPECT_EQ(best[k].cost, all[k].cost) << "choice " << k;
    }
}

TEST(NightProgramme, AgreesWithExhaustiveSearch) {
    int without = 0;
    for (std::uint64_t seed = 1; seed <= 600; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const Drawn trip = drawn(seed);
        expect_agreement(trip.programme(), 3);
        without += best_nights(trip.programme(), 1).empty() ? 1 : 0;
        if (testing::Test::HasFailure())
            return;
    }
    EXPECT_GT(without, 20); // cases without any nights are among them
    EXPECT_LT(without, 400);
}

TEST(NightProgramme, AgreesWithExhaustiveSearchWhereLimitsAreWaived) {
    for (std::uint64_t seed = 1001; seed <= 1200; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const Drawn trip = drawn(seed);
        NightProgramme programme = trip.programme();
        programme.waived = seed % 2 == 0 ? bit(NightLimit::water) | bit(NightLimit::dusk)
                                         : bit(NightLimit::most_hours);
        expect_agreement(programme, 1 + seed % 5);
        if (testing::Test::HasFailure())
            return;
    }
}

TEST(NightProgramme, KeepsADearerWayThatIsLessDry) {
    // Two ways to stop 2: straight there and dry, or over the spring at stop 1 and dearer. Only the
    // second has water left for the last day.
    const auto day = [](const NightSpan& span) {
        NightDay one;
        one.cost.over_wish = span.from == 0 && span.to == 1 ? 5.0 : 1.0;
        one.to_source_l = 2.0;
        one.source = span.to == 1;
        if (span.from == 0 && span.to == 3)
            one.broken = bit(NightLimit::dusk);
        if (span.from == 1 && span.to == 3)
            one.broken = bit(NightLimit::dusk);
        return one;
    };
    const NightProgramme programme{.stops = 4, .room_l = 4.0, .day = day};
    const std::vector<NightChoice> best = best_nights(programme, 3);
    ASSERT_EQ(best.size(), 2U);
    EXPECT_EQ(best[0].stops, (std::vector<std::size_t>{2}));
    EXPECT_EQ(best[1].stops, (std::vector<std::size_t>{1, 2}));
    const NightProgramme smaller{.stops = 4, .room_l = 3.9, .day = day};
    EXPECT_TRUE(best_nights(smaller, 3).empty());
    const auto drier = [&](const NightSpan& span) {
        NightDay one = day(span);
        if (span.from == 0 && span.to == 2)
            one.to_source_l = 3.0;
        return one;
    };
    const std::vector<NightChoice> wet = best_nights({.stops = 4, .room_l = 4.0, .day = drier}, 1);
    ASSERT_EQ(wet.size(), 1U);
    EXPECT_EQ(wet[0].stops, (std::vector<std::size_t>{1, 2}));
}

TEST(NightProgramme, ManyDaysAreQuick) {
    // 60 days of four stops each; asked are days of two hours, half an hour apart. No outside
    // figure: even days cost nothing, so the answer is known.
    constexpr std::size_t stops = 241;
    std::size_t asked = 0;
    const NightProgramme programme{
        .stops = stops, .room_l = HUGE_VAL, .day = [&](const auto& span) {
            ++asked;
            const double apart_h = static_cast<double>(span.to - span.from) * 0.5 - 2.0;
            NightDay day;
            day.cost.uneven = 0.25 * apart_h * apart_h;
            if (apart_h >= 0.0)
                day.longer_costs_at_least = day.cost.uneven;
            return day;
        }};
    const std::vector<NightChoice> best = best_nights(programme, 3);
    ASSERT_EQ(best.size(), 3U);
    EXPECT_EQ(best[0].cost, 0.0);
    EXPECT_EQ(best[0].stops.size(), 59U);
    EXPECT_EQ(best[1].cost, 2 * 0.25 * 0.25);
    EXPECT_LT(asked, 500'000U);
}

TEST(NightProgramme, StartAndFinishAloneAreOneDay) {
    const NightProgramme programme{
        .stops = 2, .room_l = HUGE_VAL, .day = [](const NightSpan&) { return NightDay{}; }};
    const std::vector<NightChoice> best = best_nights(programme, 3);
    ASSERT_EQ(best.size(), 1U);
    EXPECT_TRUE(best[0].stops.empty());
}

} // namespace
} // namespace tumpline::planner
