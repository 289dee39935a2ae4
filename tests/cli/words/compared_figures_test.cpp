#include "cli/words/compared_figures.h"

#include <gtest/gtest.h>

namespace tumpline::cli {
namespace {

using planner::Figure;

TEST(ComparedFigures, StandInTheReadersUnits) {
    const ComparedFigures metric(planner::UnitSystem::metric);
    const ComparedFigures imperial(planner::UnitSystem::imperial);
    EXPECT_EQ(metric.figure(Figure::walk, 12'340.0), "12.3 km");
    EXPECT_EQ(imperial.figure(Figure::walk, 16'093.44), "10.0 mi");
    EXPECT_EQ(metric.figure(Figure::moving, 5400.0), "1 h 30 min");
    EXPECT_EQ(metric.figure(Figure::stops, 3.0), "3");
    EXPECT_EQ(figure_words(Figure::on_foot), "walked, carries counted");
}

TEST(ComparedFigures, ADifferenceHasItsSignAndIsEmptyWhereNoneIsSeen) {
    const ComparedFigures shown(planner::UnitSystem::metric);
    EXPECT_EQ(shown.difference(Figure::moving, 1800.0), "+30 min");
    EXPECT_EQ(shown.difference(Figure::moving, -1800.0), "-30 min");
    EXPECT_EQ(shown.difference(Figure::moving, 4.0), "");
    EXPECT_EQ(shown.difference(Figure::days, -1.0), "-1");
}

} // namespace
} // namespace tumpline::cli
