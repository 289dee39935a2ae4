#include "planner/trip/problem_lines.h"

#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

std::string place_of(const std::string& file, const std::string& place) {
    return with_lines({{.file = file, .place = place, .found = {}, .expected = {}, .advice = {}}})
        .front()
        .place;
}

TEST(ProblemLines, StandBesideAPointer) {
    const test::TempFolder folder;
    folder.write("t.json", "{\n \"a\": 1,\n \"b\": [\n  {\"c/d\": 2},\n  3]\n}");
    const std::string file = (folder.path() / "t.json").string();
    EXPECT_EQ(place_of(file, "/a"), "/a (line 2)");
    EXPECT_EQ(place_of(file, "/b/0/c~1d"), "/b/0/c~1d (line 4)");
    EXPECT_EQ(place_of(file, "/b/1"), "/b/1 (line 5)");
}

TEST(ProblemLines, AreThoseOfTheFileAndNotOfAValueSetInItsPlace) {
    const test::TempFolder folder;
    folder.write("t.json", "{\n \"a\": \"8 hours\",\n \"b\": 7 }");
    const std::string file = (folder.path() / "t.json").string();
    const auto place = [&](const std::string& at, const std::string& found) {
        return with_lines(
                   {{.file = file, .place = at, .found = found, .expected = {}, .advice = {}}})
            .front()
            .place;
    };
    EXPECT_EQ(place("/a", "\"8 hours\""), "/a (line 2)");
    EXPECT_EQ(place("/a", "\"9 hours\""), "/a");
    EXPECT_EQ(place("/a", "8"), "/a");
    EXPECT_EQ(place("/b", "7"), "/b (line 3)");
    EXPECT_EQ(place("/b", "\"7\""), "/b");
    EXPECT_EQ(place("/b", "an unknown key"), "/b (line 3)");
}

TEST(ProblemLines, AreLeftOutWhereThereAreNone) {
    const test::TempFolder folder;
    folder.write("t.json", "{\"a\": [1]}");
    folder.write("broken.json", "{\"a\": 1");
    const std::string file = (folder.path() / "t.json").string();
    EXPECT_EQ(place_of(file, "/b"), "/b") << "set on the command line, perhaps";
    EXPECT_EQ(place_of(file, "/a/1"), "/a/1");
    EXPECT_EQ(place_of(file, "band 1"), "band 1");
    EXPECT_EQ(place_of((folder.path() / "broken.json").string(), "/a"), "/a");
    EXPECT_EQ(place_of((folder.path() / "none.json").string(), "/a"), "/a");
    EXPECT_EQ(place_of(folder.path().string(), "/a"), "/a");
}

} // namespace
} // namespace tumpline::planner
