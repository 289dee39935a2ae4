#include "cli/words/calendar_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>

namespace tumpline::cli {
namespace {

using namespace std::chrono_literals;
using std::chrono::sys_days;
using testing::ElementsAre;
using testing::HasSubstr;

Figures in_utc() {
    return {planner::UnitSystem::metric, "UTC", Blank::plain};
}

constexpr sys_days friday{2027y / 6 / 18};

planner::PlanConnection sunday_bus() {
    planner::PlanConnection bus;
    bus.what = "bus";
    bus.place = "Road";
    bus.there = friday + 12h;
    bus.taken = friday + 48h + 9h + 10min;
    bus.used = true;
    bus.nights = 2;
    bus.next = friday + 72h + 9h + 10min;
    bus.next_days = 1;
    bus.next_food_kg = 1.234;
    bus.margin_s = 1800.0;
    return bus;
}

TEST(CalendarWords, OfADepartureSayWhatAndWhatIf) {
    planner::Plan plan;
    plan.connections = {sunday_bus()};
    const std::vector<ConnectionWords> words = connection_words(plan, in_utc());
    ASSERT_EQ(words.size(), 1U);
    EXPECT_EQ(words[0].head,
              "bus at Road: Sun 20 June 09:10; there Fri 18 June 12:00, 2 nights of waiting.");
    EXPECT_EQ(words[0].if_missed,
              "If it is missed: the next one is Mon 21 June 09:10: a night more, and 1.2 kg of "
              "food.");
    EXPECT_TRUE(words[0].lines.empty());
    EXPECT_EQ(connection_home(plan), &plan.connections[0]);
    plan.connections[0].before = friday + 12h + 20min;
    EXPECT_THAT(connection_words(plan, in_utc())[0].lines[0],
                HasSubstr("less than the margin of 30 min after arriving"));
    plan.connections[0].before = friday + 11h;
    EXPECT_THAT(connection_words(plan, in_utc())[0].lines[0],
                HasSubstr("1 h 00 min before the party is there"));
    plan.connections[0].next.reset();
    EXPECT_THAT(connection_words(plan, in_utc())[0].if_missed, HasSubstr("no later one"));
    plan.connections[0].taken.reset();
    EXPECT_EQ(connection_home(plan), nullptr);
    EXPECT_THAT(connection_words(plan, in_utc())[0].head, HasSubstr("none leaves"));
}

TEST(CalendarWords, OfAnArrivalSayWhetherTheSetOffMoved) {
    planner::Plan plan;
    planner::PlanConnection taxi = sunday_bus();
    taxi.to_start = true;
    taxi.taken = friday + 8h;
    taxi.there = friday + 8h + 30min;
    taxi.set_off_moved = true;
    plan.connections = {taxi};
    EXPECT_EQ(
        connection_words(plan, in_utc())[0].head,
        "bus to Road: arrives Fri 18 June 08:00; day 1 sets off at 08:30, moved to after it.");
    EXPECT_EQ(connection_home(plan), nullptr);
}

TEST(CalendarWords, OfADayWithoutTravel) {
    planner::PlanDay day;
    day.rest_day = true;
    EXPECT_EQ(still_words(day), "rest day");
    EXPECT_EQ(still_cell(day), "(rest day)");
    day.waiting_for = "bus";
    EXPECT_EQ(still_words(day), "waiting for: bus");
    EXPECT_EQ(still_cell(day), "(waiting)");
}

TEST(CalendarWords, OfPermitsSayWhatALostDayBreaks) {
    planner::Plan plan;
    planner::PlanPermit camp;
    camp.where = "Camp";
    camp.nights = true;
    camp.people = 2;
    camp.most_people = 6;
    camp.note = "by post";
    camp.dates = planner::DateSpan{2027y / 6 / 1, 2027y / 6 / 18};
    camp.bookings = {{.day = 1,
                      .date = 2027y / 6 / 18,
                      .open = true,
                      .a_day_later = 2027y / 6 / 19,
                      .later_open = false}};
    planner::PlanPermit spare = camp;
    spare.where = "Spare";
    spare.bookings.clear();
    spare.note.clear();
    plan.permits = {camp, spare};
    const PermitWords words = permit_words(plan, in_utc());
    ASSERT_EQ(words.rows.size(), 1U);
    EXPECT_EQ(words.rows[0].when, "night of Fri 18 June");
    EXPECT_EQ(words.rows[0].people, "2 people of at most 6");
    EXPECT_EQ(words.rows[0].late, "Sat 19 June: outside its dates");
    EXPECT_THAT(words.remarks,
                ElementsAre("Camp: by post",
                            "Spare: no night of the plan is there; nothing to book.",
                            HasSubstr("Camp on Fri 18 June")));
}

} // namespace
} // namespace tumpline::cli
