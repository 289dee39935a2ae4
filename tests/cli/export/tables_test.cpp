#include "cli/export/export_csv.h"
#include "cli/export/export_geojson.h"
#include "cli/export/export_gpx.h"
#include "cli/export/export_maps.h"
#include "cli/export/plan_csv.h"
#include "tests/support/csv_records.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <map>
#include <sstream>
#include <string>
#include <vector>

/// Every column by its heading, over a plan in which no two figures of a record are the same.
namespace tumpline::cli {
namespace {

using planner::Plan;
using test::Record;
using test::records;
using testing::HasSubstr;

std::vector<Record> table_named(const Plan& plan, const std::string& name) {
    for (const CsvTable& table : export_csv(plan))
        if (table.name == name)
            return records(table.text);
    ADD_FAILURE() << "no " << name;
    return {};
}

TEST(LoadsTable, HasEachFigureUnderItsHeading) {
    Plan plan = test::hand_built_plan();
    planner::MemberLoad& load = plan.legs[0].loads[1];
    load.pack_start_kg = 20.1;
    load.pack_end_kg = 18.2;
    load.pack_max_kg = 21.3;
    load.worn_kg = 2.4;
    load.limit_kg = 24.5;
    load.energy_j = 4184.0 * 2830.0;
    load.laid_down_kg = 3.75;
    load.parts = {.kit_kg = 8.91,
                  .craft_kg = 3.32,
                  .food_kg = 5.23,
                  .fuel_kg = 0.54,
                  .water_kg = 2.85,
                  .waste_kg = 0.16};
    const Record row = table_named(plan, "loads.csv").at(1);
    const std::map<std::string, std::string> wanted = {{"leg", "1"},
                                                       {"part", ""},
                                                       {"day", "1"},
                                                       {"name", "Road end over the saddle"},
                                                       {"travel", "walk"},
                                                       {"member", "Björn"},
                                                       {"pack_start_kg", "20.1"},
                                                       {"pack_end_kg", "18.2"},
                                                       {"pack_max_kg", "21.3"},
                                                       {"worn_kg", "2.4"},
                                                       {"limit_kg", "24.5"},
                                                       {"kit_kg", "8.91"},
                                                       {"craft_kg", "3.32"},
                                                       {"food_kg", "5.23"},
                                                       {"fuel_kg", "0.54"},
                                                       {"water_kg", "2.85"},
                                                       {"waste_kg", "0.16"},
                                                       {"energy_kcal", "2830"},
                                                       {"carries_kg", ""},
                                                       {"laid_down_kg", "3.75"}};
    EXPECT_EQ(row, wanted);
    // The carry: two loads of Ada's.
    EXPECT_EQ(table_named(plan, "loads.csv").at(4).at("carries_kg"), "12.854; 3.93");
}

/// The second part of the river, on day 3, with figures of its own.
Plan with_own_figures() {
    Plan plan = test::hand_built_plan();
    planner::PlanLeg& leg = plan.legs[4];
    leg.ascent_m = 3.0;
    leg.lengths = 1.5;
    leg.on_foot_m = 11.0;
    leg.changeover_s = 17.0;
    leg.loads[0].pack_start_kg = 11.1;
    leg.loads[0].pack_end_kg = 10.2;
    leg.loads[0].pack_max_kg = 12.3;
    return plan;
}

TEST(LegsTable, HasEachFigureUnderItsHeading) {
    const Plan plan = with_own_figures();
    const Record row = records(plan_csv(plan)).at(4);
    for (const auto& [heading, figure] :
         std::map<std::string, std::string>{{"leg", "4"},
                                            {"part", "2"},
                                            {"day", "3"},
                                            {"date", "2027-06-20"},
                                            {"name", "Upper river"},
                                            {"travel", "paddle"},
                                            {"from_m", "32400"},
                                            {"to_m", "41900"},
                                            {"distance_m", "9500"},
                                            {"ascent_m", "3"},
                                            {"descent_m", "19"},
                                            {"moving_s", "4740"},
                                            {"moving_low_s", "4200"},
                                            {"moving_high_s", "5900"},
                                            {"changeover_s", "17"},
                                            {"rest_s", "780"},
                                            {"start", "2027-06-20T08:00:00+02:00"},
                                            {"end", "2027-06-20T09:32:00+02:00"},
                                            {"lengths", "1.5"},
                                            {"on_foot_m", "11"},
                                            {"Ada pack_start_kg", "11.1"},
                                            {"Ada pack_end_kg", "10.2"},
                                            {"Ada pack_max_kg", "12.3"}})
        EXPECT_EQ(row.at(heading), figure) << heading;
}

TEST(LegsTable, AndGeoJsonHaveTheSameFigures) {
    const Plan plan = with_own_figures();
    const auto json = nlohmann::json::parse(export_geojson(plan, test::hand_built_route(plan)));
    const auto& properties = json.at("features").at(4).at("properties");
    EXPECT_EQ(properties.at("moving_low_s"), 4200.0);
    EXPECT_EQ(properties.at("moving_high_s"), 5900.0);
    EXPECT_EQ(properties.at("ascent_m"), 3.0);
    EXPECT_EQ(properties.at("descent_m"), 19.0);
    EXPECT_EQ(properties.at("part"), 2);
    EXPECT_EQ(properties.at("start"), "2027-06-20T08:00:00+02:00");
    EXPECT_EQ(properties.at("Ada pack_end_kg"), 10.2);
    EXPECT_EQ(properties.at("Ada pack_max_kg"), 12.3);
}

TEST(Tables, LeaveAClimbThatIsNotKnownEmpty) {
    Plan plan = test::hand_built_plan();
    plan.legs[0].heights_known = false;
    plan.days[0].heights_known = false;
    EXPECT_EQ(records(plan_csv(plan)).at(0).at("ascent_m"), "");
    EXPECT_EQ(records(plan_csv(plan)).at(2).at("ascent_m"), "12");
    EXPECT_EQ(table_named(plan, "days.csv").at(0).at("descent_m"), "");
    EXPECT_EQ(table_named(plan, "days.csv").at(1).at("ascent_m"), "12");
    const planner::Route route = test::hand_built_route(plan);
    EXPECT_THAT(export_gpx(plan, route), HasSubstr("heights unknown"));
    const auto json = nlohmann::json::parse(export_geojson(plan, route));
    EXPECT_TRUE(json.at("features").at(0).at("properties").at("ascent_m").is_null());
}

TEST(GpxLeg, TellsTheClockFromItsStartToItsEnd) {
    const Plan plan = test::hand_built_plan();
    const std::string gpx = export_gpx(plan, test::hand_built_route(plan));
    EXPECT_THAT(gpx, HasSubstr("620 m up, 310 m down, 5 h 10 min moving, 08:00 to 14:02 by plan"));
    EXPECT_THAT(gpx, HasSubstr("08:00 to 09:32 by plan")); // the last of the river
}

/// Everything of the hand-built plan that is left at its first night.
TEST(Places, SayWhatIsLeftThereAndWhenItIsFetched) {
    Plan plan = test::hand_built_plan();
    const planner::Route route = test::hand_built_route(plan);
    const std::string before = export_gpx(plan, route);
    EXPECT_EQ(before.find("left on day"), std::string::npos);
    EXPECT_EQ(export_geojson(plan, route).find("\"left\""), std::string::npos);
    planner::LaidThings left;
    left.at = plan.days[0].to;
    left.day = 2;
    left.fetch_day = 3;
    left.mass_kg = 5.3;
    left.things = {{.part = planner::Part::food, .what = "food", .mass_kg = 2.0},
                   {.part = planner::Part::craft, .what = "red boat", .mass_kg = 3.3}};
    plan.left = {left};
    const std::string words = "left on day 2: 2.0 kg of food, red boat (5.3 kg); fetched on day 3";
    EXPECT_NE(export_gpx(plan, route).find(words + "</desc>"), std::string::npos);
    EXPECT_NE(export_geojson(plan, route).find("\"left\":[\"" + words + "\"]"), std::string::npos);
    EXPECT_NE(export_kml(plan, route).find(words), std::string::npos);
    plan.left[0].fetch_day.reset();
    EXPECT_NE(export_gpx(plan, route).find("red boat (5.3 kg); never fetched"), std::string::npos);
}

} // namespace
} // namespace tumpline::cli
