#include "planner/cautions/land_groups.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

Caution fact(const char* code, LegNumber leg, const char* figure) {
    return {.level = Level::note,
            .code = code,
            .day = {},
            .leg = leg,
            .text = "of one leg",
            .source = "docs/map.md",
            .figure = figure};
}

TEST(LandGroups, SayAKindOnceWithItsLegs) {
    const std::vector<Caution> told =
        grouped_by_kind({fact("ground-stream", 1, "at 3.0 km, 7.5 km"),
                         fact("ground-off-path", 1, "along 1.4 km"),
                         fact("ground-stream", 4, "at 12 km"),
                         fact("ground-off-path", 4, "along 250 m")});
    ASSERT_EQ(told.size(), 2U);
    EXPECT_EQ(told[0].text,
              "Running water is crossed by the layers: leg 1 at 3.0 km, 7.5 km; leg 4 at 12 km. "
              "Whether it can be crossed or drunk they do not say.");
    EXPECT_EQ(told[0].imperial, "");
    EXPECT_FALSE(told[0].leg);
    EXPECT_EQ(told[1].code, "ground-off-path");
    EXPECT_EQ(told[1].text,
              "No marked path of the layers runs here: leg 1 along 1.4 km; leg 4 along 250 m. The "
              "pace is planned as on a path.");
}

TEST(LandGroups, KeepBothSystemsOfUnits) {
    Caution first = fact("ground-shore", 2, "up to 490 m");
    first.figure_imperial = "up to 1610 ft";
    const std::vector<Caution> told = grouped_by_kind({first, fact("ground-shore", 5, "far off")});
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].text,
              "By the layers the line leads far from the nearest shore: leg 2 up to 490 m; leg 5 "
              "far off.");
    EXPECT_EQ(told[0].imperial,
              "By the layers the line leads far from the nearest shore: leg 2 up to 1610 ft; leg 5 "
              "far off.");
}

TEST(LandGroups, NameALegOnceThatHasSeveral) {
    Caution rapid = fact("ground-rapid", 6, "a rapid at 42.5 km (a.gpkg)");
    rapid.level = Level::caution;
    Caution fall = rapid;
    fall.figure = "a fall at 44 km (a.gpkg)";
    const std::vector<Caution> told = grouped_by_kind({rapid, fall});
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].level, Level::caution);
    EXPECT_EQ(told[0].text,
              "The map's layers show rapids or falls where the trip names no hazard: leg 6 a rapid "
              "at 42.5 km (a.gpkg), a fall at 44 km (a.gpkg). Scout each from shore, and ask who "
              "knows the river.");
}

TEST(LandGroups, LeaveALoneOneAndAllElseAsItIs) {
    Caution other = fact("wind-rises", 3, "by 13:00");
    const std::vector<Caution> told =
        grouped_by_kind({other, fact("ground-stream", 1, "at 3.0 km"), other});
    ASSERT_EQ(told.size(), 3U);
    EXPECT_EQ(told[0].code, "wind-rises");
    EXPECT_EQ(told[1].text, "of one leg");
    EXPECT_EQ(told[1].leg, LegNumber{1});
    EXPECT_FALSE(is_land_fact(other));
    EXPECT_TRUE(is_land_fact(told[1]));
    EXPECT_EQ(land_fact_word(told[1]), "Running water crossed");
}

} // namespace
} // namespace tumpline::planner
