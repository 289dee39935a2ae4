#include "planner/models/heat.h"

#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

#include <array>
#include <cstddef>

namespace tumpline::planner {
namespace {

using test::PublishedValue;

Effort effort_of(const PublishedValue& row) {
    constexpr std::array efforts{Effort::easy, Effort::moderate, Effort::hard};
    return efforts.at(static_cast<std::size_t>(row.input("effort")));
}

const test::Evaluators heat_rows{
    .numbers = {{"wbgt-by-humidity",
                 [](const auto& row) {
                     return wbgt_c(
                         {.temperature_c = row.input("air_c"), .humidity = row.input("humidity")});
                 }},
                {"work-rest-used-to-heat",
                 [](const auto& row) {
                     return static_cast<double>(
                         work_minutes(static_cast<int>(row.input("category")), effort_of(row)));
                 }},
                {"work-rest-not-used-to-heat",
                 [](const auto& row) {
                     return static_cast<double>(
                         unused_work_minutes(row.input("wbgt_c"), effort_of(row)).value());
                 }},
                {"heat_litres",
                 [](const auto& row) {
                     return unused_litres(row.input("wbgt_c"), effort_of(row)).value();
                 }}},
    .texts = {}};

class HeatRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(HeatRows, Agree) {
    test::check_row(GetParam(), heat_rows);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         HeatRows,
                         testing::ValuesIn(test::published("heat")),
                         test::row_name);

TEST(Heat, BandsAreReadToTheTenthThatIsPrinted) {
    EXPECT_EQ(unused_work_minutes(25.44, Effort::moderate), 60); // reads 25.4
    EXPECT_EQ(unused_work_minutes(25.46, Effort::moderate), 40); // reads 25.5
    EXPECT_FALSE(unused_work_minutes(19.9, Effort::hard));
    EXPECT_FALSE(unused_litres(19.9, Effort::hard));
}

TEST(Heat, CategoriesBeyondTheTableAreHeldToIt) {
    EXPECT_EQ(work_minutes(0, Effort::hard), 40);
    EXPECT_EQ(work_minutes(9, Effort::hard), 10);
}

} // namespace
} // namespace tumpline::planner
