#pragma once

#include <sys/types.h>

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

/// Shells as a person meets them: on a terminal, with a key that completes.
namespace tumpline::test {

enum class Shell { bash, zsh, fish };

/// Whether a program of that name is in PATH.
[[nodiscard]] bool have(const std::string& program);

/// Whether this machine gives out terminals.
[[nodiscard]] bool have_terminal();

/// What a program prints to standard output.
[[nodiscard]] std::string printed_by(const std::vector<std::string>& words);

/// A shell on a terminal of its own, without anybody's start-up files, its completions for
/// `tumpline` read from `script`. Ended with the object.
class ShellTerminal {
  public:
    ShellTerminal(Shell shell,
                  const std::filesystem::path& folder,
                  const std::filesystem::path& script);
    ~ShellTerminal();
    ShellTerminal(const ShellTerminal&) = delete;
    ShellTerminal& operator=(const ShellTerminal&) = delete;

    /// The line after `typed` and the completion key; the line is cleared afterwards.
    /// Throws: std::runtime_error, as making one does, if the shell does not answer within ten
    /// seconds.
    [[nodiscard]] std::string completed(const std::string& typed);

  private:
    void type(const std::string& keys) const;
    void wait_until(const std::function<bool()>& reached);

    std::filesystem::path answer_; ///< where the shell writes its line
    pid_t child_ = -1;
    int terminal_ = -1;
    std::string shown_; ///< all that stood on the terminal
};

} // namespace tumpline::test
