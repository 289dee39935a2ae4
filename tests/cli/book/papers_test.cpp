#include "cli/app.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <iterator>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using test::root;
using test::text_of;

/// The Markdown files that people read: those at the top, in docs/ and beside the sample routes.
std::vector<fs::path> papers() {
    std::vector<fs::path> found;
    for (const fs::directory_entry& entry : fs::directory_iterator(root))
        if (entry.path().extension() == ".md")
            found.push_back(entry.path());
    for (const char* folder : {"docs", "sample-routes"})
        if (fs::exists(root / folder))
            for (const fs::directory_entry& entry : fs::recursive_directory_iterator(root / folder))
                if (entry.path().extension() == ".md")
                    found.push_back(entry.path());
    return found;
}

TEST(Papers, EveryLinkToAFileOfOursLeadsThere) {
    const std::regex link(R"(\]\(([^)#\s]+)[^)]*\))");
    std::size_t followed = 0;
    for (const fs::path& paper : papers()) {
        const std::string text = text_of(paper);
        for (std::sregex_iterator at(text.begin(), text.end(), link), end; at != end; ++at) {
            const std::string target = (*at)[1];
            if (target.find("://") != std::string::npos || target.starts_with("mailto:"))
                continue;
            EXPECT_TRUE(fs::exists(paper.parent_path() / target)) << paper << " -> " << target;
            ++followed;
        }
    }
    EXPECT_GT(followed, 0U);
}

TEST(Papers, ReadmeOpensWithWhoseJobItIs) {
    const std::string readme = text_of(test::root / "README.md");
    EXPECT_TRUE(readme.starts_with("# tumpline\n\nFor whoever leads a trip of several days"));
}

/// The lines of the first console block of `text`, without the command.
std::vector<std::string> shown(const std::string& text) {
    std::istringstream lines(text.substr(text.find("```console")));
    std::vector<std::string> found;
    std::string line;
    std::getline(lines, line); // the fence
    std::getline(lines, line); // the command
    while (std::getline(lines, line) && line != "```")
        found.push_back(line);
    return found;
}

TEST(Papers, ReadmeShowsWhatThePlanPrints) {
    std::ostringstream out, err;
    ASSERT_EQ(run({"plan", (root / "sample-routes/saddle/trip.json").string()}, {out, err}),
              ExitCode::done);
    const std::string plan = out.str();
    std::size_t at = 0; // each line must follow the one before, but where lines are left out
    std::size_t compared = 0;
    for (const std::string& line : shown(text_of(root / "README.md"))) {
        if (line == "…") {
            at = std::string::npos;
            continue;
        }
        const std::size_t here = plan.find(line + "\n", at == std::string::npos ? 0 : at);
        ASSERT_NE(here, std::string::npos) << "the plan does not print: " << line;
        if (at != std::string::npos) {
            EXPECT_EQ(here, at) << "not in the place where the plan prints it: " << line;
        }
        at = here + line.size() + 1;
        ++compared;
    }
    EXPECT_GT(compared, 20U);
}

} // namespace
} // namespace tumpline::cli
