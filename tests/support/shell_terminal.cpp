#include "tests/support/shell_terminal.h"

#include <fcntl.h>
#include <poll.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <memory>
#include <sstream>
#include <stdexcept>

namespace tumpline::test {

namespace {

namespace fs = std::filesystem;

constexpr char completion_key = '\t';
constexpr char clearing_key = '\x15';  // Ctrl-U
constexpr char answering_key = '\x07'; // Ctrl-G: we bind it to a writer of the line

const std::string prompt = "ready> ";

/// What the shell reads first: completions on, and a key that writes the line to `answer`.
std::string start_up(Shell shell, const fs::path& script, const fs::path& answer) {
    const std::string written = "'" + answer.string() + ".new'";
    const std::string moved = "mv " + written + " '" + answer.string() + "'";
    switch (shell) {
    case Shell::bash:
        return "PS1='" + prompt + "'\nsource '" + script.string() +
               "'\nbind 'set bell-style none'\n"
               "write_line() { printf '%s' \"$READLINE_LINE\" > " +
               written + "; " + moved + "; }\nbind -x '\"\\C-g\": write_line'\n";
    case Shell::zsh:
        return "PS1='" + prompt +
               "'\nunsetopt beep\nautoload -U compinit\ncompinit -u -D\nsource '" +
               script.string() + "'\nwrite_line() { print -rn -- \"$BUFFER\" > " + written + "; " +
               moved +
               " }\nzle -N write_line\nbindkey '^G' write_line\nbindkey '^U' kill-whole-line\n";
    case Shell::fish:
        return "function fish_prompt; echo '" + prompt + "'; end\nset fish_greeting\nsource '" +
               script.string() +
               "'\nset -g fish_autosuggestion_enabled 0\nfunction write_line; commandline -b | "
               "string collect | read -z line; printf '%s' (string trim -r -c \\n -- $line) > " +
               written + "; " + moved + "; end\nbind \\cg write_line\nbind \\cu kill-whole-line\n";
    }
    return {};
}

std::vector<std::string> command_of(Shell shell, const fs::path& start) {
    switch (shell) {
    case Shell::bash:
        return {"bash", "--noprofile", "--rcfile", start.string(), "-i"};
    case Shell::zsh:
        return {"zsh", "-i"}; // ZDOTDIR leads to its .zshrc
    case Shell::fish:
        return {"fish", "--no-config", "-i", "-C", "source '" + start.string() + "'"};
    }
    return {};
}

[[noreturn]] void become(const std::vector<std::string>& words) {
    std::vector<char*> arguments;
    for (const std::string& word : words)
        arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    ::execvp(arguments[0], arguments.data());
    ::_exit(127);
}

} // namespace

bool have(const std::string& program) {
    std::istringstream path(std::getenv("PATH"));
    for (std::string folder; std::getline(path, folder, ':');)
        if (::access((fs::path(folder) / program).c_str(), X_OK) == 0)
            return true;
    return false;
}

bool have_terminal() {
    const int terminal = ::posix_openpt(O_RDWR | O_NOCTTY);
    if (terminal >= 0)
        ::close(terminal);
    return terminal >= 0;
}

std::string printed_by(const std::vector<std::string>& words) {
    std::array<int, 2> pipe{};
    if (::pipe(pipe.data()) != 0)
        throw std::runtime_error("no pipe");
    const pid_t child = ::fork();
    if (child == 0) {
        ::dup2(pipe[1], STDOUT_FILENO);
        ::close(pipe[0]);
        ::close(pipe[1]);
        become(words);
    }
    ::close(pipe[1]);
    std::string printed;
    std::array<char, 4096> block{};
    for (ssize_t count = 0; (count = ::read(pipe[0], block.data(), block.size())) > 0;)
        printed.append(block.data(), static_cast<std::size_t>(count));
    ::close(pipe[0]);
    ::waitpid(child, nullptr, 0);
    return printed;
}

ShellTerminal::ShellTerminal(Shell shell, const fs::path& folder, const fs::path& script)
    : answer_(folder / ".line") {
    const fs::path start = folder / ".zshrc"; // the name that zsh insists on
    std::ofstream(start) << start_up(shell, script, answer_);
    const std::vector<std::string> command = command_of(shell, start);

    struct winsize size {};

    size.ws_row = 50;
    size.ws_col = 200;
    child_ = ::forkpty(&terminal_, nullptr, nullptr, &size);
    if (child_ < 0)
        throw std::runtime_error("no terminal");
    if (child_ == 0) {
        ::setenv("TERM", "xterm", 1);
        ::setenv("ZDOTDIR", folder.c_str(), 1);
        ::setenv("HOME", folder.c_str(), 1);
        ::setenv("LC_ALL", "C.UTF-8", 1);
        if (::chdir(folder.c_str()) != 0)
            ::_exit(127);
        become(command);
    }
    wait_until([this] { return shown_.find(prompt) != std::string::npos; });
}

ShellTerminal::~ShellTerminal() {
    ::kill(child_, SIGKILL);
    ::close(terminal_);
    ::waitpid(child_, nullptr, 0);
}

void ShellTerminal::type(const std::string& keys) const {
    if (::write(terminal_, keys.data(), keys.size()) != static_cast<ssize_t>(keys.size()))
        throw std::runtime_error("the shell reads no keys");
}

void ShellTerminal::wait_until(const std::function<bool()>& reached) {
    const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(100);
    while (!reached()) {
        if (std::chrono::steady_clock::now() > end)
            throw std::runtime_error("the shell does not answer; it shows:\n" + shown_);

        struct pollfd waited {
            terminal_, POLLIN, 0
        }; // what it shows is read all the time, so that it goes on

        std::array<char, 4096> block{};
        if (::poll(&waited, 1, 20) <= 0)
            continue;
        const ssize_t count = ::read(terminal_, block.data(), block.size());
        if (count <= 0)
            throw std::runtime_error("the shell has ended; it showed:\n" + shown_);
        shown_.append(block.data(), static_cast<std::size_t>(count));
    }
}

std::string ShellTerminal::completed(const std::string& typed) {
    type(typed + completion_key + answering_key);
    wait_until([this] { return fs::exists(answer_); });
    std::ifstream in(answer_);
    std::string line(std::istreambuf_iterator<char>(in), {});
    fs::remove(answer_);
    type(std::string(1, clearing_key));
    return line;
}

} // namespace tumpline::test
