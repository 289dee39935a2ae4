#include "cli/drawing/load_band.h"

#include "cli/drawing/load_band_line.h"
#include "tests/support/hand_built_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::cli {

namespace {

using planner::Account;

planner::Entry drink(std::size_t member, double along_m, std::int64_t mass_mg) {
    planner::Entry entry;
    entry.plan_leg = 1;
    entry.member = member;
    entry.along_m = along_m;
    entry.mass_mg = mass_mg;
    entry.part = planner::Part::water;
    entry.from = Account::pack;
    entry.to = Account::drunk;
    return entry;
}

} // namespace

TEST(LoadBand, RunsFromTheFirstToTheLastLoadOfEachLeg) {
    const planner::Plan plan = test::hand_built_plan();
    const std::vector<BandLeg> band = load_band(plan);
    ASSERT_EQ(band.size(), plan.legs.size());
    for (std::size_t i = 0; i < band.size(); ++i) {
        const planner::PlanLeg& leg = plan.legs[i];
        EXPECT_DOUBLE_EQ(band[i].points.front().along_m, leg.from_m);
        EXPECT_DOUBLE_EQ(band[i].points.back().along_m, leg.to_m);
        EXPECT_DOUBLE_EQ(band[i].points.front().sum_kg(),
                         leg.loads[0].pack_start_kg + leg.loads[1].pack_start_kg);
        EXPECT_DOUBLE_EQ(band[i].points.back().sum_kg(),
                         leg.loads[0].pack_end_kg + leg.loads[1].pack_end_kg);
    }
}

TEST(LoadBand, StepsWhereTheLedgerBooks) {
    planner::Plan plan = test::hand_built_plan();
    planner::Entry filled = drink(1, 6300.0, 2'500'000);
    std::swap(filled.from, filled.to);
    filled.from = Account::outside;
    plan.ledger.entries.push_back(filled);
    plan.ledger.entries.push_back(drink(0, 3000.0, 500'000)); // booked later, lies earlier
    const std::vector<BandPoint> points = load_band(plan).front().points;
    ASSERT_EQ(points.size(), 6U);
    EXPECT_DOUBLE_EQ(points[1].along_m, 3000.0);
    EXPECT_NEAR(points[2].member_kg[0], points[1].member_kg[0] - 0.5, 1e-12);
    EXPECT_DOUBLE_EQ(points[4].along_m, 6300.0);
    EXPECT_NEAR(points[4].member_kg[1], points[3].member_kg[1] + 2.5, 1e-12);
}

TEST(LoadBand, LeavesEntriesThatFitNoLegOrMemberAside) {
    planner::Plan plan = test::hand_built_plan();
    planner::Entry stray = drink(7, 3000.0, 500'000);
    plan.ledger.entries.push_back(stray);
    stray.member = 0;
    stray.plan_leg = 99;
    plan.ledger.entries.push_back(stray);
    EXPECT_EQ(load_band(plan).front().points.size(), 2U);
}

TEST(LoadBandLine, KeepsEveryPointWithinTheTolerance) {
    std::vector<DrawnPoint> line;
    for (int i = 0; i <= 4000; ++i)
        line.push_back({i * 0.1, 40.0 * std::sin(i * 0.01) + 0.2 * std::sin(i * 1.7), double(i)});
    const std::vector<DrawnPoint> thin = simplified(line, resolved);
    EXPECT_LT(thin.size(), line.size() / 10);
    EXPECT_DOUBLE_EQ(thin.front().along_m, 0.0);
    EXPECT_DOUBLE_EQ(thin.back().along_m, 4000.0);
    // Each dropped point lies by the segment that took its place.
    std::size_t segment = 0;
    for (const DrawnPoint& point : line) {
        while (thin[segment + 1].along_m < point.along_m)
            ++segment;
        const DrawnPoint& a = thin[segment];
        const DrawnPoint& b = thin[segment + 1];
        const double length = std::hypot(b.x - a.x, b.y - a.y);
        const double off =
            std::abs((b.x - a.x) * (a.y - point.y) - (a.x - point.x) * (b.y - a.y)) / length;
        EXPECT_LE(off, resolved + 1e-9);
    }
}

TEST(LoadBandLine, TakesAMillionPointsWithoutRecursion) {
    std::vector<DrawnPoint> line;
    for (int i = 0; i < 1'000'000; ++i) // the worst case of the method: always split at the end
        line.push_back({double(i % 2), double(i % 2), double(i)});
    EXPECT_LE(simplified({line.begin(), line.begin() + 3000}, 0.1).size(), 3000U);
    EXPECT_EQ(simplified(line, 2.0).size(), 2U);
    EXPECT_TRUE(simplified({}, 1.0).empty());
}

TEST(LoadBandLine, WritesCoordinatesThatDoNotDrift) {
    std::vector<DrawnPoint> line;
    for (int i = 0; i <= 300; ++i)
        line.push_back({i * 0.33, 0.0, 0.0});
    double x = 0.0; // steps are relative; added up they must end where the line ends
    const std::string data = path_data(line);
    for (std::size_t at = 1; at < data.size();) {
        x += std::stod(data.substr(at));
        const std::size_t next = data.find('l', at);
        at = next == std::string::npos ? next : next + 1;
    }
    EXPECT_NEAR(x, 99.0, 0.051);
    EXPECT_EQ(coordinate(-0.04), "0");
    EXPECT_EQ(coordinate(-0.06), "-0.1");
    EXPECT_EQ(coordinate(12.0), "12");
}

TEST(LoadBandLine, StepsAreRound) {
    EXPECT_DOUBLE_EQ(round_step(0.7), 1.0);
    EXPECT_DOUBLE_EQ(round_step(1.0), 1.0);
    EXPECT_DOUBLE_EQ(round_step(13.0), 20.0);
    EXPECT_DOUBLE_EQ(round_step(290.0), 500.0);
    EXPECT_DOUBLE_EQ(round_step(0.0), 1.0);
}

} // namespace tumpline::cli
