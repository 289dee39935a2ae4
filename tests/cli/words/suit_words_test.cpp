/// Boats and paddles beside the water, in words.

#include "cli/words/suit_words.h"

#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

using planner::SuitReason;
using planner::Suits;
using planner::Water;

const Figures in_metric{planner::UnitSystem::metric, "UTC", Blank::plain};
const Figures in_imperial{planner::UnitSystem::imperial, "UTC", Blank::plain};

planner::LegSuitability on_river() {
    planner::LegSuitability row;
    row.leg = 3;
    row.leg_name = "Rapids";
    row.water = Water::river;
    row.river_class = 3;
    row.what = "red boat";
    row.mass_kg = 2.1;
    row.hardest = 2;
    return row;
}

TEST(SuitWords, SayWhatItComesToAndWhy) {
    planner::LegSuitability row = on_river();
    row.remarks = {{Suits::no, SuitReason::class_over}, {Suits::with_care, SuitReason::open_deck}};
    EXPECT_EQ(suit_words(row, in_metric),
              "red boat does not suit: class III is harder than what it is made for, rivers up to "
              "class II; waves come into an open boat");
    row.remarks = {{Suits::with_care, SuitReason::light_boat}};
    EXPECT_EQ(suit_words(row, in_metric),
              "red boat with care: 2.1 kg is light for rapids: boats for them mostly weigh about "
              "4.0 kg");
    EXPECT_EQ(suit_words(row, in_imperial),
              "red boat with care: 4.6 lb is light for rapids: boats for them mostly weigh about "
              "8.8 lb");
    row.remarks = {{Suits::not_known, SuitReason::suits_not_given}};
    EXPECT_EQ(suit_words(row, in_metric),
              "red boat, not known: for what water it is made is not said");
}

TEST(SuitWords, NameTheWater) {
    planner::LegSuitability row = on_river();
    EXPECT_EQ(water_words(row), "Rapids (river, class III)");
    row.river_class.reset();
    EXPECT_EQ(water_words(row), "Rapids (river, class not given)");
    row.water = Water::sea;
    EXPECT_EQ(water_words(row), "Rapids (sea)");
    EXPECT_EQ(remark_words(row, SuitReason::water_not_named, in_metric),
              "the sea is not among what it is made for");
    EXPECT_EQ(remark_words(row, SuitReason::water_named, in_metric), "made for the sea");
}

TEST(SuitWords, EveryReasonHasWordsAndANameOfItsOwn) {
    const planner::LegSuitability row = on_river();
    std::string before;
    for (int k = 0; k <= static_cast<int>(SuitReason::stroke_open); ++k) {
        const auto reason = static_cast<SuitReason>(k);
        EXPECT_FALSE(remark_words(row, reason, in_metric).empty()) << k;
        EXPECT_NE(reason_name(reason), before);
        before = reason_name(reason);
    }
    EXPECT_EQ(before, "stroke_open");
    EXPECT_EQ(suits_name(Suits::with_care), "with_care");
}

TEST(SuitWords, SayHowAPaddleIsPacked) {
    planner::PaddleInPack paddle;
    paddle.what = "paddle (Ada)";
    paddle.bearer = "Ada";
    EXPECT_EQ(paddle_words(paddle, in_metric),
              "paddle (Ada): nothing is said of it; whether it goes into a pack is not known");
    paddle.paddle = {
        .length_m = 2.2, .pieces = 4, .packed_length_m = 0.62, .stroke = planner::Stroke::low};
    paddle.packed = planner::PackedPaddle::goes_in;
    paddle.by = planner::PackedBy::pieces;
    EXPECT_EQ(paddle_words(paddle, in_metric),
              "paddle (Ada): 220 cm, 4 pieces, packed 62 cm, for a low stroke; four pieces go into "
              "a pack");
    paddle.packed = planner::PackedPaddle::sticks_out;
    paddle.by = planner::PackedBy::lengths;
    paddle.pack_length_m = 0.55;
    paddle.sticks_out_m = 0.07;
    EXPECT_EQ(paddle_words(paddle, in_metric),
              "paddle (Ada): 220 cm, 4 pieces, packed 62 cm, for a low stroke; sticks 7 cm out of "
              "Ada's pack of 55 cm");
}

TEST(SuitWords, SayWhichEndIsHeavier) {
    EXPECT_EQ(ends_words({.bow_kg = 3.2, .stern_kg = 5.1}, in_metric),
              "bow 3.2 kg, stern 5.1 kg of what is said to lie there: 1.9 kg more at the stern");
    EXPECT_EQ(ends_words({.bow_kg = 2.0, .stern_kg = 2.0}, in_metric),
              "bow 2.0 kg, stern 2.0 kg of what is said to lie there: level");
    EXPECT_EQ(ends_words({.bow_kg = 2.0}, in_metric),
              "bow 2.0 kg, stern 0 g of what is said to lie there: 2.0 kg more at the bow");
}

} // namespace
} // namespace tumpline::cli
