#include "cli/live/long_job.h"

#include <gtest/gtest.h>

#include <chrono>
#include <thread>

namespace tumpline::cli {
namespace {

using std::chrono::milliseconds;

TEST(LongJob, SaysHowFarItIsAndAtLastWhatCameOfIt) {
    LongJob job(40);
    EXPECT_EQ(job.next(milliseconds(0)), "{\"done\":0,\"draws\":40}\n");
    EXPECT_TRUE(job.go_on(17));
    EXPECT_EQ(job.next(milliseconds(0)), "{\"done\":17,\"draws\":40}\n");
    job.end_with("{\"odds\":1}\n");
    EXPECT_EQ(job.next(milliseconds(0)), "{\"odds\":1}\n");
    EXPECT_FALSE(job.next(milliseconds(0)).has_value());
    EXPECT_FALSE(job.next(milliseconds(0)).has_value());
}

TEST(LongJob, SaysHowManyStepsAreDoneWhereNobodyKnowsOfHowMany) {
    LongJob job({});
    EXPECT_TRUE(job.go_on(3));
    EXPECT_EQ(job.next(milliseconds(0)), "{\"done\":3}\n");
}

TEST(LongJob, WhoWaitsIsTheEndOfItToldAtOnce) {
    LongJob job(40);
    const auto began = std::chrono::steady_clock::now();
    std::thread hand([&] { job.end_with("end\n"); });
    EXPECT_EQ(job.next(milliseconds(20'000)), "end\n");
    hand.join();
    EXPECT_LT(std::chrono::steady_clock::now() - began, milliseconds(10'000));
}

TEST(LongJob, GoesOnForNobodyWhoHasLeft) {
    LongJob job(40);
    EXPECT_TRUE(job.go_on(1));
    EXPECT_FALSE(job.left());
    job.leave();
    EXPECT_TRUE(job.left());
    EXPECT_FALSE(job.go_on(2));
}

} // namespace
} // namespace tumpline::cli
