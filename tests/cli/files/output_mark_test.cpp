#include "cli/files/output_mark.h"

#include "tests/support/source_tree.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;

class OutputMark : public testing::Test {
  protected:
    void SetUp() override {
        std::string name = (fs::temp_directory_path() / "output_mark_XXXXXX").string();
        ASSERT_NE(::mkdtemp(name.data()), nullptr);
        folder_ = name;
    }

    void TearDown() override { fs::remove_all(folder_); }

    [[nodiscard]] Authorship of(const std::string& content) const {
        std::ofstream(folder_ / "file", std::ios::binary) << content;
        return authorship_of(folder_ / "file");
    }

    fs::path folder_;
};

TEST_F(OutputMark, IsFnv1aOfTheFileWithTheBlankMark) {
    // Published values of FNV-1a, 64 bits: "" is cbf29ce484222325, "a" af63dc4c8601ec8c. The digest
    // of the blank mark alone was worked out step by step outside this project.
    const std::string mark = marked(std::string(blank_mark));
    EXPECT_EQ(mark.size(), blank_mark.size());
    EXPECT_EQ(mark, "tumpline-digest ae1cab6ad98065b0");
}

TEST_F(OutputMark, TellsOursFromChangedAndFromOthers) {
    const std::string ours = marked("<!-- " + std::string(blank_mark) + " -->\n<gpx>1</gpx>\n");
    EXPECT_EQ(of(ours), Authorship::ours);
    std::string changed = ours;
    changed[ours.find('1', ours.find("<gpx>"))] = '2';
    EXPECT_EQ(of(changed), Authorship::changed);
    EXPECT_EQ(of(ours + " "), Authorship::changed);
    EXPECT_EQ(of(ours.substr(0, ours.size() - 1)), Authorship::changed);
    EXPECT_EQ(of("<gpx>1</gpx>"), Authorship::other);
    EXPECT_EQ(of(""), Authorship::other);
    EXPECT_EQ(of("tumpline-digest 12"), Authorship::other);
    EXPECT_EQ(authorship_of(folder_ / "nothing"), Authorship::none);
}

TEST_F(OutputMark, ANameThatLooksLikeAMarkStaysAsItIs) {
    const std::string name(blank_mark);
    const std::string ours = marked(std::string(blank_mark) + " named " + name);
    EXPECT_TRUE(ours.ends_with(" named " + name));
    EXPECT_EQ(of(ours), Authorship::ours);
}

} // namespace
} // namespace tumpline::cli
