#include "cli/words/progress.h"

#include <fmt/ostream.h>

#include <utility>

namespace tumpline::cli {

namespace {

using namespace std::chrono_literals;

constexpr auto beat = 1s;

} // namespace

Progress::Progress(Console console, std::string what, std::chrono::milliseconds patience)
    : console_(console), what_(std::move(what)), patience_(patience) {
    if (console_.progress)
        teller_ = std::thread(&Progress::tell, this);
}

Progress::~Progress() {
    if (!teller_.joinable())
        return;
    {
        const std::lock_guard lock(mutex_);
        ended_ = true;
    }
    changed_.notify_one();
    teller_.join();
}

void Progress::now(std::string what) {
    const std::lock_guard lock(mutex_);
    what_ = std::move(what);
}

void Progress::tell() {
    const auto begun = std::chrono::steady_clock::now();
    std::unique_lock lock(mutex_);
    bool reported = false;
    auto next = begun + patience_;
    while (!changed_.wait_until(lock, next, [this] { return ended_; })) {
        const auto waited = std::chrono::steady_clock::now() - begun;
        fmt::print(console_.err,
                   "\r\033[K{} ({} s)",
                   what_,
                   std::chrono::duration_cast<std::chrono::seconds>(waited).count());
        console_.err.flush();
        reported = true;
        next += beat;
    }
    if (reported) {
        fmt::print(console_.err, "\r\033[K");
        console_.err.flush();
    }
}

} // namespace tumpline::cli
