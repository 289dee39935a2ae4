#include "planner/loads/booking.h"

#include <gtest/gtest.h>

#include <cstdint>

namespace tumpline::planner {
namespace {

/// 1000 mg of food into Ben's pack, of which 300 are eaten, and 50 of fuel.
Booking booked(bool record) {
    Booking booking(2, record);
    booking.set_place({.day = 2, .plan_leg = 3, .along_m = 4.5});
    booking.book({1, Part::food, 1000, Account::outside, Account::pack}, "bought");
    booking.book({1, Part::food, 300, Account::pack, Account::eaten}, "lunch");
    booking.book({1, Part::fuel, 50, Account::outside, Account::pack}, "bought");
    booking.book({1, Part::fuel, 0, Account::pack, Account::burnt}, "nothing");
    return booking;
}

TEST(Booking, KnowsWhatEveryAccountHolds) {
    for (const bool record : {true, false}) {
        const Booking booking = booked(record);
        EXPECT_EQ(booking.held_mg(1, Account::pack, Part::food), 700); // 1000 - 300
        EXPECT_EQ(booking.held_mg(1, Account::pack), 750);             // and 50 of fuel
        EXPECT_EQ(booking.held_mg(1, Account::eaten, Part::food), 300);
        EXPECT_EQ(booking.held_mg(1, Account::outside), -1050);
        EXPECT_EQ(booking.held_mg(0, Account::pack), 0) << "another's";
        EXPECT_EQ(booking.next_step(), 3U) << "nothing is no movement";
    }
}

TEST(Booking, KeepsEntriesOnlyWhenRecording) {
    EXPECT_TRUE(booked(false).take_ledger().entries.empty());
    const Ledger ledger = booked(true).take_ledger();
    ASSERT_EQ(ledger.entries.size(), 3U);
    const Entry& lunch = ledger.entries[1];
    EXPECT_EQ(lunch.day, 2);
    EXPECT_EQ(lunch.step, 1U);
    EXPECT_EQ(lunch.plan_leg, PlanLegNumber{3});
    EXPECT_EQ(lunch.along_m, 4.5);
    EXPECT_EQ(lunch.member, 1U);
    EXPECT_EQ(lunch.mass_mg, 300);
    EXPECT_EQ(lunch.why, "lunch");
    EXPECT_EQ(ledger.balance_mg(1, Account::pack, Part::food, 1), 1000) << "before lunch";
    EXPECT_EQ(ledger.balance_mg(1, Account::pack, Part::food, 2), 700);
}

} // namespace
} // namespace tumpline::planner
