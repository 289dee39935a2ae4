#include "cli/words/progress.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <latch>
#include <ostream>
#include <sstream>

namespace tumpline::cli {
namespace {

using namespace std::chrono_literals;
using testing::EndsWith;
using testing::HasSubstr;

/// Text that lets others wait until some of it was handed on.
class HandedOn : public std::stringbuf {
  public:
    std::latch first{1};

  private:
    int sync() override {
        if (!first.try_wait())
            first.count_down();
        return 0;
    }
};

TEST(Progress, SaysNothingWhereNobodyWatches) {
    std::ostringstream out;
    std::ostringstream err;
    {
        const Progress progress(
            {.out = out, .err = err, .colour = false, .progress = false}, "x", 0ms);
    }
    EXPECT_EQ(err.str(), "");
}

TEST(Progress, SaysNothingOfShortWork) {
    std::ostringstream out;
    std::ostringstream err;
    {
        Progress progress(
            {.out = out, .err = err, .colour = false, .progress = true}, "reading", 1h);
        progress.now("planning");
    }
    EXPECT_EQ(err.str(), "");
}

TEST(Progress, TellsLongWorkAndTakesItsLineAway) {
    std::ostringstream out;
    HandedOn said;
    std::ostream err(&said);
    {
        const Progress progress(
            {.out = out, .err = err, .colour = false, .progress = true}, "planning", 0ms);
        said.first.wait();
    }
    EXPECT_THAT(said.str(), HasSubstr("planning (0 s)"));
    EXPECT_THAT(said.str(), EndsWith("\r\033[K"));
    EXPECT_EQ(out.str(), "");
}

} // namespace
} // namespace tumpline::cli
