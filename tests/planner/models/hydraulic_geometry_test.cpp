#include "planner/models/hydraulic_geometry.h"

#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::PublishedValue;

double exponent_of(const PublishedValue& row) {
    const AtAStation& rivers = at_a_station[row.input("steep") > 0.5 ? 1 : 0];
    const double which = row.input("which");
    return which < 0.5 ? rivers.width : which < 1.5 ? rivers.depth : rivers.velocity;
}

const test::Evaluators flow_rows{
    .numbers = {{"exponent", [](const auto& row) { return exponent_of(row); }},
                {"velocity_ratio",
                 [](const auto& row) {
                     return at_a_station_ratio(row.input("flow_ratio"), row.input("exponent"));
                 }},
                {"depth_ratio",
                 [](const auto& row) {
                     return at_a_station_ratio(row.input("flow_ratio"), at_a_station[0].depth);
                 }}},
    .texts = {}};

class FlowRows : public testing::TestWithParam<PublishedValue> {};

TEST_P(FlowRows, Agree) {
    test::check_row(GetParam(), flow_rows);
}

INSTANTIATE_TEST_SUITE_P(Published,
                         FlowRows,
                         testing::ValuesIn(test::published("flow")),
                         test::row_name);

TEST(HydraulicGeometry, SharesTheDischargeBetweenWidthDepthAndSpeed) {
    for (const AtAStation& rivers : at_a_station)
        EXPECT_NEAR(rivers.width + rivers.depth + rivers.velocity, 1.0, 1e-12) << rivers.name;
}

TEST(HydraulicGeometry, CoversAFactorOfFiveEitherWay) {
    EXPECT_TRUE(at_a_station_covers(0.2));
    EXPECT_TRUE(at_a_station_covers(5.0));
    EXPECT_FALSE(at_a_station_covers(0.19));
    EXPECT_FALSE(at_a_station_covers(5.1));
}

} // namespace
} // namespace tumpline::planner
