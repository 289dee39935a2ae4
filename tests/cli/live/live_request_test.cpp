#include "cli/live/live_request.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::cli {
namespace {

using planner::Edit;

std::string why(const std::string& body) {
    try {
        (void)live_request(body);
    } catch (const BadRequest& bad) {
        return bad.why;
    }
    return "a request";
}

TEST(LiveRequest, ReadsEveryPart) {
    const LiveRequest asked = live_request(R"({"edits": [
        {"op": "add", "path": "/days/hours", "value": 7}, {"op": "remove", "path": "/kit/0"}],
        "pinned": [{"op": "replace", "path": "/name", "value": "A"}], "want": ["view"],
        "draws": 120, "narrow": true, "seen": "5", "ground": "6",
        "have": ["7a", "8b"]})");
    ASSERT_EQ(asked.edits.size(), 2U);
    EXPECT_EQ(asked.edits[0].pointer, "/days/hours");
    EXPECT_EQ(asked.edits[0].value, "7");
    EXPECT_EQ(asked.edits[1].way, Edit::Way::remove);
    ASSERT_EQ(asked.pinned.size(), 1U);
    EXPECT_EQ(asked.pinned[0].way, Edit::Way::replace);
    EXPECT_TRUE(asked.wants("view"));
    EXPECT_FALSE(asked.wants("plan"));
    EXPECT_EQ(asked.draws, 120U);
    EXPECT_TRUE(asked.narrow);
    EXPECT_EQ(asked.seen, "5");
    EXPECT_EQ(asked.ground, "6");
    EXPECT_TRUE(asked.has("8b"));
    EXPECT_FALSE(asked.has("6"));
}

TEST(LiveRequest, LeftOutItWantsPlanAndDrawingAndFourHundredDraws) {
    const LiveRequest asked = live_request(R"({"edits": []})");
    EXPECT_TRUE(asked.wants("plan"));
    EXPECT_TRUE(asked.wants("drawing"));
    EXPECT_FALSE(asked.wants("view"));
    EXPECT_EQ(asked.draws, 400U);
    EXPECT_TRUE(asked.pinned.empty());
}

TEST(LiveRequest, SaysWhatIsWrong) {
    EXPECT_EQ(why(R"({"edits": []})"), "a request");
    EXPECT_EQ(why(R"({"edits": 1})"), "\"edits\" must be a list of at most 500");
    EXPECT_EQ(why(R"({"edits": [], "pinned": {}})"), "\"pinned\" must be a list of at most 500");
    for (const char* draws : {"9", "2001", "12.5", "-40", "1e9", "\"40\"", "null", "[]"})
        EXPECT_EQ(why(R"({"edits": [], "draws": )" + std::string(draws) + "}"),
                  "\"draws\" must be a whole number from 10 to 2000")
            << draws;
    EXPECT_EQ(why(R"({"edits": [{"op": "move", "path": "/a"}]})"),
              "\"op\" must be add, replace or remove");
}

TEST(LiveRequest, WhatIsWrongHasItsStatus) {
    EXPECT_EQ(answered([] { return replied({{"a", 1}}); }).status, 200);
    EXPECT_EQ(answered([]() -> Reply { throw BadRequest{"no"}; }).status, 400);
    const Reply refused = answered([]() -> Reply {
        throw geo::InputError(
            {{.file = "t", .place = "/a", .found = "b", .expected = "c", .advice = "d"}});
    });
    EXPECT_EQ(refused.status, 422);
    const Json problem = Json::parse(refused.body).at("problems").at(0);
    EXPECT_EQ(problem.at("place"), "/a");
    EXPECT_EQ(problem.at("found"), "b");
    EXPECT_EQ(problem.at("expected"), "c");
    EXPECT_EQ(problem.at("advice"), "d");
}

} // namespace
} // namespace tumpline::cli
