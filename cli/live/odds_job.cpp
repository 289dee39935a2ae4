#include "cli/live/odds_job.h"

#include <fmt/format.h>

#include <utility>

namespace tumpline::cli {

bool OddsJob::go_on(std::size_t done) {
    const std::lock_guard lock(door_);
    done_ = done;
    return !left_;
}

void OddsJob::end_with(std::string line) {
    {
        const std::lock_guard lock(door_);
        last_ = std::move(line);
    }
    knock_.notify_one();
}

void OddsJob::leave() {
    const std::lock_guard lock(door_);
    left_ = true;
}

bool OddsJob::left() const {
    const std::lock_guard lock(door_);
    return left_;
}

std::optional<std::string> OddsJob::next(std::chrono::milliseconds longest) {
    std::unique_lock lock(door_);
    if (told_last_)
        return std::nullopt;
    knock_.wait_for(lock, longest, [this] { return last_.has_value(); });
    if (!last_)
        return fmt::format("{{\"done\":{},\"draws\":{}}}\n", done_, draws_);
    told_last_ = true;
    return *last_;
}

} // namespace tumpline::cli
