#include "tests/support/small_trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::problems_with;
using test::small_trip_with;
using testing::ElementsAre;
using testing::HasSubstr;

RiverFlow flow_of(const std::string& flow) {
    return small_trip_with("/route/legs/0",
                           R"({"name": "river", "travel": "paddle", "water": "river", "flow": )" +
                               flow + "}")
        .route.legs.at(0)
        .flow.value();
}

std::vector<std::string> flow_problems(const std::string& flow) {
    return problems_with("/route/legs/0",
                         R"({"name": "river", "travel": "paddle", "water": "river", "flow": )" +
                             flow + "}");
}

TEST(SectionFlow, EachColumnKeepsItsCurrentReadingAndClass) {
    const RiverFlow flow = flow_of(R"({"gauge": "bridge",
        "low": {"current": "3.6 km/h", "reading": "12 m3/s", "class": "I"},
        "high": {"current": "7.2 km/h", "reading": "70 m3/s", "class": "III"},
        "now": "high", "runnable": ["8 m3/s", "90 m3/s"],
        "times": [{"hours": ["10:00", "14:00"], "now": "45 m3/s"}]})");
    EXPECT_EQ(flow.gauge, "bridge");
    ASSERT_TRUE(flow.column(FlowLevel::low));
    EXPECT_FALSE(flow.column(FlowLevel::normal));
    ASSERT_TRUE(flow.column(FlowLevel::high));
    EXPECT_DOUBLE_EQ(flow.column(FlowLevel::low)->current_mps.value(), 1.0);
    EXPECT_EQ(flow.column(FlowLevel::low)->reading, (GaugeReading{12.0, false}));
    EXPECT_EQ(flow.column(FlowLevel::low)->river_class, 1);
    EXPECT_DOUBLE_EQ(flow.column(FlowLevel::high)->current_mps.value(), 2.0);
    EXPECT_EQ(flow.column(FlowLevel::high)->reading, (GaugeReading{70.0, false}));
    EXPECT_EQ(flow.column(FlowLevel::high)->river_class, 3);
    EXPECT_EQ(flow.now.column, FlowLevel::high);
    EXPECT_TRUE(flow.now_given);
    ASSERT_TRUE(flow.runnable);
    EXPECT_EQ((*flow.runnable)[0].value, 8.0);
    EXPECT_EQ((*flow.runnable)[1].value, 90.0);
    ASSERT_EQ(flow.times.size(), 1U);
    EXPECT_EQ(flow.times[0].hours->from_s, 36'000.0);
    EXPECT_EQ(flow.times[0].hours->to_s, 50'400.0);
    EXPECT_EQ(flow.times[0].now.reading, (GaugeReading{45.0, false}));
}

TEST(SectionFlow, AReadingInMetresIsAStage) {
    const RiverFlow flow = flow_of(
        R"({"low": {"reading": "0.8 m", "current": "2 km/h"}, "high": {"reading": "2.1 m", "current": "6 km/h"},
        "now": "1.4 m"})");
    EXPECT_EQ(flow.column(FlowLevel::low)->reading, (GaugeReading{0.8, true}));
    EXPECT_EQ(flow.now.reading, (GaugeReading{1.4, true}));
    EXPECT_FALSE(flow.now.column);
}

TEST(SectionFlow, AnswersWhatIsNoReadingAndNoColumn) {
    EXPECT_THAT(flow_problems(R"({"normal": {"current": "4 km/h", "reading": "30"}})"),
                ElementsAre(HasSubstr("a gauge's reading with a unit")));
    EXPECT_THAT(
        flow_problems(R"({"normal": {"current": "4 km/h", "reading": "30 m3/s"}, "now": "flood"})"),
        ElementsAre(HasSubstr("\"low\", \"normal\", \"high\" or a gauge's reading")));
    EXPECT_THAT(
        flow_problems(
            R"({"normal": {"current": "4 km/h", "reading": "30 m3/s"}, "runnable": ["8 m3/s"]})"),
        ElementsAre(HasSubstr("two readings, the lowest and the highest")));
}

} // namespace
} // namespace tumpline::planner
