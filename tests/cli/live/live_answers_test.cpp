#include "cli/live/live_answers.h"

#include "cli/words/json_values.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

class LiveAnswers : public testing::Test {
  protected:
    [[nodiscard]] Json drawing_of(const Json& body) const {
        const auto route = std::ranges::find(routes_, "/api/plan", &LiveRoute::path);
        return Json::parse(route->answer(body.dump()).body).at("drawing");
    }

    LiveTrip trip_{test::root / "sample-routes" / "saddle" / "trip.json"};
    std::vector<LiveRoute> routes_{live_routes(trip_, {}, [] {})};
};

std::vector<std::string> ids_of(const Json& drawing) {
    std::vector<std::string> ids{drawing.at("map").at("id"), drawing.at("profile").at("id")};
    for (const Json& clock : drawing.at("clocks"))
        ids.push_back(clock.at("id"));
    return ids;
}

TEST_F(LiveAnswers, ADrawingThatThePageHasIsNotSentAgain) {
    const Json want = {"drawing"};
    const Json first = drawing_of({{"edits", Json::array()}, {"want", want}});
    EXPECT_TRUE(first.at("map").at("markup").get<std::string>().starts_with("<svg class=\"map"));
    EXPECT_TRUE(first.at("profile").at("markup").get<std::string>().starts_with("<svg"));
    const std::vector<std::string> have = ids_of(first);
    ASSERT_EQ(have.size(), 2U + 4U); // four days

    const Json later = {{{"op", "add"}, {"path", "/days/set_off"}, {"value", "07:45"}}};
    const Json second = drawing_of({{"edits", later}, {"want", want}, {"have", have}});
    EXPECT_EQ(second.at("map"), (Json{{"id", have[0]}, {"markup", nullptr}}));
    EXPECT_EQ(second.at("profile"), (Json{{"id", have[1]}, {"markup", nullptr}}));
    for (std::size_t day = 0; day < 4; ++day) { // every clock begins earlier
        EXPECT_NE(second.at("clocks")[day].at("id"), have[2 + day]);
        EXPECT_TRUE(second.at("clocks")[day].at("markup").is_string());
    }

    const Json slower = {{{"op", "add"}, {"path", "/party/0/pace"}, {"value", 0.9}}};
    const Json third = drawing_of({{"edits", slower}, {"want", want}, {"have", have}});
    EXPECT_NE(third.at("map").at("id"), have[0]); // less food by then: another band
    EXPECT_TRUE(third.at("map").at("markup").is_string());
    // Whoever says nothing gets everything.
    EXPECT_EQ(drawing_of({{"edits", Json::array()}, {"want", want}}).at("map"), first.at("map"));
}

} // namespace
} // namespace tumpline::cli
