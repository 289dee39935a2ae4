#include "planner/cautions/caution_list.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

TEST(CautionList, GivesEachTheDayAndLegOfWhichOneSpeaks) {
    CautionList list;
    list.at(2, LegNumber{4});
    Caution& one = list.add(Level::caution, "a", UnitText("1 kg", "2 lb"));
    one.subject = "Ada";
    set_figure(one, UnitText("3 kg", "7 lb"), 3.0);
    list.anywhere();
    set_figure(list.add(Level::note, "b", "the same"), "three", 0.5);
    const std::vector<Caution> all = list.take();
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[0].day, 2);
    EXPECT_EQ(all[0].leg, LegNumber{4});
    EXPECT_EQ(all[0].text, "1 kg");
    EXPECT_EQ(all[0].imperial, "2 lb");
    EXPECT_EQ(all[0].subject, "Ada");
    EXPECT_EQ(all[0].figure, "3 kg");
    EXPECT_EQ(all[0].figure_imperial, "7 lb");
    EXPECT_EQ(all[0].excess, 3.0);
    EXPECT_FALSE(all[1].day);
    EXPECT_EQ(all[1].imperial, "") << "the same in both systems";
    EXPECT_EQ(all[1].figure_imperial, "");
}

} // namespace
} // namespace tumpline::planner
