/// Boats and paddles beside the water of the legs.

#include "planner/results/suitability.h"

#include "planner/make_plan.h"
#include "tests/support/lake_and_rapids.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;

/// The reasons that are said of a boat or paddle on a leg.
std::vector<SuitReason> reasons(const Plan& plan, LegNumber leg, Part part) {
    std::vector<SuitReason> said;
    for (const LegSuitability& row : plan.suitability.legs)
        if (row.leg == leg && row.part == part)
            for (const SuitRemark& remark : row.remarks)
                said.push_back(remark.reason);
    return said;
}

Suits worst(const Plan& plan, LegNumber leg, Part part) {
    for (const LegSuitability& row : plan.suitability.legs)
        if (row.leg == leg && row.part == part)
            return row.worst();
    return Suits::yes;
}

TEST(Suitability, OfAnOpenBoatForLakesAndEasyRivers) {
    test::RandomTrip made = test::lake_and_rapids();
    made.trip.craft[0].deck = Deck::open;
    made.trip.craft[0].suits = {{Water::lake, 0}, {Water::river, 2}};
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_THAT(reasons(plan, 2, Part::craft), ElementsAre(SuitReason::water_named));
    EXPECT_EQ(worst(plan, 2, Part::craft), Suits::yes);
    // Class III over II, waves from II, 2.1 kg below 3, straps from III.
    EXPECT_THAT(reasons(plan, 3, Part::craft),
                ElementsAre(SuitReason::class_over,
                            SuitReason::open_deck,
                            SuitReason::light_boat,
                            SuitReason::straps));
    EXPECT_EQ(worst(plan, 3, Part::craft), Suits::no);
    EXPECT_TRUE(reasons(plan, 1, Part::craft).empty()) << "it is walked";
}

TEST(Suitability, ThighStrapsAreAskedForFromClassThree) {
    test::RandomTrip made = test::lake_and_rapids();
    made.trip.craft[0].suits = {{Water::lake, 0}, {Water::river, 0}};
    made.trip.craft[0].mass_kg = 3.9;
    made.trip.craft[0].thigh_straps = false;
    Plan plan = make_plan(made.trip, made.route);
    EXPECT_THAT(reasons(plan, 3, Part::craft),
                ElementsAre(SuitReason::water_named, SuitReason::no_straps));
    EXPECT_EQ(worst(plan, 3, Part::craft), Suits::with_care);
    EXPECT_THAT(reasons(plan, 2, Part::craft),
                testing::Not(testing::Contains(SuitReason::no_straps)))
        << "a lake";
    made.trip.craft[0].thigh_straps = true;
    plan = make_plan(made.trip, made.route);
    EXPECT_THAT(reasons(plan, 3, Part::craft), ElementsAre(SuitReason::water_named));
}

TEST(Suitability, OfADeckedBoatForRivers) {
    test::RandomTrip made = test::lake_and_rapids();
    made.trip.craft[0].deck = Deck::spray_deck;
    made.trip.craft[0].suits = {{Water::river, 0}};
    made.trip.craft[0].mass_kg = 3.9;
    Plan plan = make_plan(made.trip, made.route);
    EXPECT_THAT(
        reasons(plan, 2, Part::craft),
        ElementsAre(SuitReason::water_not_named, SuitReason::deck_idle, SuitReason::heavy_boat));
    EXPECT_THAT(reasons(plan, 3, Part::craft),
                ElementsAre(SuitReason::water_named, SuitReason::straps));
    EXPECT_EQ(worst(plan, 3, Part::craft), Suits::with_care);
    made.trip.weather.rain = true;
    plan = make_plan(made.trip, made.route);
    EXPECT_THAT(reasons(plan, 2, Part::craft),
                ElementsAre(SuitReason::water_not_named, SuitReason::heavy_boat));
}

