#include "planner/loads/ledger.h"

#include "planner/loads/booking.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// Ada (0) fills 2 L, drinks half a litre, and hands a tent of 1.9 kg to Bo (1), who has eaten.
Ledger small_ledger() {
    Booking booking(2, true);
    booking.book({0, Part::water, 2'000'000, Account::outside, Account::pack}, "filled");
    booking.book({0, Part::kit, 1'900'000, Account::outside, Account::pack, 0}, "packed at home");
    booking.book({1, Part::food, 700'000, Account::outside, Account::pack}, "packed at home");
    booking.set_place({2, 3, 4000.0});
    booking.book({0, Part::water, 500'000, Account::pack, Account::drunk}, "drunk on the way");
    booking.book({1, Part::food, 300'000, Account::pack, Account::eaten}, "trail food");
    booking.book({0, Part::kit, 1'900'000, Account::pack, Account::outside, 0}, "handed over");
    booking.book({1, Part::kit, 1'900'000, Account::outside, Account::pack, 0}, "handed over");
    return booking.take_ledger();
}

TEST(Ledger, SumsWhatAMemberHeldBeforeAStep) {
    const Ledger ledger = small_ledger();
    EXPECT_EQ(ledger.balance_mg(0, Account::pack, 0), 0);
    // Steps 0 and 1: 2.0 + 1.9 kg.
    EXPECT_EQ(ledger.balance_mg(0, Account::pack, 2), 3'900'000);
    EXPECT_EQ(ledger.balance_mg(0, Account::pack, Part::water, 3), 2'000'000);
    EXPECT_EQ(ledger.balance_mg(0, Account::pack, Part::water, 4), 1'500'000);
    EXPECT_EQ(ledger.balance_mg(0, Account::drunk, Part::water, 4), 500'000);
}

TEST(Ledger, KeepsMembersAndPartsApart) {
    const Ledger ledger = small_ledger();
    EXPECT_EQ(ledger.balance_mg(1, Account::pack, Part::water, 7), 0);
    // 0.7 - 0.3 kg of food and the tent.
    EXPECT_EQ(ledger.balance_mg(1, Account::pack, Part::food, 7), 400'000);
    EXPECT_EQ(ledger.balance_mg(1, Account::pack, 7), 2'300'000);
    EXPECT_EQ(ledger.balance_mg(0, Account::pack, 7), 1'500'000);
}

TEST(Ledger, HandsAThingOverWithoutMakingOrLosingAnything) {
    const Ledger ledger = small_ledger();
    const auto tent_mg = [&](std::size_t step) {
        return ledger.balance_mg(0, Account::pack, Part::kit, step) +
               ledger.balance_mg(1, Account::pack, Part::kit, step);
    };
    EXPECT_EQ(tent_mg(5), 1'900'000);
    EXPECT_EQ(tent_mg(7), 1'900'000);
}

TEST(Booking, HoldsTheSameWhetherItKeepsItsEntriesOrNot) {
    for (const bool record : {true, false}) {
        Booking booking(1, record);
        booking.book({0, Part::food, 800'000, Account::outside, Account::pack}, "packed at home");
        booking.book({0, Part::food, 0, Account::pack, Account::eaten}, "nothing");
        booking.book({0, Part::food, 300'000, Account::pack, Account::eaten}, "breakfast");
        EXPECT_EQ(booking.held_mg(0, Account::pack, Part::food), 500'000);
        EXPECT_EQ(booking.held_mg(0, Account::pack), 500'000);
        EXPECT_EQ(booking.held_mg(0, Account::eaten, Part::food), 300'000);
        EXPECT_EQ(booking.next_step(), 2U) << "nothing moved is no step";
        EXPECT_EQ(booking.take_ledger().entries.size(), record ? 2U : 0U);
    }
}

TEST(Booking, DatesAndPlacesItsEntries) {
    const Ledger ledger = small_ledger();
    EXPECT_EQ(ledger.entries[0].day, 1);
    EXPECT_EQ(ledger.entries[3].day, 2);
    EXPECT_EQ(ledger.entries[3].plan_leg, PlanLegNumber{3});
    EXPECT_EQ(ledger.entries[3].along_m, 4000.0);
    EXPECT_EQ(ledger.entries[3].why, "drunk on the way");
}

} // namespace
} // namespace tumpline::planner
