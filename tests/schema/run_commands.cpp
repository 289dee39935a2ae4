// Runs command lines, one a line of standard input as a JSON list of arguments, and prints for
// each, one a line, a JSON object with the exit code, the output and the messages. One process for
// all of them: a process for each takes longer to load its libraries than to plan.

#include "cli/app.h"

#include <nlohmann/json.hpp>

#include <iostream>
#include <sstream>
#include <string>
#include <vector>

int main() {
    std::ios::sync_with_stdio(false);
    for (std::string line; std::getline(std::cin, line);) {
        const auto arguments = nlohmann::json::parse(line).get<std::vector<std::string>>();
        std::ostringstream out;
        std::ostringstream err;
        const tumpline::cli::ExitCode code =
            tumpline::cli::run(arguments, {.out = out, .err = err});
        const nlohmann::json answer{
            {"code", static_cast<int>(code)}, {"out", out.str()}, {"err", err.str()}};
        std::cout << answer.dump() << std::endl; // whoever asked waits for it
    }
}
