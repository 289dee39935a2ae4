#include "cli/json/craft_json.h"

#include "tests/support/plain_trip.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

namespace tumpline::cli {
namespace {

nlohmann::json printed() {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0), test::river(3000.0, 0.001)});
    plain.route.legs[1].spec.river_class = 2;
    planner::CraftChoice good;
    good.name = "good";
    good.mass_kg = 2.0;
    good.river_class = 3;
    good.payload_kg = 150.0;
    good.wind_ceiling_mps = 7.0;
    planner::CraftChoice broad = good;
    broad.name = "broad";
    broad.seats = 2;
    plain.trip.craft_choices = {broad, good};
    return nlohmann::json::parse(
        craft_json(planner::compare_craft(plain.trip, plain.route, {}), "1"));
}

TEST(CraftJson, HasTheBestFirstAndNullWhereNothingIsKnown) {
    const nlohmann::json json = printed();
    EXPECT_EQ(json.at("decides"), "known");
    EXPECT_EQ(json.at("any"), true);
    const nlohmann::json& best = json.at("options").at(0);
    EXPECT_EQ(best.at("name"), "good");
    EXPECT_EQ(best.at("class_margin").at("left"), 1.0); // III - II
    EXPECT_EQ(best.at("class_margin").at("plan_leg"), 1);
    EXPECT_EQ(best.at("wind").at("ceiling_mps"), 7.0);
    EXPECT_EQ(best.at("wind").at("assumed"), false);
    EXPECT_TRUE(best.at("price").is_null());
    const nlohmann::json& own = json.at("options").at(1);
    EXPECT_EQ(own.at("boats"), "own");
    EXPECT_EQ(own.at("class_margin").at("known"), false);
    EXPECT_EQ(own.at("class_margin").at("not_given").at(0), "boat");
    const nlohmann::json& last = json.at("options").at(2);
    EXPECT_EQ(last.at("verdict"), "cannot");
    EXPECT_TRUE(last.at("time_s").is_null());
    EXPECT_TRUE(last.at("payload_margin").is_null());
}

TEST(CraftJson, EveryKeyStandsInThePage) {
    const std::string page = test::text_of(test::root / "docs" / "craft.md");
    const auto look = [&](const nlohmann::json& value, const auto& self) -> void {
        if (value.is_object()) {
            for (const auto& [key, inner] : value.items()) {
                EXPECT_NE(page.find("`" + key + "`"), page.npos) << key;
                self(inner, self);
            }
        } else if (value.is_array()) {
            for (const auto& inner : value)
                self(inner, self);
        }
    };
    look(printed(), look);
}

} // namespace
} // namespace tumpline::cli
