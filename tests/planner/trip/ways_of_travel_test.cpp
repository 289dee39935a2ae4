#include "planner/trip/ways_of_travel.h"

#include "planner/trip/vocabulary.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string_view>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;

std::vector<std::string_view> ways_that(bool (*holds)(Travel)) {
    std::vector<std::string_view> found;
    for (const Word<Travel>& one : travel_words())
        if (holds(one.meaning))
            found.push_back(one.word);
    return found;
}

TEST(WaysOfTravel, EachIsOnFootOrAfloatOrARide) {
    EXPECT_THAT(ways_that(on_foot), ElementsAre("walk", "portage"));
    EXPECT_THAT(ways_that(afloat), ElementsAre("paddle", "line", "wade", "pole"));
    EXPECT_THAT(ways_that(is_ride), ElementsAre("ride"));
}

TEST(WaysOfTravel, PacksAreBorneOnFoot) {
    EXPECT_THAT(ways_that(bears_packs), ElementsAre("walk", "portage"));
}

TEST(WaysOfTravel, ABoatIsLedAshoreInTheWaterOrWithAPole) {
    EXPECT_THAT(ways_that(led), ElementsAre("line", "wade", "pole"));
    EXPECT_THAT(ways_that(beside_boat), ElementsAre("line", "wade"));
    EXPECT_THAT(ways_that(aboard), ElementsAre("paddle", "pole"));
    EXPECT_THAT(ways_that(feet_on_ground), ElementsAre("walk", "portage", "line", "wade"));
}

} // namespace
} // namespace tumpline::planner
