#include "cli/json/plan_json.h"

#include "planner/cautions/verdict.h"
#include "planner/quantities/quantities.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/json_keys.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <limits>
#include <set>
#include <string>

namespace tumpline::cli {
namespace {

using nlohmann::json;
using planner::Plan;

const std::set<std::string> by_member = {"days[].energy_kcal",
                                         "days[].pack_start_kg",
                                         "days[].pack_end_kg",
                                         "remedies.raise_limits.limits_kg",
                                         "stages[].bearer_share",
                                         "stages[].member_food_kg",
                                         "stages[].meals[].food_kg",
                                         "water[].fill_l"};

json shown(const Plan& plan) {
    return json::parse(plan_json(plan, "1.2.3"));
}

/// The plan with one of everything that its verdict may hold, and a hazard.
Plan judged_plan() {
    Plan plan = test::hand_built_plan();
    planner::Caution pack{
        planner::Level::caution, "pack-over-limit", 1, planner::LegNumber{2}, "Too heavy.", "x"};
    pack.title = "Pack over the limit";
    pack.subject = "Ada";
    pack.figure = "24.1 kg of 19.0 kg";
    plan.cautions.push_back(pack);
    plan.verdict = planner::verdict_of(plan, {{"wind", "wind", "/weather/wind", {3}}});
    plan.hazards = {{.hazard = true,
                     .place = planner::PlaceKind::hazard,
                     .name = "Sieve bend",
                     .note = "",
                     .day = 2,
                     .leg = 4,
                     .along_m = 20500.0}};
    return plan;
}

TEST(PlanJson, ShowsTheVerdictAndTheHazards) {
    const json plan = shown(judged_plan());
    EXPECT_EQ(plan["verdict"]["level"], "breaks");
    EXPECT_EQ(plan["verdict"]["words"], "breaks what you asked");
    ASSERT_EQ(plan["verdict"]["reasons"].size(), 1U);
    const json& reason = plan["verdict"]["reasons"][0];
    EXPECT_EQ(reason["subject"], "Ada");
    EXPECT_EQ(reason["worst"]["day"], 1);
    EXPECT_EQ(reason["worst"]["leg"], 2);
    EXPECT_EQ(reason["worst"]["figure"], "24.1 kg of 19.0 kg");
    EXPECT_EQ(reason["cautions"][0], plan["cautions"].size() - 1);
    EXPECT_EQ(plan["verdict"]["unknown"][0]["legs"][0], 3);
    EXPECT_EQ(plan["hazards"][0]["name"], "Sieve bend");
    EXPECT_TRUE(plan["hazards"][0]["note"].is_null());
}

TEST(PlanJson, HasTheKeysOfItsPageAndNoOther) {
    Plan plan = judged_plan();
    plan.verdict.also = plan.verdict.reasons;
    plan.left.emplace_back().things.emplace_back();
    plan.suitability.legs.emplace_back().remarks.emplace_back();
    plan.suitability.paddles.emplace_back();
    const auto afloat = std::find_if(
        plan.legs.begin(), plan.legs.end(), [](const auto& leg) { return !leg.craft.empty(); });
    ASSERT_NE(afloat, plan.legs.end());
    afloat->craft[0].ends = planner::EndsLoad{
        .bow_kg = 1.0, .stern_kg = 2.0, .bow = {{"tent", 1.0}}, .stern = {{"pots", 2.0}}};
    test::KeysByPlace printed = test::keys_of(shown(plan), by_member);
    for (const char* part : {"[]", "[].worst"}) { // one table for both
        const std::string also = std::string("verdict.also") + part;
        EXPECT_EQ(printed[also], printed[std::string("verdict.reasons") + part]);
        printed.erase(also);
    }
    printed["plan"] = printed[""];
    printed.erase("");
    for (const char* bag :
         {"right[]", "at_hand[]", "ends.bow[]", "ends.stern[]"}) { // one table for all
        EXPECT_EQ(printed[std::string("legs[].craft[].") + bag], printed["legs[].craft[].left[]"]);
        printed.erase(std::string("legs[].craft[].") + bag);
    }
    EXPECT_EQ(printed["other_ways.ways[].figures"], printed["other_ways.planned"]);
    printed.erase("other_ways.ways[].figures");
    const test::KeysByPlace told = test::keys_in_page(test::root / "docs" / "plan-json.md");
    for (const auto& [place, keys] : told)
        EXPECT_EQ(printed[place], keys) << place;
    EXPECT_EQ(printed.size(), told.size());
}

TEST(PlanJson, KeepsEveryDigit) {
    Plan plan = test::hand_built_plan();
    plan.legs[0].loads[0].pack_start_kg = 19.1 + 1e-13;
    plan.totals.distance_m = 46000.0 / 3.0;
    const json shown_plan = shown(plan);
    EXPECT_EQ(shown_plan["legs"][0]["loads"][0]["pack_start_kg"].get<double>(), 19.1 + 1e-13);
    EXPECT_EQ(shown_plan["totals"]["distance_m"].get<double>(), 46000.0 / 3.0);
}

TEST(PlanJson, ShowsTheFiguresOfThePlan) {
    const Plan plan = test::hand_built_plan();
    const json shown_plan = shown(plan);
    EXPECT_EQ(shown_plan["trip"], "Over the saddle and down the river");
    EXPECT_EQ(shown_plan["version"], "1.2.3");
    EXPECT_EQ(shown_plan["days"][0]["set_off"], "2027-06-18T08:00:00+02:00");
    EXPECT_TRUE(shown_plan["days"][0]["dusk"].is_null());
    EXPECT_EQ(shown_plan["days"][0]["twilight"], "rises_only");
    // 1650 kcal in camp and at rest, 2410 over the saddle, 190 across the tarn; 4184 J each
    EXPECT_NEAR(shown_plan["days"][0]["energy_kcal"]["Ada"].get<double>(), 4250.0, 1e-9);
    EXPECT_EQ(shown_plan["days"][0]["members"][1]["heaviest_leg"], 0);
    EXPECT_EQ(shown_plan["legs"][0]["part"], nullptr);
    EXPECT_EQ(shown_plan["legs"][3]["part"], 1);
    EXPECT_NEAR(shown_plan["legs"][0]["speed_kmh"].get<double>(), 14.2 / (18600.0 / 3600.0), 1e-12);
    EXPECT_NEAR(
        shown_plan["legs"][2]["speed_kmh"].get<double>(), 3.3 / 0.9, 1e-12); // three lengths
    EXPECT_FALSE(shown_plan["legs"][0].contains("craft"));
    EXPECT_EQ(shown_plan["legs"][2]["loads"][1]["carries"][1]["pieces"][0]["what"], "blue boat");
    EXPECT_EQ(shown_plan["water"][0]["fill_l"]["Björn"], 2.8);
    EXPECT_EQ(shown_plan["ledger"][0]["member"], "Ada");
    EXPECT_EQ(shown_plan["ledger"][0]["mass_mg"], 4700000);
    EXPECT_EQ(shown_plan["can_be_carried_out"], true);
}

TEST(PlanJson, KeepsLeftAndRightApart) {
    const json boat = shown(test::hand_built_plan())["legs"][1]["craft"][0];
    EXPECT_NEAR(boat["left_kg"].get<double>(), 3.71, 1e-9);  // bedding 1.4 and food 2.31
    EXPECT_NEAR(boat["right_kg"].get<double>(), 2.62, 1e-9); // clothes 2.1 and stove 0.52
    EXPECT_NEAR(boat["at_hand_kg"].get<double>(), 1.35, 1e-9);
    EXPECT_EQ(boat["left"][1]["what"], "food");
    EXPECT_EQ(boat["right"][1]["what"], "stove and pot");
    EXPECT_EQ(boat["at_hand"][0]["what"], "throw bag");
}

TEST(PlanJson, HasARowForEachThing) {
    const json plan = shown(test::hand_built_plan());
    ASSERT_EQ(plan["items"].size(), 18U); // 16 things, 2 boats
    const json& tent = plan["items"][0];
    EXPECT_EQ(tent["item"], "tent");
    EXPECT_EQ(tent["part"], "kit");
    EXPECT_TRUE(tent["owner"].is_null());
    EXPECT_EQ(tent["bearer"], "Björn");
    EXPECT_EQ(tent["at_start"], "pack");
    EXPECT_EQ(tent["bag"], "left");
    EXPECT_EQ(tent["craft"], "blue boat");
    EXPECT_TRUE(tent["why"].is_null());
    const json& boots = plan["items"][6];
    EXPECT_EQ(boots["item"], "boots");
    EXPECT_EQ(boots["owner"], "Ada");
    EXPECT_EQ(boots["at_start"], "worn");
    EXPECT_EQ(boots["ashore"], "worn");
    EXPECT_EQ(boots["afloat"], "packed");
    const json& straps = plan["items"][14];
    EXPECT_EQ(straps["comes"], false);
    EXPECT_TRUE(straps["bearer"].is_null());
    EXPECT_TRUE(straps["at_start"].is_null());
    EXPECT_EQ(plan["stays_home"].size(), 1U);
    EXPECT_EQ(plan["stays_home"][0]["item"], "thigh straps");
    EXPECT_EQ(plan["stays_home"][0]["owner"], "Ada");
    EXPECT_EQ(plan["comes"].size(), 1U);
    EXPECT_EQ(plan["comes"][0]["leg"], 2);
    EXPECT_EQ(plan["items"][16]["part"], "craft");
    EXPECT_EQ(plan["items"][16]["afloat"], "used");
    EXPECT_EQ(plan["start_loads"][1]["pack_kg"], 18.67);
    EXPECT_EQ(plan["start_loads"][1]["worn_kg"], 1.1);
    EXPECT_EQ(plan["heaviest_packs"][1]["pack_kg"], 20.23);
    EXPECT_EQ(plan["heaviest_packs"][1]["plan_leg"], 0);
}

TEST(PlanJson, WhatIsNotKnownIsNull) {
    Plan plan = test::hand_built_plan();
    plan.legs[1].speed_mps.reset();
    plan.legs[0].heights_known = false;
    plan.days[0].heights_known = false;
    plan.days[1].members[0].set_off_kg.reset();
    plan.legs[1].craft[0].payload_kg = 0.0;
    plan.legs[1].craft[0].draft_change_m.reset();
    plan.exits[0].back_s.reset();
    plan.exits[0].back.clear();
    plan.totals.ascent_m = std::numeric_limits<double>::quiet_NaN();
    const std::string text = plan_json(plan, "1");
    EXPECT_EQ(text.find("nan"), text.npos);
    const json shown_plan = json::parse(text);
    EXPECT_TRUE(shown_plan["legs"][1]["speed_kmh"].is_null());
    EXPECT_TRUE(shown_plan["legs"][0]["ascent_m"].is_null());
    EXPECT_TRUE(shown_plan["legs"][0]["descent_m"].is_null());
    EXPECT_EQ(shown_plan["legs"][2]["ascent_m"], 12.0);
    EXPECT_TRUE(shown_plan["days"][0]["ascent_m"].is_null());
    EXPECT_EQ(shown_plan["days"][1]["ascent_m"], 12.0);
    EXPECT_TRUE(shown_plan["days"][1]["members"][0]["set_off_kg"].is_null());
    EXPECT_TRUE(shown_plan["legs"][1]["craft"][0]["payload_kg"].is_null());
    EXPECT_TRUE(shown_plan["legs"][1]["craft"][0]["draft_change_m"].is_null());
    EXPECT_TRUE(shown_plan["legs"][1]["loads"][0]["limit_kg"].is_null());
    EXPECT_TRUE(shown_plan["exits"][0]["back_s"].is_null());
    EXPECT_TRUE(shown_plan["exits"][0]["back"].is_null());
    EXPECT_TRUE(shown_plan["totals"]["ascent_m"].is_null());
}

TEST(PlanJson, NamesThatAreNoTextStillMakeValidJson) {
    Plan plan = test::hand_built_plan();
    plan.trip.name = "half a letter \xc3";
    EXPECT_EQ(shown(plan)["trip"], "half a letter \uFFFD");
    EXPECT_FALSE(json::parse(pack_json(plan, "1")).empty());
}

TEST(PlanJson, OfAnEmptyPlanIsValidToo) {
    EXPECT_TRUE(shown(Plan{})["legs"].empty());
}

TEST(PackJson, IsPartOfThePlan) {
    const Plan plan = test::hand_built_plan();
    const json whole = shown(plan);
    const json pack = json::parse(pack_json(plan, "1.2.3"));
    for (const auto& [key, value] : pack.items())
        EXPECT_EQ(value, whole[key]) << key;
    for (const char* key : {"legs",
                            "stages",
                            "carrying",
                            "sharing",
                            "heaviest_packs",
                            "items",
                            "start_loads",
                            "stays_home",
                            "comes",
                            "cautions"})
        EXPECT_TRUE(pack.contains(key)) << key;
}

} // namespace
} // namespace tumpline::cli