TEST(Suitability, SaysWhatIsNotKnown) {
    test::RandomTrip made = test::lake_and_rapids();
    made.trip.craft[0].deck = Deck::self_bailing;
    made.route.legs[2].spec.river_class.reset();
    made.trip.route.legs[2] = made.route.legs[2].spec;
    Plan plan = make_plan(made.trip, made.route);
    EXPECT_THAT(reasons(plan, 3, Part::craft), ElementsAre(SuitReason::suits_not_given));
    EXPECT_THAT(reasons(plan, 3, Part::kit), ElementsAre(SuitReason::stroke_open));
    made.trip.craft[0].suits = {{Water::river, 2}};
    made.trip.kit[0].paddle->stroke = Stroke::low;
    plan = make_plan(made.trip, made.route);
    EXPECT_THAT(reasons(plan, 3, Part::craft), ElementsAre(SuitReason::class_not_given));
    EXPECT_THAT(reasons(plan, 3, Part::kit), ElementsAre(SuitReason::class_not_given));
    EXPECT_EQ(worst(plan, 3, Part::craft), Suits::not_known);
}

TEST(Suitability, OfPaddlesGoesByTheirStroke) {
    test::RandomTrip made = test::lake_and_rapids({.stroke = Stroke::low});
    Plan plan = make_plan(made.trip, made.route);
    EXPECT_THAT(reasons(plan, 2, Part::kit), ElementsAre(SuitReason::stroke_fits));
    EXPECT_THAT(reasons(plan, 3, Part::kit), ElementsAre(SuitReason::low_stroke));
    made.trip.kit[0].paddle->stroke = Stroke::high;
    plan = make_plan(made.trip, made.route);
    EXPECT_THAT(reasons(plan, 2, Part::kit), ElementsAre(SuitReason::high_stroke));
    EXPECT_THAT(reasons(plan, 3, Part::kit), ElementsAre(SuitReason::stroke_fits));
}

PaddleInPack packed(const PaddleSpec& paddle, std::optional<double> pack_length_m) {
    test::RandomTrip made = test::lake_and_rapids(paddle);
    made.trip.party[0].pack_length_m = pack_length_m;
    return make_plan(made.trip, made.route).suitability.paddles.at(0);
}

TEST(Suitability, FourPiecesGoIntoAPackAndTwoStickOut) {
    EXPECT_EQ(packed({.pieces = 4}, {}).packed, PackedPaddle::goes_in);
    EXPECT_EQ(packed({.pieces = 2}, {}).packed, PackedPaddle::sticks_out);
    EXPECT_EQ(packed({.pieces = 3}, {}).packed, PackedPaddle::not_known);
    EXPECT_EQ(packed({}, 0.6).packed, PackedPaddle::not_known);
    EXPECT_EQ(packed({.pieces = 4}, {}).by, PackedBy::pieces);
}

TEST(Suitability, LengthsDecideWhereTheyAreGiven) {
    const PaddleInPack long_one = packed({.pieces = 4, .packed_length_m = 0.62}, 0.55);
    EXPECT_EQ(long_one.packed, PackedPaddle::sticks_out);
    EXPECT_EQ(long_one.by, PackedBy::lengths);
    EXPECT_NEAR(long_one.sticks_out_m, 0.07, 1e-9);
    EXPECT_EQ(long_one.bearer, "Ada");
    EXPECT_EQ(packed({.pieces = 2, .packed_length_m = 0.62}, 0.65).packed, PackedPaddle::goes_in);
    const PaddleInPack whole = packed({.length_m = 2.1, .pieces = 1}, 0.6);
    EXPECT_NEAR(whole.sticks_out_m, 1.5, 1e-9);
}

TEST(Suitability, IsSilentWhereTheTripIs) {
    test::RandomTrip made = test::lake_and_rapids();
    made.trip.kit[0].paddle.reset();
    EXPECT_TRUE(make_plan(made.trip, made.route).suitability.empty());
}

TEST(Suitability, LooksAtNothingThatIsUsedOnFootOrStaysAtHome) {
    test::RandomTrip made = test::lake_and_rapids({.pieces = 2, .stroke = Stroke::low});
    made.trip.kit[0].ashore = ItemUse::used; // as a staff
    EXPECT_TRUE(make_plan(made.trip, made.route).suitability.paddles.empty());
    made.trip.kit[0].bring = false;
    EXPECT_TRUE(make_plan(made.trip, made.route).suitability.empty());
}

} // namespace
} // namespace tumpline::planner
