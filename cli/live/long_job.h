#pragma once

#include <chrono>
#include <condition_variable>
#include <cstddef>
#include <mutex>
#include <optional>
#include <string>

namespace tumpline::cli {

/// Work that somebody waits for and may leave: one thread does it and says how far it is, another
/// tells that on, line by line.
class LongJob {
  public:
    /// Of so many draws, or of an unknown number of steps.
    explicit LongJob(std::optional<std::size_t> draws) : draws_(draws) {}

    /// So many draws or steps are done; answers whether somebody still waits.
    [[nodiscard]] bool go_on(std::size_t done);
    /// It ends with this line.
    void end_with(std::string line);

    /// Nobody waits any more.
    void leave();
    [[nodiscard]] bool left() const;

    /// What is to be told next, a line each: how far it is, after `longest` also if that is what
    /// was told before; at the end its last line; then nothing.
    [[nodiscard]] std::optional<std::string> next(std::chrono::milliseconds longest);

  private:
    mutable std::mutex door_;
    std::condition_variable knock_;
    std::optional<std::size_t> draws_;
    std::size_t done_ = 0;
    std::optional<std::string> last_;
    bool told_last_ = false;
    bool left_ = false;
};

} // namespace tumpline::cli
