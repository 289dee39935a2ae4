#include "cli/commands/command_live.h"

#include "cli/live/gate.h"
#include "cli/live/live_answers.h"
#include "cli/live/live_trip.h"
#include "cli/live/loopback_server.h"

#include <fmt/ostream.h>
#include <spawn.h>
#include <unistd.h>

#include <csignal>
#include <string>

namespace tumpline::cli {

namespace {

/// Starts the desktop's browser and does not wait for it.
bool opened(std::string address) {
    std::string program = "xdg-open";
    char* const words[] = {program.data(), address.data(), nullptr}; // NOLINT: as POSIX wants them
    std::signal(SIGCHLD, SIG_IGN);                                   // nobody waits for it
    pid_t child = 0;
    return posix_spawnp(&child, program.c_str(), nullptr, nullptr, words, environ) == 0;
}

} // namespace

ExitCode live(const LiveOptions& options, Console console) {
    LiveTrip trip(options.trip);
    (void)trip.text(); // a file that is not there is told at once
    const std::string key = new_key();
    LoopbackServer* ended = nullptr;
    LoopbackServer server(
        key, live_routes(trip, options.units, [&ended] { ended->end(); }), live_events(trip));
    ended = &server;
    const std::string address =
        fmt::format("http://127.0.0.1:{}/#{}", server.listen_on(options.port), key);
    fmt::print(console.out, "{}\n", address);
    console.out.flush();
    if (options.open && !opened(address))
        fmt::print(console.err, "no browser could be started; open the address yourself\n");
    server.serve();
    return ExitCode::done;
}

} // namespace tumpline::cli
