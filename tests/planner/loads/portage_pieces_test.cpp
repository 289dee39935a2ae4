#include "planner/loads/portage_pieces.h"

#include "planner/loads/assignment.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace tumpline::planner {
namespace {

using test::party_thing;
using test::thing;

/// Ada in a boat of 3 kg (0.6 kg of water when wet), Bo in none, what they have, and what is
/// booked: 3 kg of food with Ada and 2 with Bo, 1 L of water and 0.1 kg of waste with Bo.
class PiecesOfAPortage : public testing::Test {
  protected:
    void SetUp() override {
        plain_ = test::plain_trip({test::lake(2000.0), test::walk(500.0)});
        test::make_portage(plain_, 1);
        test::add_member(plain_, "Bo", 20.0);
        Trip& trip = plain_.trip;
        trip.craft[0].wet_fraction = 0.2;
        trip.kit = {party_thing("tent", 3.0),
                    thing("clothes", 2.0),
                    thing("clothes", 2.5),
                    thing("paddle", 1.0),
                    thing("boots", 1.2),
                    thing("line", 0.5)};
        for (const std::size_t k : {std::size_t{0}, std::size_t{1}, std::size_t{2}})
            trip.kit[k].piece = "sack";
        trip.kit[2].owner = "Bo";
        trip.kit[3].afloat = ItemUse::used;
        trip.kit[4].ashore = ItemUse::worn;
        trip.kit[5].wet_fraction = 0.4;
        loads_.item_bearer = {1, 1, 1, 0, 0, 0};
        loads_.item_user = {1, 0, 1, 0, 0, 0};
        loads_.craft_bearer = {0};
        loads_.stage_share = {{0.6, 0.4}};
        booking_.book({0, Part::food, 3'000'000, Account::outside, Account::pack}, "");
        booking_.book({1, Part::food, 2'000'000, Account::outside, Account::pack}, "");
        booking_.book({1, Part::water, 1'000'000, Account::outside, Account::pack}, "");
        booking_.book({1, Part::waste, 100'000, Account::outside, Account::pack}, "");
    }

    [[nodiscard]] PieceSource source(bool wet) {
        assumed_ = assume(plain_.trip);
        brought_.assign(plain_.trip.kit.size(), true);
        wet_craft_.assign(1, wet);
        wet_kit_.assign(plain_.trip.kit.size(), wet);
        loads_.tied = tie_items(plain_.trip, brought_);
        return {plain_.trip, assumed_, brought_, craft_here_, loads_, wet_craft_, wet_kit_, true};
    }

    [[nodiscard]] std::vector<Piece> pieces(BoatState boats, bool wet = false) {
        return pieces_of(source(wet), booking_, boats);
    }

    static const Piece& named(const std::vector<Piece>& pieces, const std::string& name) {
        const auto found = std::find_if(
            pieces.begin(), pieces.end(), [&](const Piece& piece) { return piece.name == name; });
        EXPECT_NE(found, pieces.end()) << name;
        return *found;
    }

    static std::int64_t sum_mg(const std::vector<Piece>& pieces) {
        return std::accumulate(
            pieces.begin(), pieces.end(), std::int64_t{0}, [](std::int64_t sum, const Piece& one) {
                return sum + one.mass_mg;
            });
    }

    test::PlainTrip plain_;
    Assumed assumed_{};
    Loads loads_;
    Booking booking_{2, false};
    std::vector<bool> brought_, wet_craft_, wet_kit_;
    std::vector<bool> craft_here_{true};
};

TEST_F(PiecesOfAPortage, MakeOneOfAContainerWhoeverOwnsWhatIsInIt) {
    const std::vector<Piece> all = pieces(BoatState::rolled);
    const Piece& sack = named(all, "sack");
    EXPECT_EQ(sack.mass_mg, 7'500'000); // 3.0 + 2.0 + 2.5 kg
    EXPECT_EQ(sack.owner, 1U);
    EXPECT_FALSE(sack.whose);
    EXPECT_EQ(
        std::count_if(all.begin(), all.end(), [](const Piece& one) { return one.name == "sack"; }),
        1);
}

TEST_F(PiecesOfAPortage, PutAllOfTheFoodIntoItsContainer) {
    plain_.trip.food.piece = "sack";
    loads_.stage_share = {{0.0, 1.0}};
    const Piece sack = named(pieces(BoatState::whole), "sack");
    EXPECT_EQ(sack.mass_mg, 12'500'000); // and 3 + 2 kg of food
    EXPECT_EQ(sack.parts[static_cast<std::size_t>(Part::food)], 5'000'000);
    EXPECT_FALSE(sack.divisible());
}

TEST_F(PiecesOfAPortage, MakeBagsOfLooseFood) {
    // 3 kg in two bags of 1.5 kg, 2 kg in one.
    const std::vector<Piece> all = pieces(BoatState::rolled);
    EXPECT_EQ(named(all, "food bag 1").mass_mg, 1'500'000);
    EXPECT_EQ(named(all, "food bag 2").mass_mg, 1'500'000);
    EXPECT_EQ(named(all, "food").mass_mg, 2'000'000);
    EXPECT_TRUE(named(all, "water").divisible());
    EXPECT_EQ(named(all, "waste").mass_mg, 100'000) << "waste is carried";
}

TEST_F(PiecesOfAPortage, LashWhatIsUsedToAWholeBoat) {
    const Piece boat = named(pieces(BoatState::whole), "boat");
    EXPECT_EQ(boat.mass_mg, 4'000'000); // boat and paddle
    EXPECT_EQ(boat.lashed, std::vector<std::string>{"paddle"});
    EXPECT_TRUE(boat.boat);
    const std::vector<Piece> rolled = pieces(BoatState::rolled);
    EXPECT_EQ(named(rolled, "boat").mass_mg, 3'000'000);
    EXPECT_FALSE(named(rolled, "boat").boat);
    EXPECT_EQ(named(rolled, "paddle").whose, std::optional<std::size_t>(0));
}

TEST_F(PiecesOfAPortage, WeighWithTheWaterThatClingsToThem) {
    const std::vector<Piece> all = pieces(BoatState::whole, true);
    EXPECT_EQ(named(all, "boat").mass_mg, 4'600'000); // 20 % of 3 kg more
    EXPECT_EQ(named(all, "line").mass_mg, 700'000);   // 0.5 + 40 %
}

TEST_F(PiecesOfAPortage, LeaveOutWhatIsWorn) {
    const std::vector<double> on_foot{1.2, 0.0};
    const std::vector<double> nothing{0.0, 0.0};
    EXPECT_EQ(worn_with(source(false), BoatState::rolled), on_foot) << "boots";
    EXPECT_EQ(worn_with(source(false), BoatState::whole), nothing) << "boots are packed afloat";
    PieceSource from_land = source(false);
    from_land.after_water = false;
    EXPECT_EQ(worn_with(from_land, BoatState::whole), on_foot)
        << "nobody changed: they come from a walk";
}

TEST_F(PiecesOfAPortage, AddUpToAllThereIsInEitherState) {
    // Kit 10.2, boat 3.0, food 5.0, water 1.0, waste 0.1: 19.3 kg; the boots are worn on foot.
    EXPECT_EQ(sum_mg(pieces(BoatState::whole)), 19'300'000);
    EXPECT_EQ(sum_mg(pieces(BoatState::rolled)), 18'100'000);
    PieceSource from_land = source(false);
    from_land.after_water = false;
    EXPECT_EQ(sum_mg(pieces_of(from_land, booking_, BoatState::whole)), 18'100'000);
}

} // namespace
} // namespace tumpline::planner
