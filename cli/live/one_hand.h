#pragma once

#include <atomic>
#include <condition_variable>
#include <deque>
#include <functional>
#include <future>
#include <mutex>
#include <thread>
#include <type_traits>
#include <utility>

namespace tumpline::cli {

/// Does one piece of work after the other, all in one thread: what a thread prepares for itself
/// (grids, projections) is prepared once, and no request takes more than one core.
class OneHand {
  public:
    OneHand();
    ~OneHand(); ///< does what was begun
    OneHand(const OneHand&) = delete;
    OneHand& operator=(const OneHand&) = delete;

    /// What `work` answers, or throws.
    template <typename Work> std::invoke_result_t<Work> done(Work work) {
        std::packaged_task<std::invoke_result_t<Work>()> task(std::move(work));
        std::future<std::invoke_result_t<Work>> answer = task.get_future();
        take(std::packaged_task<void()>([&task] { task(); }));
        return answer.get();
    }

    /// Does it some time later; it throws nothing.
    void begin(std::function<void()> work) { take(std::packaged_task<void()>(std::move(work))); }

    /// Whether something is being done or waits.
    [[nodiscard]] bool busy() const { return waiting_or_done_ > 0; }

  private:
    void take(std::packaged_task<void()> task);
    void work();

    std::mutex door_;
    std::condition_variable knock_;
    std::deque<std::packaged_task<void()>> waiting_;
    std::atomic<int> waiting_or_done_{0};
    bool ending_ = false;
    std::thread hand_;
};

} // namespace tumpline::cli
