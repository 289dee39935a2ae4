#include "cli/words/leave_words.h"

#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

using namespace std::chrono_literals;

constexpr std::chrono::sys_days leaving{std::chrono::year{2027} / 6 / 18};

class LeaveWords : public testing::Test {
  protected:
    /// Planned at 08:00, at the latest at 10:20.
    planner::LeaveBy leave_{.place = "Tarn head",
                            .day = 1,
                            .along_m = 0.0,
                            .at = leaving + 10h + 20min,
                            .night = true,
                            .planned = leaving + 8h,
                            .spare_s = 8400.0,
                            .days_later = 0,
                            .bound = planner::LeaveBound::appointment,
                            .bound_at = "Road"};
    Figures shown_{planner::UnitSystem::metric, "UTC", Blank::plain};
};

TEST_F(LeaveWords, AnHourStandsAloneOnThePlansOwnDay) {
    EXPECT_EQ(leave_hour(leave_, shown_), "10:20");
    EXPECT_EQ(against_plan_words(leave_, shown_), "2 h 20 min after the plan, 08:00");
    EXPECT_EQ(bound_words(leave_, shown_), "") << "the appointment itself stands above";
}

TEST_F(LeaveWords, AnHourOnAnotherDayHasItsDate) {
    leave_.at += 24h;
    leave_.days_later = 1;
    EXPECT_EQ(leave_hour(leave_, shown_), "10:20 on Sat 19 June");
}

TEST_F(LeaveWords, AnHourIsNeverRoundedUp) {
    leave_.at += 59s;
    EXPECT_EQ(leave_hour(leave_, shown_), "10:20");
}

TEST_F(LeaveWords, OneThatThePlanIsTooLateForLiesBeforeIt) {
    leave_.at = leaving + 7h + 15min;
    leave_.spare_s = -2700.0;
    EXPECT_EQ(against_plan_words(leave_, shown_), "45 min before the plan, 08:00");
    leave_.spare_s = 20.0;
    EXPECT_EQ(against_plan_words(leave_, shown_), "as planned, 08:00");
}

TEST_F(LeaveWords, SayWhyNotLater) {
    leave_.bound = planner::LeaveBound::dusk;
    EXPECT_EQ(bound_words(leave_, shown_), "to be at Road before dusk");
    leave_.bound = planner::LeaveBound::wind;
    leave_.bound_at = "Across the tarn";
    leave_.wind_rises = leaving + 13h;
    EXPECT_EQ(bound_words(leave_, shown_),
              "to be off the water (Across the tarn) before the wind rises at 13:00");
}

TEST_F(LeaveWords, NameTheAppointmentWithItsMargin) {
    const planner::PlanAppointment meet{.what = "last bus",
                                        .at = "Road",
                                        .day = 1,
                                        .by = leaving + 17h + 40min,
                                        .arrive = leaving + 12h,
                                        .margin_s = 3600.0,
                                        .leave_by = {}};
    EXPECT_EQ(appointment_words(meet, shown_),
              "last bus at Road on Fri 18 June by 17:40, with a margin of 1 h 00 min");
}

} // namespace
} // namespace tumpline::cli
