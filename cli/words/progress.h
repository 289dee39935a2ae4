#pragma once

#include "cli/console.h"

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

namespace tumpline::cli {

/// Tells a waiting person on standard error that work goes on, and takes the line away when the
/// work is done. Quiet for the first second, and always where nobody watches.
class Progress {
  public:
    /// `what` goes on: "planning". Nothing is said for as long as patience lasts.
    Progress(Console console,
             std::string what,
             std::chrono::milliseconds patience = std::chrono::seconds(1));
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    ~Progress();

    /// The next thing to do; its seconds count on from the start.
    void now(std::string what);

  private:
    void tell();

    Console console_;
    std::mutex mutex_;
    std::condition_variable changed_;
    std::string what_;
    std::chrono::milliseconds patience_;
    bool ended_ = false;
    std::thread teller_;
};

} // namespace tumpline::cli
