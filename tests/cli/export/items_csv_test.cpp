#include "cli/export/items_csv.h"

#include "tests/support/hand_built_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::cli {
namespace {

using planner::PackedItem;

planner::Plan with(const std::vector<PackedItem>& items) {
    planner::Plan plan = test::hand_built_plan(); // Ada and Björn, red and blue boat
    plan.items = items;
    return plan;
}

TEST(ItemsCsv, HasEachFigureUnderItsHeading) {
    PackedItem rope;
    rope.item = "rope";
    rope.owner = "Ada";
    rope.count = 3;
    rope.mass_kg = 1.35;
    rope.why = "class III on the way";
    rope.bearer = 1;
    rope.at_start = planner::Account::worn;
    rope.ashore = planner::ItemUse::worn;
    rope.afloat = planner::ItemUse::used;
    rope.container = "sack";
    rope.in_craft = 0;
    rope.stowage = planner::Stowage::right;
    rope.gets_wet = true;
    rope.carry_kg_km = 12.5;
    rope.carry_kg_m_up = 640.0;
    EXPECT_EQ(items_csv(with({rope})),
              "item,part,owner,count,mass_kg,comes,why,bearer,at_start,ashore,afloat,in,craft,bag,"
              "gets_wet,carry_kg_km,carry_kg_m_up,left\r\n"
              "rope,kit,Ada,3,1.35,yes,class III on the way,Björn,worn,worn,used,sack,red boat,"
              "right,yes,12.5,640,\r\n");
}

TEST(ItemsCsv, WhatStaysAtHomeHasNoBearer) {
    PackedItem suit;
    suit.item = "dry suit";
    suit.mass_kg = 1.4;
    suit.comes = false;
    suit.why = "no water below 8 C";
    EXPECT_THAT(
        items_csv(with({suit})),
        testing::EndsWith(
            "\r\ndry suit,kit,,1,1.4,no,no water below 8 C,,,packed,packed,,,,no,0,0,\r\n"));
}

TEST(ItemsCsv, HasARecordPerRowOfThePlan) {
    const planner::Plan plan = test::hand_built_plan();
    const std::string table = items_csv(plan);
    EXPECT_EQ(std::count(table.begin(), table.end(), '\n'),
              static_cast<std::ptrdiff_t>(plan.items.size() + 1));
}

TEST(ItemsCsv, ANameThatASpreadsheetWouldRunGetsAnApostrophe) {
    PackedItem odd;
    odd.item = "=1+2";
    EXPECT_THAT(items_csv(with({odd})), testing::HasSubstr("\r\n'=1+2,"));
}

TEST(ItemsCsv, SaysWhereAThingIsLeftAndUntilWhen) {
    PackedItem rope;
    rope.item = "rope";
    rope.leaves = {0, 4};
    planner::Plan plan = with({rope});
    plan.left = {{.leave = 4, .at = "Tarn head", .day = 2, .fetch_day = 4},
                 {.leave = 1, .at = "Shelf camp", .day = 3, .fetch_day = 3},
                 {.leave = 0, .at = "Quarry", .day = 5}};
    EXPECT_THAT(
        items_csv(plan),
        testing::EndsWith("\"Tarn head, day 2 to day 4; Quarry, day 5, never fetched\"\r\n"));
}

} // namespace
} // namespace tumpline::cli
