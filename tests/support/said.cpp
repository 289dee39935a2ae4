#include "tests/support/said.h"

#include <gtest/gtest.h>

#include <sstream>

namespace tumpline::test {

Said say(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const cli::ExitCode code = cli::run(arguments, {.out = out, .err = err});
    return {code, out.str(), err.str()};
}

std::string printed(const std::vector<std::string>& arguments) {
    const Said said = say(arguments);
    EXPECT_EQ(said.code, cli::ExitCode::done) << said.err;
    return said.out;
}

std::string help_of(std::vector<std::string> arguments) {
    arguments.emplace_back("--help");
    return printed(arguments);
}

} // namespace tumpline::test
