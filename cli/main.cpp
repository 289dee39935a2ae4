#include "cli/app.h"

#include <string>
#include <vector>

int main(int count, char** words) {
    const std::vector<std::string> arguments(words + 1, words + count);
    return static_cast<int>(tumpline::cli::run(arguments, tumpline::cli::process_console()));
}
