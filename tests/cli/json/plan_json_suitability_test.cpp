/// Boats and paddles beside the water, in the JSON of a plan.

#include "cli/json/plan_json.h"
#include "planner/make_plan.h"
#include "tests/support/lake_and_rapids.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tumpline::cli {
namespace {

nlohmann::json json_of(const test::RandomTrip& made) {
    return nlohmann::json::parse(plan_json(planner::make_plan(made.trip, made.route), "test"));
}

TEST(PlanJsonSuitability, HasARowPerLegAndThing) {
    test::RandomTrip made = test::lake_and_rapids(
        {.length_m = 2.0, .pieces = 4, .packed_length_m = 0.6, .stroke = planner::Stroke::high});
    made.trip.craft[0].suits = {{planner::Water::lake, 0}, {planner::Water::river, 2}};
    made.trip.party[0].pack_length_m = 0.5;
    const nlohmann::json json = json_of(made).at("suitability");
    ASSERT_EQ(json.at("legs").size(), 4U);
    const nlohmann::json& boat = json.at("legs").at(2);
    EXPECT_EQ(boat.at("leg"), 3);
    EXPECT_EQ(boat.at("water"), "river");
    EXPECT_EQ(boat.at("class"), "III");
    EXPECT_EQ(boat.at("part"), "craft");
    EXPECT_EQ(boat.at("item"), "boat");
    EXPECT_EQ(boat.at("suits"), "no");
    EXPECT_EQ(boat.at("remarks").at(0).at("reason"), "class_over");
    EXPECT_EQ(json.at("legs").at(1).at("class"), nullptr);
    EXPECT_EQ(json.at("legs").at(1).at("suits"), "with_care");
    const nlohmann::json& paddle = json.at("paddles").at(0);
    EXPECT_EQ(paddle.at("length_m"), 2.0);
    EXPECT_EQ(paddle.at("pieces"), 4);
    EXPECT_EQ(paddle.at("packed_length_m"), 0.6);
    EXPECT_EQ(paddle.at("stroke"), "high");
    EXPECT_EQ(paddle.at("pack_length_m"), 0.5);
    EXPECT_EQ(paddle.at("packed"), "sticks_out");
    EXPECT_EQ(paddle.at("by"), "lengths");
    EXPECT_NEAR(paddle.at("sticks_out_m").get<double>(), 0.1, 1e-9);
}

TEST(PlanJsonSuitability, IsEmptyWhereNothingIsSaid) {
    test::RandomTrip made = test::lake_and_rapids();
    made.trip.kit[0].paddle.reset();
    const nlohmann::json json = json_of(made);
    EXPECT_TRUE(json.at("suitability").at("legs").empty());
    EXPECT_TRUE(json.at("suitability").at("paddles").empty());
    EXPECT_EQ(json.at("legs").at(1).at("craft").at(0).at("ends"), nullptr);
}

TEST(PlanJsonSuitability, BowAndSternHaveTheirMasses) {
    test::RandomTrip made = test::lake_and_rapids();
    planner::KitItem barrel;
    barrel.name = "barrel";
    barrel.mass_kg = 6.5;
    barrel.lies = planner::BoatEnd::bow;
    made.trip.kit.push_back(barrel);
    const nlohmann::json ends = json_of(made).at("legs").at(1).at("craft").at(0).at("ends");
    EXPECT_NEAR(ends.at("bow_kg").get<double>(), 6.5, 1e-9);
    EXPECT_EQ(ends.at("stern_kg"), 0.0);
    EXPECT_EQ(ends.at("bow").at(0).at("what"), "barrel");
    EXPECT_TRUE(ends.at("stern").empty());
}

} // namespace
} // namespace tumpline::cli
