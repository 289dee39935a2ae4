#include "cli/live/loopback_server.h"

#include "geo/input_error.h"

#include <fmt/format.h>
#include <httplib.h>
#include <nlohmann/json.hpp>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <chrono>
#include <cstddef>
#include <exception>
#include <optional>
#include <thread>
#include <utility>

namespace tumpline::cli {

namespace {

using std::chrono::milliseconds;
using std::chrono::steady_clock;

constexpr milliseconds longest_request{10'000}; ///< from the first byte to the last
constexpr milliseconds longest_write{5'000};    ///< of one piece, to a reader that does not read
constexpr milliseconds between_events{250};
constexpr int rounds_between_reminders = 4;
constexpr std::size_t longest_head = std::size_t{64} * 1024; ///< all lines before the body
constexpr std::size_t threads = 32;
constexpr int most_event_streams = 8;

/// One connection. Reading it is bounded in bytes and in time, whatever the pace of the other side.
class BoundedStream : public httplib::Stream {
  public:
    explicit BoundedStream(socket_t socket)
        : socket_(socket), until_(steady_clock::now() + longest_request) {}

    bool is_readable() const override { return filled_ > taken_ || wait_for(POLLIN, left()); }

    bool is_writable() const override { return wait_for(POLLOUT, longest_write); }

    ssize_t read(char* place, std::size_t size) override {
        if (taken_ == filled_ && !fill())
            return -1;
        const std::size_t part = std::min(size, filled_ - taken_);
        std::copy_n(block_.begin() + static_cast<std::ptrdiff_t>(taken_), part, place);
        taken_ += part;
        return static_cast<ssize_t>(part);
    }

    ssize_t write(const char* bytes, std::size_t size) override {
        if (!is_writable())
            return -1;
        return ::send(socket_, bytes, size, MSG_NOSIGNAL | MSG_DONTWAIT);
    }

    void get_remote_ip_and_port(std::string& ip, int& port) const override {
        ip = "127.0.0.1";
        port = 0;
    }

    void get_local_ip_and_port(std::string& ip, int& port) const override {
        get_remote_ip_and_port(ip, port);
    }

    socket_t socket() const override { return socket_; }

  private:
    [[nodiscard]] milliseconds left() const {
        return std::max(milliseconds(0),
                        std::chrono::duration_cast<milliseconds>(until_ - steady_clock::now()));
    }

    [[nodiscard]] bool wait_for(short what, milliseconds longest) const {
        pollfd one{.fd = socket_, .events = what, .revents = 0};
        return ::poll(&one, 1, static_cast<int>(longest.count())) > 0;
    }

    bool fill() {
        if (read_ > longest_body + longest_head || !wait_for(POLLIN, left()))
            return false;
        const ssize_t got = ::recv(socket_, block_.data(), block_.size(), 0);
        if (got <= 0)
            return false;
        taken_ = 0;
        filled_ = static_cast<std::size_t>(got);
        read_ += filled_;
        return true;
    }

    socket_t socket_;
    steady_clock::time_point until_;
    std::array<char, 8192> block_{};
    std::size_t taken_ = 0;
    std::size_t filled_ = 0;
    std::size_t read_ = 0;
};

/// Closes so that the other side can still read the answer, even while it sends what nobody reads.
void close_kindly(socket_t socket) {
    ::shutdown(socket, SHUT_WR);
    std::array<char, 8192> block{};
    const steady_clock::time_point until = steady_clock::now() + milliseconds(500);
    pollfd one{.fd = socket, .events = POLLIN, .revents = 0};
    while (steady_clock::now() < until && ::poll(&one, 1, 100) > 0 &&
           ::recv(socket, block.data(), block.size(), MSG_DONTWAIT) > 0) {
    }
    ::close(socket);
}

} // namespace

/// One request a connection, each over a bounded stream. (Not among the nameless: the server holds
/// one.)
class BoundedServer : public httplib::Server {
  private:
    bool process_and_close_socket(socket_t socket) override {
        BoundedStream stream(socket);
        bool closed = false;
        const bool done = process_request(stream, true, closed, nullptr);
        close_kindly(socket);
        return done;
    }
};

namespace {

Asked asked_by(const httplib::Request& request) {
    return {.method = request.method,
            .path = request.path,
            .host = request.get_header_value("Host"),
            .origin = request.get_header_value("Origin"),
            .authorization = request.get_header_value("Authorization"),
            .content_encoding = request.get_header_value("Content-Encoding"),
            .transfer_encoding = request.get_header_value("Transfer-Encoding"),
            .content_length = request.get_header_value("Content-Length"),
            .wants_part = !request.ranges.empty()};
}

void put(httplib::Response& response, const Reply& reply) {
    response.status = reply.status;
    response.set_content(reply.body, reply.type);
}

/// What is told piece by piece, by the thread of this connection: a reader that does not read holds
/// up nobody else, and is left after a while.
void put_stream(httplib::Response& response, const Reply& reply, const std::atomic<bool>& ending) {
    response.status = reply.status;
    response.set_chunked_content_provider(
        reply.type,
        [&ending, first = reply.body, more = reply.more](std::size_t /*offset*/,
                                                         httplib::DataSink& sink) mutable {
            const std::optional<std::string> told =
                first.empty() ? more() : std::optional(std::exchange(first, {}));
            if (!told || ending) {
                sink.done();
                return true;
            }
            return told->empty() || sink.write(told->data(), told->size());
        });
}

Reply error_reply(int status, std::string_view why) {
    Reply reply;
    reply.status = status;
    reply.body = nlohmann::json{{"error", why}}.dump() + "\n";
    return reply;
}

} // namespace

struct LoopbackServer::Inside {
    BoundedServer server;
    Gate gate;
    std::vector<LiveRoute> routes;
    LiveEvents events;
    std::atomic<bool> ending{false};
    std::atomic<int> event_streams{0};

    void prepare();
    void stream_events(httplib::Response& response);
};

void LoopbackServer::Inside::prepare() {
    server.new_task_queue = [] { return new httplib::ThreadPool(threads); };
    server.set_payload_max_length(longest_body);
    server.set_tcp_nodelay(true);
    server.set_default_headers(
        {{"Content-Security-Policy",
          "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
          "connect-src "
          "'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'"},
         {"X-Content-Type-Options", "nosniff"},
         {"Referrer-Policy", "no-referrer"},
         {"X-Frame-Options", "DENY"},
         {"Cross-Origin-Resource-Policy", "same-origin"},
         {"Cache-Control", "no-store"}});
    using Handled = httplib::Server::HandlerResponse;
    server.set_pre_routing_handler(
        [this](const httplib::Request& request, httplib::Response& response) {
            const std::optional<Refusal> refusal = refused(asked_by(request), gate);
            if (!refusal)
                return Handled::Unhandled;
            put(response, error_reply(refusal->status, refusal->why));
            return Handled::Handled;
        });
    server.set_error_handler([](const httplib::Request& /*asked*/, httplib::Response& response) {
        if (response.body.empty())
            put(response, error_reply(response.status, "there is nothing here"));
    });
    server.set_exception_handler([](const httplib::Request& /*asked*/,
                                    httplib::Response& response,
                                    const std::exception_ptr& /*fault*/) {
        put(response, error_reply(500, "a fault of the program"));
    });
    for (const LiveRoute& route : routes) {
        const auto handler = [this, &route](const httplib::Request& request,
                                            httplib::Response& response) {
            const Reply reply = route.answer(request.body);
            if (reply.more)
                put_stream(response, reply, ending);
            else
                put(response, reply);
        };
        if (route.method == "POST")
            server.Post(route.path, handler);
        else
            server.Get(route.path, handler);
    }
    server.Get(events.path, [this](const httplib::Request& /*asked*/, httplib::Response& response) {
        stream_events(response);
    });
}

void LoopbackServer::Inside::stream_events(httplib::Response& response) {
    if (++event_streams > most_event_streams) {
        --event_streams;
        put(response, error_reply(503, "too many pages listen already"));
        return;
    }
    response.set_chunked_content_provider(
        "text/event-stream",
        [this, seen = std::string(), round = 0](std::size_t /*offset*/,
                                                httplib::DataSink& sink) mutable {
            if (++round % rounds_between_reminders == 0)
                seen.clear(); // told again, lest a change there and back goes by unseen
            const std::string told = events.next(seen);
            const std::string text =
                told.empty() ? std::string(":\n\n") : fmt::format("data: {}\n\n", told);
            if (ending) {
                sink.done();
                return true;
            }
            if (!sink.write(text.data(), text.size()))
                return false;
            std::this_thread::sleep_for(between_events);
            return true;
        },
        [this](bool /*whole*/) { --event_streams; });
}

LoopbackServer::LoopbackServer(std::string key, std::vector<LiveRoute> routes, LiveEvents events)
    : inside_(std::make_unique<Inside>()) {
    inside_->gate.key = std::move(key);
    inside_->routes = std::move(routes);
    inside_->events = std::move(events);
    inside_->prepare();
}

LoopbackServer::~LoopbackServer() = default;

int LoopbackServer::listen_on(int port) {
    const char* const here = "127.0.0.1";
    const int taken = port == 0 ? inside_->server.bind_to_any_port(here)
                      : inside_->server.bind_to_port(here, port) ? port
                                                                 : -1;
    if (taken <= 0)
        throw geo::InputError({{.file = "tumpline live",
                                .place = "--port",
                                .found = fmt::format("port {}, which is taken", port),
                                .expected = "a port that is free",
                                .advice = "leave --port out for any free one"}});
    inside_->gate.port = taken;
    return taken;
}

void LoopbackServer::serve() {
    inside_->server.listen_after_bind();
}

void LoopbackServer::end() {
    inside_->ending = true;
    inside_->server.stop();
}

} // namespace tumpline::cli
