/// Whatever is asked, what was read lies there as before, and nothing new beside it.

#include "cli/app.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;

std::map<std::string, std::string> all_files(const fs::path& folder) {
    std::map<std::string, std::string> files;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder))
        if (entry.is_regular_file())
            files[fs::relative(entry.path(), folder).string()] = test::text_of(entry.path());
    return files;
}

TEST(Sources, AreByteForByteTheSameAfterEveryCommand) {
    const test::TempFolder folder;
    const test::TempFolder results;
    fs::copy(test::root / "sample-routes" / "saddle", folder.path());
    const std::map<std::string, std::string> before = all_files(folder.path());
    ASSERT_TRUE(before.contains("saddle-dem.tif"));
    ASSERT_TRUE(before.contains("saddle-ground.geojson"));
    const std::string trip = (folder.path() / "trip.json").string();
    const auto into = [&](const char* name) { return (results.path() / name).string(); };
    const std::vector<std::vector<std::string>> commands{
        {"check", trip},
        {"plan", trip},
        {"plan", trip, "--format", "json"},
        {"pack", trip},
        {"nights", trip},
        {"odds", trip, "--draws", "5"},
        {"compare", trip, trip},
        {"book", trip, "-o", into("book.html")},
        {"export",
         trip,
         "--gpx",
         into("a.gpx"),
         "--geojson",
         into("a.geojson"),
         "--csv",
         into("csv")},
        {"export", trip, "--gpkg", into("a.gpkg"), "--kml", into("a.kml")},
        {"track",
         (folder.path() / "saddle.gpx").string(),
         "--elevation",
         (folder.path() / "saddle-dem.tif").string()},
        {"new",
         (folder.path() / "saddle.gpx").string(),
         "--elevation",
         (folder.path() / "saddle-dem.tif").string(),
         "-o",
         into("new.json")},
        {"pace", (folder.path() / "recorded.gpx").string()}};
    for (const std::vector<std::string>& command : commands) {
        const test::Said said = test::say(command);
        EXPECT_EQ(said.code, ExitCode::done) << command[0] << ": " << said.err;
        EXPECT_EQ(all_files(folder.path()), before) << command[0];
    }
}

} // namespace
} // namespace tumpline::cli
