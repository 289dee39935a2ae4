#include "cli/live/long_job.h"

#include <fmt/format.h>

#include <utility>

namespace tumpline::cli {

bool LongJob::go_on(std::size_t done) {
    const std::lock_guard lock(door_);
    done_ = done;
    return !left_;
}

void LongJob::end_with(std::string line) {
    {
        const std::lock_guard lock(door_);
        last_ = std::move(line);
    }
    knock_.notify_one();
}

void LongJob::leave() {
    const std::lock_guard lock(door_);
    left_ = true;
}

bool LongJob::left() const {
    const std::lock_guard lock(door_);
    return left_;
}

std::optional<std::string> LongJob::next(std::chrono::milliseconds longest) {
    std::unique_lock lock(door_);
    if (told_last_)
        return std::nullopt;
    knock_.wait_for(lock, longest, [this] { return last_.has_value(); });
    if (!last_ && !draws_)
        return fmt::format("{{\"done\":{}}}\n", done_);
    if (!last_)
        return fmt::format("{{\"done\":{},\"draws\":{}}}\n", done_, *draws_);
    told_last_ = true;
    return *last_;
}

} // namespace tumpline::cli
