#include "planner/decisions/choices.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// Too heavy for Ada's limit, so that there are remedies; a way round the lake.
test::PlainTrip heavy() {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0), test::lake(3000.0)});
    plain.trip.kit = {test::thing("sack", 45.0)}; // her limit is 40 kg
    plain.route.alternatives = {test::on_foot_beside(plain.route.legs[1], "shore")};
    return plain;
}

TEST(Choices, AddWhatTakesFurtherPlans) {
    const test::PlainTrip plain = heavy();
    const Plan bare = make_plan(plain.trip, plain.route);
    const Plan with =
        make_plan_with_choices(plain.trip, plain.route, other_routes(plain.trip, plain.route, {}));
    EXPECT_TRUE(bare.remedies.overloaded.empty());
    EXPECT_FALSE(with.remedies.overloaded.empty());
    EXPECT_EQ(with.other_ways.ways.size(), 1U);
    EXPECT_EQ(with.totals.moving_s, bare.totals.moving_s);
    EXPECT_EQ(with.cautions.size(), bare.cautions.size());
}

TEST(Choices, AreLeftOutWhereNobodyAsks) {
    const test::PlainTrip plain = heavy();
    const std::vector<OtherRoute> others = other_routes(plain.trip, plain.route, {});
    const Plan without = make_plan_with_choices(
        plain.trip, plain.route, others, {.remedies = false, .other_ways = false, .flows = false});
    EXPECT_TRUE(without.remedies.overloaded.empty());
    EXPECT_TRUE(without.other_ways.ways.empty());
    const Plan ways = make_plan_with_choices(
        plain.trip, plain.route, others, {.remedies = false, .other_ways = true, .flows = false});
    EXPECT_TRUE(ways.remedies.overloaded.empty());
    EXPECT_EQ(ways.other_ways.ways.size(), 1U);
}

} // namespace
} // namespace tumpline::planner
