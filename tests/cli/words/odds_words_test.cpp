#include "cli/words/odds_words.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace tumpline::cli {
namespace {

TEST(OddsWords, NothingIsCertainThatWasOnlyDrawnSoOften) {
    EXPECT_EQ(chance_words(0.0, 400), "none");
    EXPECT_EQ(chance_words(1.0, 400), "all");
    EXPECT_EQ(chance_words(0.9975, 400), "99 %");  // 399 of 400
    EXPECT_EQ(chance_words(0.0025, 400), "< 1 %"); // 1 of 400
    EXPECT_EQ(chance_words(0.002, 1000), "0.2 %");
    EXPECT_EQ(chance_words(0.0001, 10'000), "0.1 %");
    EXPECT_EQ(chance_words(0.0105, 2000), "1 %");
    EXPECT_EQ(chance_words(0.254, 400), "25 %");
}

TEST(OddsWords, EveryAssumptionHasItsOwn) {
    using planner::Assumption;
    std::set<std::string_view> words;
    for (const Assumption one : {Assumption::pace_on_foot,
                                 Assumption::pace_afloat,
                                 Assumption::day_form,
                                 Assumption::wind,
                                 Assumption::current,
                                 Assumption::changeovers,
                                 Assumption::drinking,
                                 Assumption::eating})
        words.insert(assumption_words(one));
    EXPECT_EQ(words.size(), 8U);
    EXPECT_EQ(words.count(""), 0U);
}

} // namespace
} // namespace tumpline::cli
