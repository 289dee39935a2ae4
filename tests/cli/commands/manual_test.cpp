#include "cli/app.h"
#include "tests/support/said.h"
#include "tests/support/shell_terminal.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

/// Holds docs/tumpline.1 together with what the program says of itself.
namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

const fs::path manual_file = test::root / "docs" / "tumpline.1";

std::string manual() {
    std::ifstream in(manual_file);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// What stands under the heading `macro` `name`, up to the next of its rank.
std::string under(const std::string& text, const std::string& macro, const std::string& name) {
    const std::string heading = macro + " " + name + "\n";
    const std::size_t at = text.find(heading);
    if (at == std::string::npos)
        return {};
    const std::string rest = text.substr(at + heading.size());
    std::size_t end = rest.find("\n.Sh ");
    if (macro == ".Ss")
        end = std::min(end, rest.find("\n.Ss "));
    return rest.substr(0, end);
}

std::string replaced(std::string text, const std::string& pattern, const std::string& with) {
    return std::regex_replace(text, std::regex(pattern), with);
}

/// "--set POINTER=VALUE", as a reader sees the macros "Fl Fl set Ar POINTER Ns = Ns Ar VALUE".
std::string plain(std::string text) {
    text = replaced(text, "Fl Fl ", "--");
    text = replaced(text, "Fl ", "-");
    text = replaced(text, "\\n\\.|(^|\\n)\\.(?=[A-Z])", "\n");
    text = replaced(text, "\\b(Ar|Cm|Op|Nm|It|Pa|Ev) ", "");
    text = replaced(text, " Ns (\\||=) Ns ", "$1");
    text = replaced(text, " \\.\\.\\.", "...");
    return text;
}

/// The entries that a help lists: "TRIP", "-o, --output BOOK.html", without their descriptions.
std::vector<std::string> listed(const std::string& help, bool options) {
    std::vector<std::string> entries;
    std::istringstream lines(help);
    bool commands = false;
    for (std::string line; std::getline(lines, line);) {
        commands = (commands || line == "Commands") && !line.empty();
        if (line.size() > 2 && line.starts_with("  ") && line[2] != ' ' && !commands &&
            (line[2] == '-') == options)
            entries.push_back(line.substr(2, line.find("  ", 2) - 2));
    }
    return entries;
}

std::vector<std::string> command_names() {
    std::vector<std::string> names;
    std::istringstream lines(test::help_of({}));
    bool commands = false;
    for (std::string line; std::getline(lines, line);) {
        commands = (commands || line == "Commands") && !line.empty();
        if (commands && line.starts_with("  ") && line[2] != ' ')
            names.push_back(line.substr(2, line.find(' ', 2) - 2));
    }
    return names;
}

/// What each command's help lists beside --help and --units, which the manual tells once.
std::vector<std::string> own_options(const std::string& command) {
    std::vector<std::string> own;
    for (const std::string& entry : listed(test::help_of({command}), true))
        if (entry.find("--help") == std::string::npos && !entry.starts_with("--units"))
            own.push_back(entry);
    return own;
}

/// Every option named in a text of the manual.
std::set<std::string> named(const std::string& text) {
    static const std::regex option("(^|[^A-Za-z0-9-])(-[a-z]|--[a-z]+(-[a-z]+)*)(?![a-z-])");
    std::set<std::string> found;
    for (std::sregex_iterator at(text.begin(), text.end(), option), end; at != end; ++at)
        found.insert((*at)[2]);
    return found;
}

TEST(Manual, HasTheCommandsOfTheHelpInItsOrderAndNoOthers) {
    std::vector<std::string> headings;
    std::istringstream lines(under(manual(), ".Sh", "COMMANDS"));
    for (std::string line; std::getline(lines, line);)
        if (line.starts_with(".Ss "))
            headings.push_back(line.substr(4));
    EXPECT_EQ(headings, command_names());
    EXPECT_GE(headings.size(), 12U);
}

TEST(Manual, ShowsEachCommandWithItsOptionsAndTheirValues) {
    for (const std::string& command : command_names()) {
        SCOPED_TRACE(command);
        const std::string section = under(manual(), ".Ss", command);
        std::string synopsis = plain(section.substr(0, section.find("\n.Pp")));
        synopsis = replaced(synopsis, "\\n", " ");
        EXPECT_THAT(synopsis, HasSubstr(command));
        for (const std::string& value : listed(test::help_of({command}), false))
            EXPECT_THAT(synopsis + " ", HasSubstr(" " + value + " "));
        std::set<std::string> options;
        for (const std::string& entry : own_options(command)) {
            const std::size_t comma = entry.find(", ");
            std::string shortest = entry; // "-o TRIP" of "-o, --output TRIP"
            if (comma != std::string::npos)
                shortest = entry.substr(0, comma) + entry.substr(entry.find(' ', comma + 2));
            EXPECT_THAT(synopsis + " ", HasSubstr(" " + shortest + " "));
            options.merge(named(entry));
        }
        // none is invented, and what is not told under OPTIONS is told here
        std::set<std::string> told = named(plain(section));
        EXPECT_EQ(told, options);
        const std::string common = plain(under(manual(), ".Sh", "OPTIONS"));
        for (const std::string& option : options)
            EXPECT_TRUE(common.find(option) != std::string::npos ||
                        replaced(plain(section), "\n", " ").find(option, synopsis.size()) !=
                            std::string::npos)
                << option << " is not explained";
    }
}

TEST(Manual, TellsTheOptionsOfTheProgramItself) {
    const std::string options = plain(under(manual(), ".Sh", "OPTIONS"));
    for (const std::string& entry : listed(test::help_of({}), true))
        EXPECT_THAT(replaced(options, " , ", ", "), HasSubstr("\n" + entry + "\n"));
    std::set<std::string> known{"-h", "--help", "--version", "--units"};
    for (const std::string& command : command_names())
        for (const std::string& entry : own_options(command))
            known.merge(named(entry));
    for (const std::string& option : named(plain(manual())))
        EXPECT_TRUE(known.contains(option)) << option << " is invented";
}

TEST(Manual, TellsTheExitCodesOfTheHelp) {
    const std::string status = under(manual(), ".Sh", "EXIT STATUS");
    const std::string help = test::help_of({});
    for (const char* code : {"0", "1", "2", "3"})
        EXPECT_THAT(status, HasSubstr(std::string(".It ") + code + "\n"));
    EXPECT_THAT(status, testing::Not(HasSubstr(".It 4")));
    EXPECT_THAT(help, HasSubstr("0 done; 1 a fault of the program; 2 wrong usage or bad input"));
    EXPECT_THAT(under(manual(), ".Sh", "ENVIRONMENT"), HasSubstr("NO_COLOR"));
    EXPECT_THAT(help, HasSubstr("NO_COLOR"));
}

TEST(Manual, ItsExamplesAreUnderstood) {
    std::istringstream lines(under(manual(), ".Sh", "EXAMPLES"));
    std::size_t examples = 0;
    for (std::string line; std::getline(lines, line);) {
        if (!line.starts_with("tumpline "))
            continue;
        std::vector<std::string> arguments;
        std::istringstream words(line.substr(9));
        for (std::string word; words >> word && word != "|";)
            arguments.push_back(word);
        std::ostringstream out, err;
        EXPECT_EQ(run(arguments, {.out = out, .err = err}), ExitCode::bad_input) << line;
        EXPECT_THAT(err.str(), HasSubstr("no such file")) << line; // and nothing else is wrong
        ++examples;
    }
    EXPECT_GE(examples, 5U);
}

TEST(Manual, MandocFindsNothingWrong) {
    if (!test::have("mandoc"))
        GTEST_SKIP() << "mandoc is not installed (Debian: mandoc)";
    EXPECT_EQ(test::printed_by({"mandoc", "-Tlint", "-Wwarning", manual_file.string()}), "");
    EXPECT_NE(test::printed_by({"mandoc", "-Tlint", "-Wwarning", "/dev/null"}), "");
}

} // namespace
} // namespace tumpline::cli
