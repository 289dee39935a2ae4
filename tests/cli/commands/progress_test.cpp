#include "cli/words/progress.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <sstream>
#include <thread>

namespace tumpline::cli {
namespace {

using namespace std::chrono_literals;
using testing::EndsWith;
using testing::HasSubstr;

TEST(Progress, SaysNothingWhereNobodyWatches) {
    std::ostringstream out;
    std::ostringstream err;
    {
        const Progress progress({.out = out, .err = err, .colour = false, .progress = false}, "x");
        std::this_thread::sleep_for(1100ms);
    }
    EXPECT_EQ(err.str(), "");
}

TEST(Progress, SaysNothingOfShortWork) {
    std::ostringstream out;
    std::ostringstream err;
    {
        Progress progress({.out = out, .err = err, .colour = false, .progress = true}, "reading");
        progress.now("planning");
    }
    EXPECT_EQ(err.str(), "");
}

TEST(Progress, TellsLongWorkAndTakesItsLineAway) {
    std::ostringstream out;
    std::ostringstream err;
    {
        Progress progress({.out = out, .err = err, .colour = false, .progress = true}, "reading");
        progress.now("planning");
        std::this_thread::sleep_for(1200ms);
    }
    EXPECT_THAT(err.str(), HasSubstr("planning (1 s)"));
    EXPECT_THAT(err.str(), EndsWith("\r\033[K"));
    EXPECT_EQ(out.str(), "");
}

} // namespace
} // namespace tumpline::cli
