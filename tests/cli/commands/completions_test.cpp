#include "cli/commands/completions/completions.h"

#include "cli/app.h"
#include "cli/commands/command_line.h"
#include "tests/support/said.h"
#include "tests/support/shell_terminal.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

using testing::Contains;
using testing::IsEmpty;
using testing::SizeIs;
using testing::UnorderedElementsAre;
using testing::UnorderedElementsAreArray;

CommandTable table() {
    CommandLine line;
    return command_table(line.app());
}

/// Every word of a help that begins with a dash.
std::set<std::string> dashed(const std::string& help) {
    std::set<std::string> found;
    std::istringstream words(help);
    for (std::string word; words >> word;) {
        while (!word.empty() && (word.back() == ',' || word.back() == ']'))
            word.pop_back();
        if (word.size() > 1 && word.front() == '-')
            found.insert(word);
    }
    return found;
}

std::set<std::string> names_of(const std::vector<OptionEntry>& options) {
    std::set<std::string> names;
    for (const OptionEntry& option : options)
        names.insert(option.names.begin(), option.names.end());
    return names;
}

TEST(CommandTable, HasTheCommandsAndOptionsThatTheHelpNames) {
    const CommandTable known = table();
    EXPECT_EQ(names_of(known.options), dashed(test::help_of({})));
    std::vector<std::string> commands;
    for (const CommandEntry& command : known.commands) {
        commands.push_back(command.name);
        std::set<std::string> named = dashed(test::help_of({command.name}));
        EXPECT_EQ(names_of(command.options), named) << command.name;
    }
    std::ostringstream out, err;
    EXPECT_EQ(run({}, {.out = out, .err = err}), ExitCode::bad_input);
    EXPECT_THAT(err.str(),
                testing::HasSubstr(fmt::format("a command ({})", fmt::join(commands, ", "))));
}

TEST(CommandTable, KnowsWhatEveryOptionTakes) {
    std::map<Takes, std::set<std::string>> values;
    for (const CommandEntry& command : table().commands)
        for (const OptionEntry& option : command.options) {
            values[option.takes].insert(option.value);
            EXPECT_EQ(option.words.size() >= 2, option.takes == Takes::one_of_words)
                << option.names.back();
        }
    EXPECT_THAT(values[Takes::free_text], UnorderedElementsAre("POINTER=VALUE", "N", "MASS"));
    EXPECT_THAT(values[Takes::file], UnorderedElementsAre("TRIP", "DEM", "BOOK.html", "FILE"));
    EXPECT_THAT(values[Takes::folder], UnorderedElementsAre("FOLDER"));
    EXPECT_THAT(values[Takes::nothing], UnorderedElementsAre(""));
}

/// A shell with the completions in force, in a folder with files whose names ask for care.
class Completion : public testing::Test {
  protected:
    void SetUp() override {
        folder.write("trip.json", "{}");
        folder.write("two words.gpx", "");
        std::filesystem::create_directory(folder.path() / "tables");
    }

    /// What stands on the line after `typed` and the completion key, in each of `shell`'s lines.
    void expect_completed(test::ShellTerminal& shell) const {
        const std::vector<std::pair<std::string, std::string>> lines = {
            {"tumpline mod", "tumpline models "},
            {"tumpline --unit", "tumpline --units "},
            {"tumpline --units imp", "tumpline --units imperial "},
            {"tumpline plan tri", "tumpline plan trip.json "},
            {"tumpline --units metric plan tri", "tumpline --units metric plan trip.json "},
            {"tumpline plan trip.json --for", "tumpline plan trip.json --format "},
            {"tumpline plan trip.json --format j", "tumpline plan trip.json --format json "},
            {"tumpline track two", "tumpline track two\\ words.gpx "},
            {"tumpline export trip.json --csv t", "tumpline export trip.json --csv tables/"},
            {"tumpline book trip.json --out", "tumpline book trip.json --output "},
            {"tumpline pace --walking din", "tumpline pace --walking din-33466 "},
            {"tumpline pace --against tri", "tumpline pace --against trip.json "},
        };
        for (const auto& [typed, wanted] : lines)
            EXPECT_EQ(shell.completed(typed), wanted);
    }

    test::TempFolder folder;
};

/// What bash offers for a line of words, the last of them unfinished.
std::vector<std::string> offered_by_bash(const std::filesystem::path& script,
                                         const std::vector<std::string>& words) {
    std::string command = fmt::format("source '{}'; COMP_WORDS=(", script.string());
    for (const std::string& word : words)
        command += fmt::format("'{}' ", word);
    command += fmt::format("); COMP_CWORD={}; _tumpline; printf '%s\\n' \"${{COMPREPLY[@]}}\"",
                           words.size() - 1);
    std::vector<std::string> offered;
    std::istringstream lines(test::printed_by({"bash", "--norc", "-c", command}));
    for (std::string line; std::getline(lines, line);)
        if (!line.empty())
            offered.push_back(line);
    return offered;
}

