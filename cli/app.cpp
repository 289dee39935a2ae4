#include "cli/app.h"

#include "cli/commands/command_line.h"
#include "cli/words/text_width.h"
#include "cli/words/usage.h"
#include "cli/words/version.h"
#include "geo/input_error.h"
#include "planner/trip/problem_lines.h"

#include <CLI/CLI.hpp>
#include <fmt/ostream.h>

#include <exception>
#include <new>

namespace tumpline::cli {

namespace {

/// Understands the command line; what it asks for in so many words, and what is wrong with it,
/// is answered here.
ExitCode parse_and_run(const std::vector<std::string>& arguments, Console console) {
    CommandLine line;
    CLI::App& app = line.app();
    try {
        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend()); // as it wants them
        app.parse(reversed);
    } catch (const CLI::CallForHelp&) {
        const std::vector<CLI::App*> chosen = app.get_subcommands();
        console.out << help_text(chosen.empty() ? app : *chosen.back(), console.columns);
        return ExitCode::done;
    } catch (const CLI::CallForVersion&) {
        fmt::print(console.out, "tumpline {}\n", version());
        return ExitCode::done;
    } catch (const CLI::ParseError& error) {
        fmt::print(console.err, "{}\n", misuse_text(app, error));
        return ExitCode::bad_input;
    }
    return line.run(console);
}

/// Runs what was asked for; what goes wrong becomes a message and an exit code.
ExitCode answered(const std::vector<std::string>& arguments, Console console) {
    try {
        return parse_and_run(arguments, console);
    } catch (const geo::InputError& error) {
        for (const geo::Problem& problem : planner::with_lines(error.problems()))
            fmt::print(console.err, "{}\n", one_line(to_string(problem)));
        return ExitCode::bad_input;
    } catch (const std::bad_alloc&) {
        fmt::print(console.err, "tumpline: the memory of this machine does not suffice\n");
        return ExitCode::fault;
    } catch (const std::exception& error) {
        fmt::print(console.err,
                   "tumpline: a fault of the program: {}\nPlease report it with the command and, "
                   "if you can, the files.\n",
                   one_line(error.what()));
        return ExitCode::fault;
    }
}

} // namespace

ExitCode run(const std::vector<std::string>& arguments, Console console) {
    const ExitCode code = answered(arguments, console);
    console.out.flush();
    if (console.out.good())
        return code;
    fmt::print(console.err, "tumpline: standard output cannot be written to; is the disk full?\n");
    return ExitCode::bad_input;
}

} // namespace tumpline::cli
