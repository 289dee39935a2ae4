#include "cli/files/temporary_names.h"

#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <memory>

namespace tumpline::cli {

/// One place of the list. It is never freed, so that a signal finds the list whole at any moment.
struct ListedName {
    std::string name;
    std::atomic<bool> used{false};
    std::unique_ptr<ListedName> next;
};

namespace {

/// The last: a library that finds no memory ends the program so.
constexpr std::array stopping{SIGINT, SIGTERM, SIGHUP, SIGABRT};

std::atomic<ListedName*>& first_name() {
    static std::atomic<ListedName*> first{nullptr};
    return first;
}

sigset_t stopping_signals() {
    sigset_t set;
    sigemptyset(&set);
    for (const int signal : stopping)
        sigaddset(&set, signal);
    return set;
}

/// Only what a signal handler may call.
void remove_and_stop(int signal) {
    const int before = errno;
    for (const ListedName* one = first_name().load(); one != nullptr; one = one->next.get())
        if (one->used.load())
            ::unlink(one->name.c_str());
    errno = before;
    std::signal(signal, SIG_DFL);
    std::raise(signal); // takes effect as this returns
}

} // namespace

SignalsHeld::SignalsHeld() : before_() {
    const sigset_t set = stopping_signals();
    ::pthread_sigmask(SIG_BLOCK, &set, &before_);
}

SignalsHeld::~SignalsHeld() {
    ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

ListedName* list_temporary(const std::string& name) {
    for (ListedName* one = first_name().load(); one != nullptr; one = one->next.get())
        if (!one->used.load()) {
            one->name = name;
            one->used.store(true);
            return one;
        }
    auto added = std::make_unique<ListedName>();
    added->name = name;
    added->used.store(true);
    added->next.reset(first_name().load());
    first_name().store(added.get());
    return added.release();
}

void forget_temporary(ListedName* listed) {
    listed->used.store(false);
}

void remove_temporaries_on_signals() {
    (void)first_name().load(); // made before a signal can ask for it
    for (const int signal : stopping) {
        struct sigaction action {};

        if (::sigaction(signal, nullptr, &action) != 0 || action.sa_handler == SIG_IGN)
            continue;
        action = {};
        action.sa_handler = remove_and_stop;
        ::sigaction(signal, &action, nullptr);
    }
}

} // namespace tumpline::cli
