/// What people see: each file of tests/screens holds commands and what they print, on both outputs,
/// as it would stand on a terminal. The shape:
///
///     # in sample-routes/NAME      (left out: the folder of the screens)
///     $ tumpline check bad-mass.json
///     bad-mass.json: /kit/3/mass: found 1.9, expected ...
///     [exit 2]
///
/// Commands run in this process, in a copy of the folder, without a shell; a word in single or
/// double quotes may hold spaces. The fenced blocks of README.md and docs/*.md that begin with such
/// a command (or "# in") are screens as well. A line "[...]" stands for any lines.
///
/// With TUMPLINE_REWRITE_SCREENS=1 in the environment the files are rewritten with what is printed
/// now (a block with "[...]" up to the first of them keeps its number of lines); the difference is
/// then reviewed like code.

#include "cli/app.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;

const fs::path root = TUMPLINE_SOURCE_DIR;

std::vector<std::string> screens() {
    std::vector<std::string> names;
    for (const fs::directory_entry& entry : fs::directory_iterator(root / "tests" / "screens"))
        if (entry.path().extension() == ".txt")
            names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

std::string read(const fs::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// Words of a command line; quotes keep spaces together.
std::vector<std::string> words(const std::string& line) {
    std::vector<std::string> words;
    std::string word;
    bool begun = false;
    char quote = 0;
    for (const char letter : line) {
        if (quote != 0 ? letter == quote : (letter == '"' || letter == '\'')) {
            quote = quote == 0 ? letter : '\0';
            begun = true;
        } else if (letter == ' ' && quote == 0) {
            if (begun)
                words.push_back(word);
            word.clear();
            begun = false;
        } else {
            word.push_back(letter);
            begun = true;
        }
    }
    if (begun)
        words.push_back(word);
    return words;
}

/// A copy of a folder to work in, gone afterwards.
class Workplace {
  public:
    explicit Workplace(const fs::path& folder) : before_(fs::current_path()) {
        std::string name = (fs::temp_directory_path() / "screens_XXXXXX").string();
        if (::mkdtemp(name.data()) == nullptr)
            throw std::runtime_error("no temporary folder");
        here_ = name;
        fs::copy(folder, here_, fs::copy_options::recursive);
        fs::current_path(here_);
    }

    Workplace(const Workplace&) = delete;
    Workplace& operator=(const Workplace&) = delete;

    ~Workplace() {
        fs::current_path(before_);
        fs::remove_all(here_);
    }

  private:
    fs::path before_, here_;
};

std::string printed(const std::string& command) {
    std::vector<std::string> arguments = words(command);
    if (arguments.empty() || arguments.front() != "tumpline")
        return "a screen's command begins with tumpline\n";
    arguments.erase(arguments.begin());
    std::ostringstream both;
    const ExitCode code = run(arguments, {.out = both, .err = both});
    std::string text = both.str();
    if (!text.empty() && text.back() != '\n')
        text += "\n[no line end]\n";
    if (code != ExitCode::done)
        text += "[exit " + std::to_string(static_cast<int>(code)) + "]\n";
    return text;
}

/// The screen with what its commands print now.
std::string shown_now(const std::string& screen) {
    std::istringstream lines(screen);
    std::string line;
    std::string now;
    std::vector<std::string> commands;
    fs::path folder = root / "tests" / "screens";
    while (std::getline(lines, line)) {
        if (line.starts_with("# in "))
            folder = root / line.substr(5);
        if (line.starts_with("# "))
            now += line + "\n";
        if (line.starts_with("$ "))
            commands.push_back(line.substr(2));
    }
    const Workplace workplace(folder);
    for (const std::string& command : commands)
        now += "$ " + command + "\n" + printed(command);
    return now;
}

/// Whether we rewrite.
bool rewriting() {
    return std::getenv("TUMPLINE_REWRITE_SCREENS") != nullptr;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

/// `now` with the lines left out that `screen` leaves out: it begins as `screen` does up to the
/// line "[...]", and ends as it does after it.
std::string abridged(const std::string& screen, const std::string& now) {
    const std::vector<std::string> shown = lines_of(screen);
    const auto cut = std::find(shown.begin(), shown.end(), "[...]");
    if (cut == shown.end())
        return now;
    const auto before = static_cast<std::size_t>(cut - shown.begin());
    const std::size_t after = shown.size() - before - 1;
    const std::vector<std::string> whole = lines_of(now);
    std::string text;
    for (std::size_t i = 0; i < whole.size(); ++i) {
        if (i < before || i + after >= whole.size())
            text += whole[i] + "\n";
        else if (i == before)
            text += "[...]\n";
    }
    return text;
}

class Screen : public testing::TestWithParam<std::string> {};

TEST_P(Screen, ShowsWhatItShowed) {
    const fs::path file = root / "tests" / "screens" / (GetParam() + ".txt");
    const std::string screen = read(file);
    const std::string now = abridged(screen, shown_now(screen));
    if (rewriting())
        std::ofstream(file, std::ios::binary) << now;
    else
        EXPECT_EQ(screen, now);
}

std::string as_test_name(std::string name) {
    std::replace_if(
        name.begin(), name.end(), [](char letter) { return std::isalnum(letter) == 0; }, '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Screens, Screen, testing::ValuesIn(screens()), [](const auto& screen) {
    return as_test_name(screen.param);
});

/// Pages with screens in them, from the root.
std::vector<std::string> pages() {
    std::vector<std::string> names;
    const auto look = [&](const fs::path& page) {
        const std::string text = read(page);
        if (text.find("```\n$ tumpline") != text.npos || text.find("```\n# in ") != text.npos)
            names.push_back(fs::relative(page, root).string());
    };
    look(root / "README.md");
    for (const fs::directory_entry& entry : fs::directory_iterator(root / "docs"))
        if (entry.path().extension() == ".md")
            look(entry.path());
    std::sort(names.begin(), names.end());
    return names;
}

class Page : public testing::TestWithParam<std::string> {};

TEST_P(Page, ShowsWhatIsPrinted) {
    const fs::path file = root / GetParam();
    std::string block;
    std::string now;
    bool inside = false;
    for (const std::string& line : lines_of(read(file))) {
        if (line.starts_with("```")) {
            if (inside && (block.starts_with("$ tumpline") || block.starts_with("# in "))) {
                const std::string printed_now = abridged(block, shown_now(block));
                if (!rewriting()) {
                    EXPECT_EQ(block, printed_now);
                }
                block = printed_now;
            }
            now += block + line + "\n";
            block.clear();
            inside = !inside;
        } else if (inside)
            block += line + "\n";
        else
            now += line + "\n";
    }
    EXPECT_FALSE(inside) << "a block has no end";
    if (rewriting())
        std::ofstream(file, std::ios::binary) << now;
}

INSTANTIATE_TEST_SUITE_P(Pages, Page, testing::ValuesIn(pages()), [](const auto& page) {
    return as_test_name(page.param);
});

} // namespace
} // namespace tumpline::cli
