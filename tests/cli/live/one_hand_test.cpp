#include "cli/live/one_hand.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <future>
#include <set>
#include <stdexcept>
#include <thread>
#include <vector>

namespace tumpline::cli {

namespace {

TEST(OneHand, DoesEverythingInOneThreadOneAfterTheOther) {
    OneHand hand;
    std::set<std::thread::id> ids;
    int inside = 0;
    int most = 0;
    std::vector<int> answers(8, 0);
    std::vector<std::thread> askers;
    for (int& answer : answers)
        askers.emplace_back([&] {
            answer = hand.done([&] { // no lock: the one thread is the lock
                most = std::max(most, ++inside);
                ids.insert(std::this_thread::get_id());
                std::this_thread::yield();
                --inside;
                return static_cast<int>(ids.size());
            });
        });
    for (std::thread& asker : askers)
        asker.join();
    EXPECT_EQ(answers, std::vector<int>(8, 1));
    EXPECT_EQ(most, 1);
    EXPECT_FALSE(ids.contains(std::this_thread::get_id()));
}

TEST(OneHand, WhatIsBegunIsDoneWithoutWaiting) {
    std::promise<void> go;
    bool done = false;
    {
        OneHand hand;
        EXPECT_FALSE(hand.busy());
        hand.begin([&] {
            go.get_future().wait();
            done = true;
        });
        EXPECT_TRUE(hand.busy());
        EXPECT_FALSE(done);
        go.set_value();
        EXPECT_EQ(hand.done([&] { return done; }), true); // after what was begun
        hand.begin([&] { done = false; });
    }
    EXPECT_FALSE(done); // also what was begun last is done before the hand ends
}

TEST(OneHand, HandsOnWhatIsThrownAndGoesOn) {
    OneHand hand;
    EXPECT_THROW((void)hand.done([]() -> int { throw std::runtime_error("no"); }),
                 std::runtime_error);
    EXPECT_EQ(hand.done([] { return 7; }), 7);
}

} // namespace

} // namespace tumpline::cli
