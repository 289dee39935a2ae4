#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;

/// The Markdown files that people read: those at the top, in docs/ and beside the sample routes.
std::vector<fs::path> papers() {
    const fs::path root = TUMPLINE_SOURCE_DIR;
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

std::string text_of(const fs::path& file) {
    std::ifstream in(file);
    return {std::istreambuf_iterator<char>(in), {}};
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
    const std::string readme = text_of(fs::path(TUMPLINE_SOURCE_DIR) / "README.md");
    EXPECT_TRUE(readme.starts_with("# tumpline\n\nYou lead a trip of several days"));
}

} // namespace
} // namespace tumpline::cli
