#include "cli/live/one_hand.h"

namespace tumpline::cli {

OneHand::OneHand() : hand_([this] { work(); }) {}

OneHand::~OneHand() {
    {
        const std::lock_guard lock(door_);
        ending_ = true;
    }
    knock_.notify_one();
    hand_.join();
}

void OneHand::take(std::packaged_task<void()> task) {
    ++waiting_or_done_;
    {
        const std::lock_guard lock(door_);
        waiting_.push_back(std::move(task));
    }
    knock_.notify_one();
}

void OneHand::work() {
    for (;;) {
        std::unique_lock lock(door_);
        knock_.wait(lock, [this] { return ending_ || !waiting_.empty(); });
        if (waiting_.empty())
            return;
        std::packaged_task<void()> task = std::move(waiting_.front());
        waiting_.pop_front();
        lock.unlock();
        task();
        --waiting_or_done_;
    }
}

} // namespace tumpline::cli