TEST_F(Completion, BashOffersEveryCommandOptionAndWord) {
    const CommandTable known = table();
    const auto script = folder.write("tumpline", bash_completion(known));
    std::vector<std::string> commands;
    for (const CommandEntry& command : known.commands) {
        commands.push_back(command.name);
        EXPECT_THAT(offered_by_bash(script, {"tumpline", command.name, "-"}),
                    UnorderedElementsAreArray(names_of(command.options)));
        for (const OptionEntry& option : command.options)
            if (option.takes == Takes::one_of_words)
                for (const std::string& name : option.names) {
                    EXPECT_THAT(offered_by_bash(script, {"tumpline", command.name, name, ""}),
                                UnorderedElementsAreArray(option.words));
                    EXPECT_THAT(offered_by_bash(script, {"tumpline", command.name, name, "=", ""}),
                                UnorderedElementsAreArray(option.words));
                    EXPECT_THAT(offered_by_bash(script, {"tumpline", command.name, name, "="}),
                                UnorderedElementsAreArray(option.words));
                }
    }
    EXPECT_THAT(offered_by_bash(script, {"tumpline", ""}), UnorderedElementsAreArray(commands));
    EXPECT_THAT(offered_by_bash(script, {"tumpline", "-"}),
                UnorderedElementsAreArray(names_of(known.options)));
    EXPECT_THAT(offered_by_bash(script, {"tumpline", "--units", "metric", "pl"}),
                UnorderedElementsAre("plan"));
}

TEST_F(Completion, BashOffersNothingThatItCannotKnow) {
    const auto script = folder.write("tumpline", bash_completion(table()));
    EXPECT_THAT(offered_by_bash(script, {"tumpline", "fly"}), IsEmpty());
    EXPECT_THAT(offered_by_bash(script, {"tumpline", "odds", "trip.json", "--draws", ""}),
                IsEmpty());
    EXPECT_THAT(offered_by_bash(script, {"tumpline", "models", ""}), IsEmpty());
}

TEST_F(Completion, BashCompletesWhatIsTyped) {
    if (!test::have_terminal())
        GTEST_SKIP() << "no terminal can be had here (/dev/pts is not mounted)";
    const auto script = folder.write("tumpline", bash_completion(table()));
    test::ShellTerminal shell(test::Shell::bash, folder.path(), script);
    expect_completed(shell);
    EXPECT_EQ(shell.completed("tumpline plan --format=j"), "tumpline plan --format=json ");
}

TEST_F(Completion, ZshCompletesWhatIsTyped) {
    if (!test::have_terminal())
        GTEST_SKIP() << "no terminal can be had here (/dev/pts is not mounted)";
    if (!test::have("zsh"))
        GTEST_SKIP() << "zsh is not installed (Debian: zsh)";
    const auto script = folder.write("_tumpline", zsh_completion(table()));
    test::ShellTerminal shell(test::Shell::zsh, folder.path(), script);
    expect_completed(shell);
}

TEST_F(Completion, FishCompletesWhatIsTyped) {
    if (!test::have_terminal())
        GTEST_SKIP() << "no terminal can be had here (/dev/pts is not mounted)";
    if (!test::have("fish"))
        GTEST_SKIP() << "fish is not installed (Debian: fish)";
    const auto script = folder.write("tumpline.fish", fish_completion(table()));
    test::ShellTerminal shell(test::Shell::fish, folder.path(), script);
    expect_completed(shell);
}

TEST_F(Completion, ZshAndFishNameEveryCommandAndOption) {
    const CommandTable known = table();
    const std::string zsh = zsh_completion(known);
    const std::string fish = fish_completion(known);
    for (const CommandEntry& command : known.commands) {
        EXPECT_NE(zsh.find(fmt::format("\n        '{}:", command.name)), std::string::npos);
        EXPECT_NE(fish.find(fmt::format(" -a {} -d ", command.name)), std::string::npos);
        for (const OptionEntry& option : command.options) {
            EXPECT_NE(zsh.find(option.names.back() + (option.names.size() > 1 ? "}" : "[")),
                      std::string::npos)
                << option.names.back();
            EXPECT_NE(fish.find(fmt::format("'__fish_seen_subcommand_from {}'", command.name)),
                      std::string::npos);
            EXPECT_NE(fish.find(" -l " + option.names.back().substr(2)), std::string::npos);
        }
    }
}

} // namespace
} // namespace tumpline::cli
