#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <functional>
#include <stdexcept>

namespace tumpline::test {

/// Whether `holds` for somebody who may not write everywhere: asked in a process of its own that
/// has given up the rights of the superuser, so that it is asked on machines of root's too.
inline bool holds_for_a_common_user(const std::function<bool()>& holds) {
    if (::geteuid() != 0)
        return holds();
    constexpr uid_t nobody = 65534;
    const pid_t child = ::fork();
    if (child < 0)
        throw std::runtime_error("no process");
    if (child == 0) {
        const bool changed = ::setgid(nobody) == 0 && ::setuid(nobody) == 0;
        bool held = false;
        try {
            held = changed && holds();
        } catch (...) {
            held = false;
        }
        ::_exit(held ? 0 : 1);
    }
    int status = 0;
    return ::waitpid(child, &status, 0) == child && WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

} // namespace tumpline::test
