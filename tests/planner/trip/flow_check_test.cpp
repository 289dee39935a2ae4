#include "planner/trip/flow_check.h"

#include "geo/input_error.h"
#include "planner/trip/trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

Trip river_trip(const std::string& flow, const std::string& beside = "") {
    return read_trip_text(
        R"({"tumpline": 1, "route": {"tracks": ["a.gpx"], "legs": [{"name": "River", "travel": "paddle", )" +
            beside + R"("class": "II", "flow": )" + flow +
            R"(}]}, "party": [{"name": "Ada", "body": "68 kg"}]})",
        "t.json");
}

/// "key: expected" of the first problem with this flow; empty if there is none.
std::string flow_problem(const std::string& flow, const std::string& beside = "") {
    try {
        (void)river_trip(flow, beside);
    } catch (const geo::InputError& error) {
        const std::string whole = error.problems().front().place;
        return whole.substr(std::string("/route/legs/0").size()) + ": " +
               error.problems().front().expected;
    }
    return {};
}

TEST(FlowCheck, TakesALevelAsTheCurrentAndClassOfTheLeg) {
    const Trip trip = river_trip(
        R"({"low": {"current": "1 m/s", "reading": "10 m3/s"},
            "high": {"current": "2 m/s", "reading": "30 m3/s", "class": "III"}, "now": "15 m3/s"})");
    ASSERT_TRUE(trip.route.legs[0].current_mps);
    EXPECT_NEAR(*trip.route.legs[0].current_mps, 1.25, 1e-12);
    EXPECT_EQ(trip.route.legs[0].river_class, 3);
    EXPECT_EQ(trip.route.legs[0].water, Water::river);
}

TEST(FlowCheck, TakesFeetAndStages) {
    EXPECT_EQ(flow_problem(R"({"normal": {"current": "1 m/s", "reading": "400 ft3/s"}})"), "");
    EXPECT_EQ(flow_problem(R"({"normal": {"current": "1 m/s", "reading": "3.5 ft"}})"), "");
}

TEST(FlowCheck, RefusesALevelThatNothingFits) {
    const std::string one = R"({"normal": {"current": "1 m/s", "reading": "10 m3/s"}, "now": )";
    EXPECT_EQ(flow_problem(one + R"("high"})"),
              "/flow/now: a level that the flow has, or a reading");
    EXPECT_THAT(flow_problem(one + R"("60 m3/s"})"),
                testing::StartsWith("/flow/now: a reading between those of the columns"));
    EXPECT_THAT(flow_problem(one + R"("1.2 m"})"),
                testing::StartsWith("/flow/now: a discharge like the readings before"));
    EXPECT_THAT(flow_problem(one + R"("full"})"),
                testing::StartsWith("/flow/now: \"low\", \"normal\", \"high\" or"));
    EXPECT_THAT(flow_problem(R"({"low": {"current": "1 m/s"}})"),
                testing::StartsWith("/flow/now: a level that the flow has"));
}

TEST(FlowCheck, RefusesFlowsWithoutACurrent) {
    EXPECT_EQ(flow_problem(R"({"normal": {"reading": "10 m3/s"}})"),
              "/flow: at least one level with its \"current\"");
    EXPECT_THAT(flow_problem(R"({"low": {"reading": "1 m"},
                                 "normal": {"current": "1 m/s", "reading": "2 m"}})"),
                testing::StartsWith("/flow/low: its \"current\", or a discharge"));
}

TEST(FlowCheck, RefusesWhatContradictsItself) {
    const std::string normal = R"("normal": {"current": "1 m/s", "reading": "10 m3/s"})";
    EXPECT_EQ(flow_problem("{" + normal + R"(, "high": {"reading": "9 m3/s"}})"),
              "/flow/high/reading: more than 10 m3/s, the level before");
    EXPECT_THAT(flow_problem("{" + normal + R"(, "high": {"current": "-1 m/s"}})"),
                testing::StartsWith("/flow/high/current: a current that is not 0"));
    EXPECT_EQ(flow_problem("{" + normal + R"(, "runnable": ["60 m3/s", "8 m3/s"]})"),
              "/flow/runnable: the lower reading first, and the higher above it");
    EXPECT_EQ(flow_problem("{" + normal +
                           R"(, "times": [{"hours": ["10:00", "10:00"], "now": "normal"}]})"),
              "/flow/times/0/hours: two times of day that differ: between these lies nothing");
    EXPECT_EQ(
        flow_problem("{" + normal + R"(, "times": [{"hours": ["10:00", "12:00"], "now": "low"}]})"),
        "/flow/times/0/now: a level that the flow has, or a reading");
    EXPECT_EQ(flow_problem("{" + normal + "}", R"("current": "3 km/h", )"),
              "/flow: one of them: the columns give the current");
    EXPECT_EQ(flow_problem("{" + normal + "}", R"("water": "lake", )"),
              "/flow: it on legs with \"water\": \"river\" only");
}

} // namespace
} // namespace tumpline::planner
