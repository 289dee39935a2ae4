#include "planner/cautions/volume_cautions.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(VolumeCautions, SayWhatStaysOutAndFromWhichNightOnFoodGoesIn) {
    Plan plan;
    plan.legs.resize(3);
    plan.legs[2].leg = 2;
    plan.volumes.packs = {{.member = "Ada",
                           .holds_l = 50.0,
                           .needs_l = 58.0,
                           .day = 2,
                           .plan_leg = 3,
                           .unknown = {},
                           .left_out = {"tent"}},
                          {.member = "Bo",
                           .holds_l = 50.0,
                           .needs_l = 50.0,
                           .day = 1,
                           .plan_leg = 1,
                           .unknown = {},
                           .left_out = {}}};
    plan.volumes.container = {.name = "barrel",
                              .holds_l = 11.0,
                              .nights = {{.day = 0, .place = "", .needs_l = 14.0, .fits = false},
                                         {.day = 1, .place = "", .needs_l = 12.0, .fits = false},
                                         {.day = 2, .place = "", .needs_l = 10.0, .fits = true}},
                              .fits_from_day = 2,
                              .unknown = {}};
    const std::vector<Caution> cautions = volume_cautions(plan);
    ASSERT_EQ(cautions.size(), 2U);
    EXPECT_EQ(cautions[0].code, "pack-too-small");
    EXPECT_EQ(cautions[0].leg, LegNumber{2});
    EXPECT_EQ(cautions[0].day, 2);
    EXPECT_NE(cautions[0].text.find("tent"), std::string::npos);
    EXPECT_EQ(cautions[1].code, "container-too-small");
    EXPECT_FALSE(cautions[1].leg);
    EXPECT_NE(cautions[1].text.find("night after day 2"), std::string::npos);
}

} // namespace
} // namespace tumpline::planner
