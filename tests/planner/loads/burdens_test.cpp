#include "planner/loads/burdens.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(Burdens, OnAWalkAreThePackAndWhatIsWorn) {
    Stretches stretches;
    stretches.stretches.resize(1);
    stretches.stretches[0].travel = Travel::walk;
    Loads loads;
    loads.stretches.resize(1);
    loads.stretches[0].start_kg = {14.0, 9.0};
    loads.stretches[0].end_kg = {13.5, 8.75};
    loads.stretches[0].worn_kg = {2.0, 1.25};
    loads.portages.resize(1);
    const Burdens burdens = burdens_of(stretches, loads);
    ASSERT_EQ(burdens.size(), 1U);
    ASSERT_EQ(burdens[0].size(), 2U);
    EXPECT_DOUBLE_EQ(burdens[0][0].start_kg, 16.0);
    EXPECT_DOUBLE_EQ(burdens[0][0].end_kg, 15.5);
    EXPECT_DOUBLE_EQ(burdens[0][1].start_kg, 10.25);
    EXPECT_DOUBLE_EQ(burdens[0][1].end_kg, 10.0);
    EXPECT_DOUBLE_EQ(burdens[0][1].worn_kg, 1.25);
    EXPECT_TRUE(burdens[0][0].portaged.empty());
}

TEST(Burdens, OnAPortageAreTheLoadsOneTakesAndTheHalvesOneRelays) {
    Stretches stretches;
    stretches.stretches.resize(1);
    stretches.stretches[0].travel = Travel::portage;
    PortagePlan portage;
    portage.relay.loads = {{.pieces = {0}, .mass_mg = 10'000'000, .bearer = 0, .relay = 0},
                           {.pieces = {1}, .mass_mg = 8'000'000, .bearer = 1, .relay = 0},
                           {.pieces = {}, .mass_mg = 0, .bearer = 1, .relay = 1}};
    portage.member_s = {600.0, 900.0};
    portage.moving_s = 900.0;
    Loads loads;
    loads.stretches.resize(1);
    loads.stretches[0].start_kg = {10.0, 8.0};
    loads.stretches[0].end_kg = {10.0, 8.0};
    loads.stretches[0].worn_kg = {1.5, 2.0};
    loads.portages = {portage};
    const Burdens burdens = burdens_of(stretches, loads);
    // The first takes 10 kg all the way and the 8 kg for half of it, each over 1.5 kg worn.
    ASSERT_EQ(burdens[0][0].portaged.size(), 2U);
    EXPECT_DOUBLE_EQ(burdens[0][0].portaged[0].mass_kg, 11.5);
    EXPECT_DOUBLE_EQ(burdens[0][0].portaged[0].share, 1.0);
    EXPECT_DOUBLE_EQ(burdens[0][0].portaged[1].mass_kg, 9.5);
    EXPECT_DOUBLE_EQ(burdens[0][0].portaged[1].share, 0.5);
    EXPECT_DOUBLE_EQ(burdens[0][0].waiting_s, 300.0);
    // The second takes the other half; the empty load is nobody's.
    ASSERT_EQ(burdens[0][1].portaged.size(), 1U);
    EXPECT_DOUBLE_EQ(burdens[0][1].portaged[0].mass_kg, 10.0);
    EXPECT_DOUBLE_EQ(burdens[0][1].portaged[0].share, 0.5);
    EXPECT_DOUBLE_EQ(burdens[0][1].waiting_s, 0.0);
}

} // namespace
} // namespace tumpline::planner
