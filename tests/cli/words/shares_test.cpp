#include "cli/words/shares.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::cli {

TEST(Shares, SumToAHundredByTheLargestRemainders) {
    // 33.3, 33.3, 33.3: floors sum to 99, the first of three equal remainders gets the one missing.
    EXPECT_THAT(whole_percents({1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0}),
                testing::ElementsAre(34, 33, 33));
    // 16.5, 33.5, 50.0 would each be rounded up, or to even: 17 + 34 + 50 = 101. Floors 16 + 33 +
    // 50 = 99; the remainders 0.5 and 0.5 are alike, so the first gets it.
    EXPECT_THAT(whole_percents({0.165, 0.335, 0.5}), testing::ElementsAre(17, 33, 50));
    // 20.6, 20.6, 20.6, 38.2: floors 98, two missing, to the first two of 0.6; rounded each: 101.
    EXPECT_THAT(whole_percents({0.206, 0.206, 0.206, 0.382}), testing::ElementsAre(21, 21, 20, 38));
    // 12.4, 12.4, 75.2: rounded each 99; floors 12 + 12 + 75 = 99, to the first 0.4.
    EXPECT_THAT(whole_percents({0.124, 0.124, 0.752}), testing::ElementsAre(13, 12, 75));
}

TEST(Shares, LeaveWholeOnesAsTheyAre) {
    EXPECT_THAT(whole_percents({0.29, 0.57, 0.14}), testing::ElementsAre(29, 57, 14));
    EXPECT_THAT(whole_percents({1.0}), testing::ElementsAre(100));
    EXPECT_THAT(whole_percents({0.0, 0.0}), testing::ElementsAre(0, 0)); // nobody carries any
    EXPECT_THAT(whole_percents({}), testing::IsEmpty());
}

} // namespace tumpline::cli
