#include "cli/live/live_beside.h"

#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <chrono>
#include <filesystem>
#include <future>
#include <string>
#include <thread>
#include <vector>

namespace tumpline::cli {

namespace {

const std::filesystem::path saddle_file = test::root / "sample-routes" / "saddle" / "trip.json";

std::vector<Json> all_lines(const Reply& reply) {
    std::vector<Json> lines;
    while (const std::optional<std::string> told = reply.more())
        lines.push_back(Json::parse(*told));
    return lines;
}

class LiveBeside : public testing::Test {
  protected:
    LiveTrip trip_{saddle_file};
    LiveMaker maker_{trip_, {}};
};

TEST_F(LiveBeside, OddsAreThoseOfTheCommand) {
    const Reply reply = odds_reply(maker_, R"({"edits": [], "draws": 50})");
    EXPECT_EQ(reply.status, 200);
    EXPECT_EQ(reply.type, "application/x-ndjson");
    const std::vector<Json> lines = all_lines(reply);
    ASSERT_FALSE(lines.empty());
    for (std::size_t i = 0; i + 1 < lines.size(); ++i)
        EXPECT_EQ(lines[i].at("draws"), 50);
    const LivePlan live = trip_.planned({});
    const planner::Odds odds =
        planner::odds_of(live.plan.trip, *live.route, {.draws = 50, .seed = 1, .threads = 2});
    const Json& told = lines.back();
    EXPECT_EQ(told.at("seen"), live.seen);
    EXPECT_EQ(told.at("odds").at("draws"), 50);
    EXPECT_EQ(told.at("odds").at("under_way_s").at("q50").get<double>(), odds.under_way_s.q50);
    EXPECT_EQ(told.at("view").at("days").size(), odds.days.size());
}

TEST_F(LiveBeside, OddsThatNobodyWaitsForAreNotDrawn) {
    const auto began = std::chrono::steady_clock::now();
    for (int i = 0; i < 12; ++i) { // more than may wait at a time
        const Reply reply = odds_reply(maker_, R"({"edits": [], "draws": 2000})");
        ASSERT_EQ(reply.status, 200) << i;
        ASSERT_TRUE(reply.more().has_value());
    }
    while (maker_.long_hand.busy())
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    const auto taken = std::chrono::steady_clock::now() - began;
    const Reply whole = odds_reply(maker_, R"({"edits": [], "draws": 2000})");
    const auto again = std::chrono::steady_clock::now();
    (void)all_lines(whole);
    EXPECT_LT(taken, 12 * (std::chrono::steady_clock::now() - again));
}

TEST_F(LiveBeside, NightsThatNobodyWaitsForAreNotSearched) {
    const auto rests = [&] {
        for (int i = 0; i < 2000 && maker_.long_hand.busy(); ++i)
            std::this_thread::sleep_for(std::chrono::milliseconds(5));
        return !maker_.long_hand.busy();
    };
    std::promise<void> search;
    std::promise<void> plan;
    maker_.long_hand.begin([&] { search.get_future().wait(); });
    Reply reply = nights_reply(maker_, R"({"edits": []})");
    EXPECT_EQ(reply.type, "application/x-ndjson");
    maker_.hand.begin([&] { plan.get_future().wait(); });
    search.set_value(); // it begins, and lets the plan go first, which takes as long as we like
    EXPECT_TRUE(Json::parse(reply.more().value()).contains("done"));
    EXPECT_TRUE(maker_.long_hand.busy());
    EXPECT_EQ(maker_.long_questions, 1);
    reply = {}; // the page has closed
    EXPECT_TRUE(rests()) << "the search goes on though everybody has left";
    EXPECT_EQ(maker_.long_questions, 0);
    plan.set_value();
}

TEST_F(LiveBeside, MoreThanFourLongQuestionsAreRefused) {
    std::vector<Reply> replies;
    for (int i = 0; i < 4; ++i)
        replies.push_back(odds_reply(maker_, R"({"edits": [], "draws": 2000})"));
    EXPECT_EQ(replies.back().status, 200);
    EXPECT_EQ(odds_reply(maker_, R"({"edits": []})").status, 503);
    EXPECT_EQ(nights_reply(maker_, R"({"edits": []})").status, 503);
    EXPECT_EQ(compare_reply(maker_, R"({"edits": []})").status, 200); // as quick as two plans
    replies.clear();
    EXPECT_EQ(odds_reply(maker_, R"({"edits": [], "draws": 10})").status, 200);
}

TEST_F(LiveBeside, WhatIsNoTripIsRefusedBeforeAnythingIsTold) {
    const std::string wrong =
        R"({"edits": [{"op": "add", "path": "/days/nights", "value": ["nowhere"]}]})";
    EXPECT_THROW((void)odds_reply(maker_, wrong), geo::InputError);
    EXPECT_THROW((void)nights_reply(maker_, wrong), geo::InputError);
    EXPECT_THROW((void)compare_reply(maker_, wrong), geo::InputError);
    EXPECT_EQ(maker_.long_questions, 0); // no place is kept
}

TEST_F(LiveBeside, NightsOfferTheBestAndWhatTheNextCosts) {
    const Json told = all_lines(nights_reply(maker_, R"({"edits": []})")).back();
    const Json& options = told.at("view").at("options");
    ASSERT_GE(options.size(), 2U);
    EXPECT_EQ(options[0].at("which"), "Best");
    EXPECT_EQ(options[0].at("edits").at(0).at("value"), told.at("nights").at("best").at("nights"));
    const double more = told.at("nights").at("next").at(0).at("cost").at("sum").get<double>() -
                        told.at("nights").at("best").at("cost").at("sum").get<double>();
    EXPECT_GE(more, 0.0);
    EXPECT_EQ(options[1].at("cost"), fmt::format("{:.2f} more", more));
}

TEST_F(LiveBeside, ComparesAgainstThePinnedEditsOrTheFile) {
    const std::string later = R"([{"op": "add", "path": "/party/0/pace", "value": 0.8}])";
    const auto lines = [&](const std::string& body) {
        return Json::parse(compare_reply(maker_, body).body).at("view").at("lines");
    };
    EXPECT_TRUE(lines(R"({"edits": []})").empty());
    EXPECT_TRUE(lines(R"({"edits": )" + later + R"(, "pinned": )" + later + "}").empty());
    const Json slower = lines(R"({"edits": )" + later + "}");
    const Json quicker = lines(R"({"edits": [], "pinned": )" + later + "}");
    ASSERT_FALSE(slower.empty());
    ASSERT_EQ(slower.size(), quicker.size());
    bool moving = false;
    for (std::size_t i = 0; i < slower.size(); ++i) {
        EXPECT_EQ(slower[i].at("pinned"), quicker[i].at("now"));
        if (slower[i].at("label") == "moving") {
            moving = true;
            EXPECT_EQ(slower[i].at("difference").get<std::string>().at(0), '+');
            EXPECT_EQ(quicker[i].at("difference").get<std::string>().at(0), '-');
        }
    }
    EXPECT_TRUE(moving);
}

} // namespace

} // namespace tumpline::cli
