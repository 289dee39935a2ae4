#include "planner/loads/limits.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>

/// One threshold: what is told of a pack, a thing, a boat and a carry agrees.
namespace tumpline::planner {
namespace {

bool cautioned(const test::PlainTrip& plain, const char* code) {
    return !test::cautions_of(plain, code).empty();
}

TEST(Limits, HoldUpToHalfOfTheLastDigitShown) {
    EXPECT_FALSE(over_limit(19.0, 19.0));
    EXPECT_FALSE(over_limit(19.04, 19.0)); // reads 19.0
    EXPECT_TRUE(over_limit(19.06, 19.0));  // reads 19.1
    EXPECT_FALSE(over_limit(18.0, 19.0));
    EXPECT_TRUE(over_limit(0.06, 0.0)) << "who is to carry nothing";
}

TEST(Limits, OfAPackAreBrokenByTheSameGramsEverywhere) {
    test::PlainTrip plain = test::plain_trip({test::walk(5000.0)});
    plain.trip.kit = {test::thing("sack", 15.0)};
    const double pack_kg = make_plan(plain.trip, plain.route).legs.at(0).loads.at(0).pack_max_kg;
    plain.trip.party[0].carry_limit_kg = pack_kg - 0.03;
    EXPECT_FALSE(cautioned(plain, "pack-over-limit"));
    plain.trip.party[0].carry_limit_kg = pack_kg - 0.07;
    EXPECT_TRUE(cautioned(plain, "pack-over-limit"));
}

TEST(Limits, OfABoatAreItsPayload) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0)});
    const double load_kg = make_plan(plain.trip, plain.route).legs.at(0).craft.at(0).load_kg;
    plain.trip.craft[0].payload_kg = load_kg - 0.03;
    EXPECT_FALSE(cautioned(plain, "craft-over-payload"));
    plain.trip.craft[0].payload_kg = load_kg - 0.07;
    EXPECT_TRUE(cautioned(plain, "craft-over-payload"));
}

TEST(Limits, OfACarryAreThoseOfItsCaution) {
    test::PlainTrip plain = test::plain_trip({test::lake(2000.0), test::walk(500.0)});
    plain.route.legs[1].spec.travel = Travel::portage;
    plain.route.legs[1].spec.carries = 1.0;
    plain.route.legs[1].travel = Travel::portage;
    plain.trip.kit = {test::thing("sack", 15.0)};
    const auto portage = [&] { return make_plan(plain.trip, plain.route).legs.at(1); };
    const double load_kg = portage().loads.at(0).pack_max_kg;
    const auto within = [&] {
        const PlanLeg leg = portage();
        const auto chosen = std::find_if(leg.choices.begin(),
                                         leg.choices.end(),
                                         [](const CarryChoice& one) { return one.chosen; });
        return chosen->within_limits;
    };
    plain.trip.party[0].portage_limit_kg = load_kg - 0.03;
    EXPECT_TRUE(within());
    EXPECT_FALSE(cautioned(plain, "pack-over-limit"));
    plain.trip.party[0].portage_limit_kg = load_kg - 0.07;
    EXPECT_FALSE(within());
    EXPECT_TRUE(cautioned(plain, "pack-over-limit"));
}

} // namespace
} // namespace tumpline::planner
