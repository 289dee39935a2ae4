#include "cli/app.h"
#include "cli/files/temporary_names.h"

#include <csignal>
#include <cstdio>
#include <new>
#include <string>
#include <vector>

int main(int count, char** words) {
    std::signal(SIGXFSZ,
                SIG_IGN); // a file that grows too large is an error of writing, told as one
    tumpline::cli::remove_temporaries_on_signals();
    try {
        const std::vector<std::string> arguments(words + 1, words + count);
        return static_cast<int>(tumpline::cli::run(arguments, tumpline::cli::process_console()));
    } catch (const std::bad_alloc&) { // before or while an answer was written
        std::fputs("tumpline: the memory of this machine does not suffice\n", stderr);
        return static_cast<int>(tumpline::cli::ExitCode::fault);
    }
}
