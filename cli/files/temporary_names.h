#pragma once

#include <csignal>
#include <string>

/// Names of files that must not stay behind when the program is told to stop.
namespace tumpline::cli {

/// Holds back the signals that stop the program while a file and its name in the list below must
/// change together; what came meanwhile takes effect afterwards.
class SignalsHeld {
  public:
    SignalsHeld();
    ~SignalsHeld();
    SignalsHeld(const SignalsHeld&) = delete;
    SignalsHeld& operator=(const SignalsHeld&) = delete;

  private:
    sigset_t before_;
};

struct ListedName;

/// Lists `name` until `forget_temporary`.
[[nodiscard]] ListedName* list_temporary(const std::string& name);
void forget_temporary(ListedName* listed);

/// Makes SIGINT, SIGTERM and SIGHUP remove the listed files before they stop the program, but for
/// those that the caller had set to be ignored.
void remove_temporaries_on_signals();

} // namespace tumpline::cli
