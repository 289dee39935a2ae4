#include "planner/models/drinking.h"

#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>

namespace tumpline::planner {

namespace {

using test::PublishedValue;

constexpr double quart_l = 0.946352946;
constexpr std::array all_efforts{Effort::easy, Effort::moderate, Effort::hard};

Effort effort_named(const std::string& name) {
    static const std::map<std::string, Effort> efforts{
        {"easy", Effort::easy}, {"moderate", Effort::moderate}, {"hard", Effort::hard}};
    return efforts.at(name);
}

double heat_table(const PublishedValue& row) {
    return heat_table_qt_per_h(static_cast<int>(row.input("heat_category")),
                               effort_named(row.text("work")));
}

DailyWater printed_water(std::string_view who) {
    const auto row = std::ranges::find(daily_water(), who, &DailyWater::who);
    return row == daily_water().end() ? DailyWater{} : *row;
}

double daily(const PublishedValue& row) {
    const DailyWater women = printed_water("women, temperate, all water including that in food");
    const DailyWater men = printed_water("men, temperate, all water including that in food");
    const std::map<std::string, double> amounts{
        {"efsa_women", women.low_l},
        {"efsa_women_p95", women.high_l},
        {"efsa_men", men.low_l},
        {"efsa_men_p95", men.high_l},
        {"efsa_men_food", 1000.0 * printed_water("men over 14, water in food").low_l},
        {"efsa_men_bev", 1000.0 * printed_water("men over 14, beverages alone").low_l}};
    return amounts.at(row.id);
}

double gallons(const PublishedValue& row) {
    const DailyWater water =
        printed_water(row.text("climate") == "cool" ? "field water supply, cool climate"
                                                    : "field water supply, hot and dry climate");
    return (row.id.ends_with("low") ? water.low_l : water.high_l) / 3.785411784;
}

const test::Evaluators drinking_evaluators{
    .numbers = {{"heat_table", heat_table},
                {"heat_table_litres", [](const auto& row) { return quart_l * heat_table(row); }},
                {"hourly_limit", [](const auto&) { return most_drunk_per_hour_l / quart_l; }},
                {"daily_limit", [](const auto&) { return most_drunk_per_day_l / quart_l; }},
                {"daily_water", daily},
                {"daily_water_gallons", gallons},
                {"drinking",
                 [](const auto& row) {
                     return 3600.0 * drinking_lps(effort_named(row.text("effort")),
                                                  row.input("air_temperature_C"));
                 }},
                {"drinking_day",
                 [](const auto& row) {
                     return drinking_day_l({.moving_s = 3600.0 * row.input("hours"),
                                            .rate_lps = row.input("rate_Lph") / 3600.0,
                                            .camp_l = row.input("camp_L")});
                 }}},
    .texts = {}};

class DrinkingRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(DrinkingRows, Agree) {
    const PublishedValue& row = GetParam();
    if (row.formula != "heat_category") {
        test::check_row(row, drinking_evaluators);
        return;
    }
    // the lower limits of the categories, in the order of the table
    const std::map<double, int> from{{78.0, 1}, {82.0, 2}, {85.0, 3}, {88.0, 4}, {90.0, 5}};
    const int category = from.at(row.input("wbgt_F"));
    EXPECT_EQ(heat_category(row.expected + 1e-5), category);
    EXPECT_EQ(heat_category(row.expected - 0.01).value_or(0), category - 1);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         DrinkingRows,
                         testing::ValuesIn(test::published("drinking")),
                         test::row_name);

TEST(Drinking, WarmerAndHarderNeverAskLess) {
    for (const Effort effort : all_efforts)
        for (int air_c = -60; air_c < 60; ++air_c) {
            EXPECT_LE(drinking_lps(effort, air_c), drinking_lps(effort, air_c + 1));
            EXPECT_GT(drinking_lps(effort, air_c), 0.0);
            EXPECT_LE(3600.0 * drinking_lps(effort, air_c), most_drunk_per_hour_l);
        }
    for (int air_c = -60; air_c <= 60; ++air_c) {
        EXPECT_LE(drinking_lps(Effort::easy, air_c), drinking_lps(Effort::moderate, air_c));
        EXPECT_LE(drinking_lps(Effort::moderate, air_c), drinking_lps(Effort::hard, air_c));
    }
}

TEST(Drinking, TheRateKeepsWithinTheSpreadOfThePrintedTable) {
    // The table's own spread: a quarter of a quart for the person, as much again for sun or shade.
    // Its wet-bulb globe temperatures are taken as air temperatures, as the model does.
    constexpr std::array<double, 5> middle_c{26.6, 28.6, 30.3, 31.7, 33.0};
    for (int category = 1; category <= 5; ++category)
        for (const Effort effort : all_efforts) {
            const double air_c = middle_c[static_cast<std::size_t>(category - 1)];
            EXPECT_NEAR(3600.0 * drinking_lps(effort, air_c) / quart_l,
                        heat_table_qt_per_h(category, effort),
                        0.5)
                << "category " << category;
        }
}

TEST(Drinking, NoDayIsPlannedAboveTheDailyLimit) {
    EXPECT_EQ(drinking_day_l({.moving_s = 16.0 * 3600.0, .rate_lps = 1.2 / 3600.0, .camp_l = 3.0}),
              most_drunk_per_day_l);
    EXPECT_NEAR(most_drunk_per_day_l, 11.4, 0.05);
    EXPECT_NEAR(most_drunk_per_hour_l, 1.42, 0.005);
}

TEST(Drinking, AnOrdinaryDayLiesBetweenACoolAndAHotFieldSupply) {
    const double day_l =
        drinking_day_l({.moving_s = 7.0 * 3600.0,
                        .rate_lps = drinking_lps(Effort::moderate, 18.0),
                        .camp_l = camp_l({.stay_s = 15.0 * 3600.0, .air_c = 18.0})});
    EXPECT_GT(day_l, printed_water("field water supply, cool climate").high_l);
    EXPECT_LT(day_l, printed_water("field water supply, hot and dry climate").low_l);
}

TEST(Drinking, ACampAsksByItsHoursAndTheHeat) {
    const auto litres = [](double hours, double air_c) {
        return camp_l({.stay_s = 3600.0 * hours, .air_c = air_c});
    };
    EXPECT_NEAR(litres(10.0, 15.0), 1.2 + 10.0 * 1.75 / 24.0, 1e-9);       // 1.93
    EXPECT_NEAR(litres(19.0, 15.0), 1.2 + 19.0 * 1.75 / 24.0, 1e-9);       // 2.59
    EXPECT_NEAR(litres(19.0, 45.0), 1.2 + 2.5 * 19.0 * 1.75 / 24.0, 1e-9); // 4.66
    EXPECT_EQ(litres(10.0, -20.0), litres(10.0, 15.0));
}

TEST(Drinking, MildAirHasNoHeatCategory) {
    EXPECT_FALSE(heat_category(20.0));
    EXPECT_FALSE(heat_category(-40.0));
    EXPECT_EQ(heat_category(60.0), 5);
    EXPECT_EQ(heat_table_qt_per_h(9, Effort::easy), heat_table_qt_per_h(5, Effort::easy));
}

} // namespace

} // namespace tumpline::planner
