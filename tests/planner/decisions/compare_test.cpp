#include "planner/decisions/compare.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"
#include "tests/support/random_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::planner {
namespace {

Plan plan_of(const test::RandomTrip& random) {
    return make_plan(random.trip, random.route);
}

TEST(Compare, APlanWithItselfDiffersNowhere) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const Plan plan = plan_of(test::random_trip(seed));
        const Comparison same = compare({plan, plan, plan});
        for (const ComparedFigure& one : same.figures)
            for (const std::optional<double>& difference : one.differences)
                EXPECT_EQ(difference, one.values[0] ? std::optional(0.0) : std::nullopt)
                    << "seed " << seed;
        for (const ComparedDay& one : same.days) {
            EXPECT_TRUE(one.same_night);
            EXPECT_EQ(one.moving_more_s[2], 0.0);
        }
        for (const ComparedPack& one : same.packs)
            EXPECT_EQ(one.more_kg[1].value_or(0.0), 0.0);
        for (const ComparedCautions& one : same.cautions)
            EXPECT_TRUE(one.breaks.empty() && one.mends.empty()) << "seed " << seed;
    }
}

// A limit lowered breaks, and raised again mends, what stands in the plan's own cautions.
TEST(Compare, SaysWhatBreaksAndWhatMends) {
    test::RandomTrip random = test::random_trip(3);
    for (Member& member : random.trip.party)
        member.carry_limit_kg = member.portage_limit_kg = 200.0;
    const Plan light = plan_of(random);
    for (Member& member : random.trip.party)
        member.carry_limit_kg = member.portage_limit_kg = 1.0;
    const Plan heavy = plan_of(random);
    const Comparison comparison = compare({light, heavy});
    const Comparison back = compare({heavy, light});
    const auto over_limit = [](const std::vector<Caution>& cautions) {
        return std::count_if(cautions.begin(), cautions.end(), [](const Caution& caution) {
            return caution.code == "pack-over-limit" || caution.code == "carry-over-limit";
        });
    };
    EXPECT_EQ(over_limit(light.cautions), 0);
    EXPECT_GT(over_limit(comparison.cautions.front().breaks), 0);
    EXPECT_EQ(over_limit(comparison.cautions.front().mends), 0);
    EXPECT_EQ(over_limit(comparison.cautions.front().breaks),
              over_limit(back.cautions.front().mends));
}

TEST(Compare, DifferencesAreTheOtherLessTheFirst) {
    test::RandomTrip random = test::random_trip(3);
    random.trip.food.ration_kg = 0.5;
    const Plan lean = plan_of(random);
    random.trip.food.ration_kg = 0.8;
    const Plan fed = plan_of(random);
    const Comparison comparison = compare({lean, fed});
    for (const ComparedFigure& one : comparison.figures) {
        ASSERT_EQ(one.differences[1].has_value(), one.values[0].has_value());
        if (one.values[0]) {
            EXPECT_EQ(*one.differences[1], *one.values[1] - *one.values[0]);
        }
        if (one.figure == Figure::food) {
            EXPECT_NEAR(one.values[1].value(), one.values[0].value() * 0.8 / 0.5, 1e-3);
            EXPECT_GT(one.differences[1].value(), 0.0);
        }
    }
}

TEST(Compare, AClimbThatIsNotKnownIsNotZero) {
    const Plan with = plan_of([] {
        test::PlainTrip plain = test::plain_trip({test::walk(3000.0, 0.1)}); // 300 m up
        return test::RandomTrip{plain.trip, plain.route};
    }());
    const Plan without = plan_of(test::level_trip({{.length_m = 3000.0}}, {})); // no heights
    const Comparison comparison = compare({with, without});
    for (const ComparedFigure& one : comparison.figures) {
        if (one.figure != Figure::ascent)
            continue;
        EXPECT_NEAR(one.values[0].value(), 300.0, 1e-6);
        EXPECT_FALSE(one.values[1]);
        EXPECT_EQ(one.differences[0], 0.0);
        EXPECT_FALSE(one.differences[1]);
    }
}

TEST(Compare, ShorterTripsLeaveTheirLaterDaysOpen) {
    std::vector<Plan> plans;
    for (std::uint64_t seed = 1; plans.size() < 2; ++seed) {
        Plan plan = plan_of(test::random_trip(seed));
        if (plan.days.size() == (plans.empty() ? 2U : 4U))
            plans.push_back(std::move(plan));
    }
    const Comparison comparison = compare(std::move(plans));
    ASSERT_EQ(comparison.days.size(), 4U);
    EXPECT_FALSE(comparison.days[3].plan_day[0]);
    EXPECT_EQ(comparison.days[3].plan_day[1], 3U);
    EXPECT_FALSE(comparison.days[3].later_s[1]);
    EXPECT_FALSE(comparison.days[3].same_night);
}

} // namespace
} // namespace tumpline::planner
