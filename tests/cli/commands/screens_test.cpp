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
/// Where a page has the line "<!-- one after another -->", its screens share one folder, and
/// between them the reader edits files: a block "```diff" names a file, then shows lines to take
/// out ("-", each of which must be there once) and to write in their place ("+").
///
/// With TUMPLINE_REWRITE_SCREENS=1 in the environment the files are rewritten with what is printed
/// now (a block with "[...]" up to the first of them keeps its number of lines); the difference is
/// then reviewed like code.

#include "cli/app.h"
#include "tests/support/source_tree.h"
#include "tests/support/text_lines.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using test::lines_of;
using test::root;
using test::text_of;

std::vector<std::string> screens() {
    std::vector<std::string> names;
    for (const fs::directory_entry& entry : fs::directory_iterator(root / "tests" / "screens"))
        if (entry.path().extension() == ".txt")
            names.push_back(entry.path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
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

/// The folder that a screen is shown in, if it names one.
std::optional<fs::path> folder_of(const std::string& screen) {
    std::istringstream lines(screen);
    for (std::string line; std::getline(lines, line);)
        if (line.starts_with("# in "))
            return root / line.substr(5);
    return std::nullopt;
}

/// The screen with what its commands print now, in the folder that one is in.
std::string shown_here(const std::string& screen) {
    std::istringstream lines(screen);
    std::string now;
    std::string shown;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("# "))
            now += line + "\n";
        if (line.starts_with("$ "))
            shown += line + "\n" + printed(line.substr(2));
    }
    return now + shown;
}

/// The screen with what its commands print now, in a folder of its own.
std::string shown_now(const std::string& screen) {
    const Workplace workplace(folder_of(screen).value_or(root / "tests" / "screens"));
    return shown_here(screen);
}

/// Whether we rewrite.
bool rewriting() {
    return std::getenv("TUMPLINE_REWRITE_SCREENS") != nullptr;
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
    const std::string screen = text_of(file);
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
        const std::string text = text_of(page);
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

/// Takes the lines of a block "```diff" that begin with "-" out of the file that it names, and
/// writes those with "+" where they stood.
void edit(const std::string& block) {
    const std::vector<std::string> lines = lines_of(block);
    const fs::path file = lines.at(0);
    std::vector<std::string> text = lines_of(text_of(file));
    ASSERT_FALSE(text.empty()) << file;
    std::size_t at = 0; // where the last line taken out stood
    for (std::size_t i = 1; i < lines.size(); ++i) {
        const std::string line = lines[i].substr(1);
        if (lines[i].front() == '-') {
            ASSERT_EQ(std::count(text.begin(), text.end(), line), 1) << line;
            const auto found = std::find(text.begin(), text.end(), line);
            at = static_cast<std::size_t>(found - text.begin());
            text.erase(found);
        } else {
            ASSERT_EQ(lines[i].front(), '+') << lines[i];
            text.insert(text.begin() + static_cast<std::ptrdiff_t>(at++), line);
        }
    }
    std::ofstream out(file, std::ios::binary);
    for (const std::string& line : text)
        out << line << "\n";
}

class Page : public testing::TestWithParam<std::string> {
  protected:
    /// What the block's commands print now.
    std::string shown(const std::string& block) {
        if (!together_)
            return shown_now(block);
        if (const std::optional<fs::path> folder = folder_of(block)) {
            workplace_.reset(); // goes back before it goes elsewhere
            workplace_.emplace(*folder);
        }
        return shown_here(block);
    }

    bool together_ = false; ///< one after another in one folder
    std::optional<Workplace> workplace_;
};

TEST_P(Page, ShowsWhatIsPrinted) {
    const fs::path file = root / GetParam();
    const std::string page = text_of(file);
    together_ = page.find("<!-- one after another -->\n") != std::string::npos;
    std::string block;
    std::string kind;
    std::string now;
    bool inside = false;
    for (const std::string& line : lines_of(page)) {
        if (line.starts_with("```")) {
            if (inside && (block.starts_with("$ tumpline") || block.starts_with("# in "))) {
                const std::string printed_now = abridged(block, shown(block));
                if (!rewriting()) {
                    EXPECT_EQ(block, printed_now);
                }
                block = printed_now;
            } else if (inside && together_ && kind == "```diff") {
                ASSERT_NO_FATAL_FAILURE(edit(block));
            }
            now += block + line + "\n";
            block.clear();
            kind = line;
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
