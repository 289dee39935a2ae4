#include "planner/trip/timetable.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <string>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;
using testing::ElementsAre;

TimetableHour hour_of(const std::string& text) {
    const TimetableReading read = read_timetable_hour(text);
    EXPECT_TRUE(read.hour) << text;
    return read.hour.value_or(TimetableHour{});
}

TEST(Timetable, ReadsWeekdaysDatesAndEveryDay) {
    EXPECT_THAT(hour_of("Mo 09:10").weekdays, ElementsAre(1));
    EXPECT_EQ(hour_of("Mo 09:10").at, 9h + 10min);
    EXPECT_THAT(hour_of("We,Fr 17:40").weekdays, ElementsAre(3, 5));
    EXPECT_THAT(hour_of("Mo-We,Su 07:10").weekdays, ElementsAre(1, 2, 3, 7));
    EXPECT_THAT(hour_of("Sa-Mo 07:10").weekdays, ElementsAre(6, 7, 1)); // over the week's end
    EXPECT_THAT(hour_of("Mo,Mo 07:10").weekdays, ElementsAre(1));
    EXPECT_EQ(hour_of("2027-06-18 07:35").date, Date(2027y / 6 / 18));
    EXPECT_TRUE(hour_of("17:40").weekdays.empty());
    EXPECT_FALSE(hour_of("17:40").date);
    EXPECT_EQ(hour_of("daily 17:40"), hour_of("17:40"));
}

TEST(Timetable, SaysWhatIsWrong) {
    EXPECT_THAT(read_timetable_hour("Mon 09:10").advice, testing::StartsWith("write \"Mo\""));
    EXPECT_THAT(read_timetable_hour("mo 09:10").advice, testing::StartsWith("write \"Mo\""));
    EXPECT_THAT(read_timetable_hour("Xy 09:10").advice, testing::StartsWith("the weekdays are"));
    EXPECT_THAT(read_timetable_hour("Mo 25:00").advice, testing::HasSubstr("23:59"));
    for (const char* const wrong : {"",
                                    " ",
                                    "Mo",
                                    "Mo,09:10",
                                    "Mo, 09:10",
                                    "Mo- 09:10",
                                    "-Mo 09:10",
                                    ",Mo 09:10",
                                    "Mo  09:10",
                                    "2027-02-30 07:35",
                                    "Mo 24:00",
                                    "Mo 9.10",
                                    "weekly 09:10"})
        EXPECT_FALSE(read_timetable_hour(wrong).hour) << wrong;
}

TEST(Timetable, SaysAnHourAsItIsWritten) {
    for (const char* const text : {"Mo,We 09:10", "2027-06-18 07:35", "daily 17:40"})
        EXPECT_EQ(timetable_words(hour_of(text)), text);
}

TEST(Timetable, RunsOnItsDays) {
    const Date friday = 2027y / 6 / 18;
    EXPECT_TRUE(runs_on(hour_of("We,Fr 17:40"), friday));
    EXPECT_FALSE(runs_on(hour_of("Mo 17:40"), friday));
    EXPECT_TRUE(runs_on(hour_of("2027-06-18 17:40"), friday));
    EXPECT_FALSE(runs_on(hour_of("2027-06-19 17:40"), friday));
    EXPECT_TRUE(runs_on(hour_of("17:40"), friday));
}

} // namespace
} // namespace tumpline::planner
