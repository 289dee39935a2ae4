/// Every column of days.csv by its heading, over a day in which no two figures are the same.

#include "cli/export/export_csv.h"
#include "tests/support/csv_records.h"
#include "tests/support/hand_built_parts.h"
#include "tests/support/hand_built_plan.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using test::clock_minutes;
using test::hand_built_time;

planner::Plan with_a_day_of_its_own() {
    planner::Plan plan = test::hand_built_plan();
    planner::PlanDay& day = plan.days[1];
    day.rest_day = false;
    day.from_m = 100.5;
    day.to_m = 1350.5;
    day.camp = {.lat_deg = 61.5, .lon_deg = 13.25};
    day.camp_located = true;
    day.dry_camp = true;
    day.walk_m = 11.5;
    day.portage_m = 12.5;
    day.paddle_m = 13.5;
    day.ride_m = 13.75;
    day.on_foot_m = 14.5;
    day.ascent_m = 15.5;
    day.descent_m = 16.5;
    day.moving_s = 17.5;
    day.changeover_s = 18.5;
    day.rest_s = 19.5;
    day.set_off = hand_built_time(2, clock_minutes(7, 12));
    day.arrive = hand_built_time(2, clock_minutes(15, 13));
    day.arrive_early = hand_built_time(2, clock_minutes(14, 14));
    day.arrive_late = hand_built_time(2, clock_minutes(16, 15));
    day.light.sun.rise = hand_built_time(2, clock_minutes(5, 16));
    day.light.sun.set = hand_built_time(2, clock_minutes(20, 17));
    day.light.twilight.set = hand_built_time(2, clock_minutes(21, 19));
    day.food_kg = 21.5;
    day.fuel_kg = 22.5;
    day.water_l = 23.5;
    planner::MemberDay& second = day.members[1];
    second.energy_j = 24.0 * 4184.0;
    second.food_kg = 25.5;
    second.water_l = 26.5;
    second.pack_start_kg = 27.5;
    second.pack_end_kg = 28.5;
    second.heaviest_kg = 30.5;
    return plan;
}

TEST(DaysTable, HasEachFigureUnderItsHeading) {
    std::string table;
    for (const CsvTable& one : export_csv(with_a_day_of_its_own()))
        if (one.name == "days.csv")
            table = one.text;
    const test::Record row = test::records(table).at(1);
    for (const auto& [heading, figure] :
         std::map<std::string, std::string>{{"day", "2"},
                                            {"date", "2027-06-19"},
                                            {"rest_day", "no"},
                                            {"from", "Birch spit"},
                                            {"to", "Gravel bar"},
                                            {"from_m", "100.5"},
                                            {"to_m", "1350.5"},
                                            {"distance_m", "1250"},
                                            {"walk_m", "11.5"},
                                            {"portage_m", "12.5"},
                                            {"paddle_m", "13.5"},
                                            {"ride_m", "13.75"},
                                            {"on_foot_m", "14.5"},
                                            {"ascent_m", "15.5"},
                                            {"descent_m", "16.5"},
                                            {"moving_s", "17.5"},
                                            {"changeover_s", "18.5"},
                                            {"rest_s", "19.5"},
                                            {"set_off", "2027-06-19T07:12:00+02:00"},
                                            {"arrive", "2027-06-19T15:13:00+02:00"},
                                            {"arrive_early", "2027-06-19T14:14:00+02:00"},
                                            {"arrive_late", "2027-06-19T16:15:00+02:00"},
                                            {"sunrise", "2027-06-19T05:16:00+02:00"},
                                            {"sunset", "2027-06-19T20:17:00+02:00"},
                                            {"dusk", "2027-06-19T21:19:00+02:00"},
                                            {"dry_camp", "yes"},
                                            {"to_lat_deg", "61.5"},
                                            {"to_lon_deg", "13.25"},
                                            {"food_kg", "21.5"},
                                            {"fuel_kg", "22.5"},
                                            {"water_l", "23.5"},
                                            {"Björn energy_kcal", "24"},
                                            {"Björn food_kg", "25.5"},
                                            {"Björn water_l", "26.5"},
                                            {"Björn pack_start_kg", "27.5"},
                                            {"Björn pack_end_kg", "28.5"},
                                            {"Björn heaviest_kg", "30.5"}})
        EXPECT_EQ(row.at(heading), figure) << heading;
}

} // namespace
} // namespace tumpline::cli
