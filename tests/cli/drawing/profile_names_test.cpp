#include "cli/drawing/profile_names.h"

#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>
#include <regex>

namespace tumpline::cli {
namespace {

using planner::PlaceKind;
using testing::HasSubstr;
using testing::Not;

constexpr ProfileNames::Room room{.left = 0.0, .right = 700.0, .text = 12.1, .most_rows = 4};

Mark mark(double x, const char* name, PlaceKind kind = PlaceKind::landing) {
    return {{x, 90.0, x}, name, kind, 0};
}

struct Written {
    double x, y;
    bool ends; ///< at x, else it begins there
    std::string words;
};

std::vector<Written> written(const std::string& markup) {
    static const std::regex text(
        R"re(<text class="name( slept)?( end)?" x="([-0-9.]+)" y="([-0-9.]+)" font-size="12.1">([^<]*)</text>)re");
    std::vector<Written> all;
    for (auto at = std::sregex_iterator(markup.begin(), markup.end(), text);
         at != std::sregex_iterator();
         ++at)
        all.push_back({std::stod((*at)[3]), std::stod((*at)[4]), (*at)[2].matched, (*at)[5]});
    return all;
}

TEST(ProfileNames, StandInOneRowWhereThereIsRoom) {
    const ProfileNames names({mark(50.0, "Hut"), mark(300.0, "Ford")}, room);
    EXPECT_DOUBLE_EQ(names.height(), 1.3 * 12.1);
    const std::vector<Written> all = written(names.markup(40.0));
    ASSERT_EQ(all.size(), 2U);
    EXPECT_DOUBLE_EQ(all[0].x, 53.0); // three pixels beside their line
    EXPECT_DOUBLE_EQ(all[0].y, all[1].y);
    EXPECT_THAT(names.markup(40.0),
                HasSubstr(R"(<path class="lead" d="M50 )")); // up from the ground
}

TEST(ProfileNames, GoUpARowWhereAnotherIsInTheWay) {
    const ProfileNames names({mark(50.0, "Upper hut"), mark(60.0, "Spring")}, room);
    EXPECT_DOUBLE_EQ(names.height(), 2.6 * 12.1);
    // The later one leads up through no words: the first ends at its line's left.
    EXPECT_EQ(names.named(), 2U);
}

TEST(ProfileNames, StandOnceForAPlaceThatTheRouteLeavesAndComesBackTo) {
    // 20 pixels apart, letters of 12.1: 2.5 heights are 30.25.
    const ProfileNames near({mark(300.0, "Mill"), mark(320.0, "Mill")}, room);
    EXPECT_EQ(near.named(), 1U);
    const ProfileNames apart({mark(300.0, "Mill"), mark(332.0, "Mill")}, room);
    EXPECT_EQ(apart.named(), 2U);
    const ProfileNames others({mark(300.0, "Mill"), mark(320.0, "Weir")}, room);
    EXPECT_EQ(others.named(), 2U);
}

TEST(ProfileNames, EndAtTheirLineByTheRightEdge) {
    const ProfileNames names({mark(690.0, "Quarry stop")}, room);
    const std::vector<Written> all = written(names.markup(40.0));
    ASSERT_EQ(all.size(), 1U);
    EXPECT_TRUE(all[0].ends);
    EXPECT_DOUBLE_EQ(all[0].x, 687.0);
}

TEST(ProfileNames, OfHazardsComeFirst) {
    std::vector<Mark> crowd;
    for (int i = 0; i < 30; ++i)
        crowd.push_back(mark(340.0 + i, "a place of a long name"));
    crowd.push_back(mark(352.0, "Ledge rapid", PlaceKind::hazard));
    const ProfileNames names(crowd, room);
    const std::string markup = names.markup(60.0);
    EXPECT_THAT(markup, HasSubstr(">Ledge rapid</text>"));
    EXPECT_LT(names.named(), crowd.size()) << "the others have no room";
    EXPECT_THAT(markup, HasSubstr("class=\"hazard\""));
}

TEST(ProfileNames, AreEscaped) {
    const ProfileNames names({mark(50.0, "<b>")}, room);
    EXPECT_THAT(names.markup(40.0), HasSubstr("&lt;b&gt;"));
    EXPECT_THAT(names.markup(40.0), Not(HasSubstr("<b>")));
}

/// A letter is taken as half as wide as high at the least: what stands in one row is that far
/// apart.
TEST(ProfileNames, NeverLieOnEachOtherNorOnALine) {
    std::mt19937 draw(7);
    std::uniform_real_distribution<double> place(5.0, 695.0);
    std::size_t all_named = 0;
    for (int round = 0; round < 200; ++round) {
        std::vector<Mark> marks;
        for (int i = 0; i < 12; ++i)
            marks.push_back(mark(place(draw), i % 3 == 0 ? "Low spit" : "Road bridge"));
        const ProfileNames names(marks, room);
        const std::vector<Written> all = written(names.markup(80.0));
        all_named += all.size();
        const auto box = [](const Written& one) {
            const double width = 0.45 * 12.1 * static_cast<double>(one.words.size());
            return std::pair(one.ends ? one.x - width : one.x, one.ends ? one.x : one.x + width);
        };
        for (std::size_t i = 0; i < all.size(); ++i)
            for (std::size_t j = 0; j < all.size(); ++j) {
                const auto [from, to] = box(all[i]);
                if (i != j && all[i].y == all[j].y) {
                    const auto [other_from, other_to] = box(all[j]);
                    EXPECT_TRUE(to <= other_from || other_to <= from) << all[i].words;
                }
                const double line_x = all[j].x + (all[j].ends ? 3.0 : -3.0);
                if (all[i].y > all[j].y) { // j stands higher: its line passes i's row
                    EXPECT_TRUE(line_x <= from || line_x >= to) << all[i].words;
                }
            }
    }
    EXPECT_GT(all_named, 200U * 6U) << "half of twelve have room, wherever they lie";
}

TEST(ProfileNames, StandOnAProfileThatIsAskedForThem) {
    const planner::Plan plan = test::hand_built_plan();
    const planner::Route route = test::hand_built_route(plan);
    const Figures shown(planner::UnitSystem::metric, "UTC", Blank::kept);
    const Drawing plain{.width = wide_drawing, .text = page_text, .id = "p"};
    const Stretch whole{0.0, route.length_m};
    const std::string with = profile_drawing(plan, route, whole, with_marks(plain), shown);
    const std::string without = profile_drawing(plan, route, whole, plain, shown);
    EXPECT_THAT(without, Not(HasSubstr("class=\"lead\"")));
    EXPECT_THAT(with, HasSubstr("class=\"night\""));
    std::size_t named = 0;
    for (const planner::RoutePlace& place : route.places)
        named += with.find(">" + place.name + "</text>") != std::string::npos ? 1U : 0U;
    EXPECT_GE(named, 3U);
    for (const planner::PlanHazard& one : plan.hazards)
        if (one.hazard && one.place) {
            EXPECT_THAT(with, HasSubstr(">" + one.name + "</text>"));
        }
}

} // namespace
} // namespace tumpline::cli
