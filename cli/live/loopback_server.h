#pragma once

#include "cli/live/gate.h"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::cli {

/// What is answered to a request.
struct Reply {
    int status = 200;
    std::string type = "application/json";
    std::string body;
    /// What is told after the body, piece by piece until there is none; each within a moment, ""
    /// where nothing is new. It is let go as soon as nobody reads any more, so what it holds ends
    /// with it.
    std::function<std::optional<std::string>()> more = {};
};

/// A method and a path, and what answers there, given the body.
struct LiveRoute {
    std::string method; ///< "GET" or "POST"
    std::string path;
    std::function<Reply(const std::string& body)> answer;
};

/// A stream of events: `next` is asked a few times a second and says what is to be told, or "".
/// A reader that does not read holds up nobody: what it misses is not kept.
struct LiveEvents {
    std::string path;
    std::function<std::string(std::string& seen)> next; ///< `seen`: what this reader was told last
};

/// Speaks HTTP on 127.0.0.1 and nowhere else. Bodies, heads, connections and times are bounded.
class LoopbackServer {
  public:
    LoopbackServer(std::string key, std::vector<LiveRoute> routes, LiveEvents events);
    ~LoopbackServer();
    LoopbackServer(const LoopbackServer&) = delete;
    LoopbackServer& operator=(const LoopbackServer&) = delete;

    /// Takes the port, 0 for any free one; answers which. Throws: geo::InputError if it is taken.
    [[nodiscard]] int listen_on(int port);
    /// Answers until `end` is called.
    void serve();
    void end();

  private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

} // namespace tumpline::cli
