/// Trips that ask much of whoever writes them to a file: names that try to break out, no heights,
/// one leg, sixty days, nothing but what is needed; and disks that are full. Each goes through the
/// whole program, from its files to the files that it writes.

#include "cli/app.h"
#include "cli/export/export_csv.h"
#include "tests/support/common_user.h"
#include "tests/support/said.h"
#include "tests/support/shell_terminal.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <sys/mount.h>
#include <sys/resource.h>

#include <cerrno>
#include <csignal>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using test::Said;
using test::say;
using test::text_of;
using testing::HasSubstr;
using testing::Not;
using Json = nlohmann::json;

/// A track of `points` points, 90 m apart, to the north-east; without heights.
std::string flat_track(int points) {
    std::string text = "<gpx version=\"1.1\" creator=\"test\"><trk><name>way</name><trkseg>\n";
    for (int i = 0; i < points; ++i)
        text += fmt::format(
            "<trkpt lat=\"{:.5f}\" lon=\"{:.5f}\"/>\n", 63.0 + 0.0007 * i, 1.0 + 0.0008 * i);
    return text + "</trkseg></trk></gpx>\n";
}

/// No more than a trip file must have.
Json bare_trip() {
    return {{"tumpline", 1},
            {"route", {{"tracks", {"way.gpx"}}}},
            {"party", {{{"name", "Ada"}, {"body", "68 kg"}}}}};
}

/// Names that a document must keep in, and yet show.
const std::vector<std::string>& hard_names() {
    static const std::vector<std::string> names = {
        "<script>window.broken=1</script> & <b>bold</b>",
        "\"quoted\" 'twice' `back` \\ %s {{trip_name}} {{{style}}} </style>",
        "\u05E0\u05D7\u05DC \u0648\u0627\u062F\u064A \u202Eleft",
        std::string(200, 'W'),
        "=HYPERLINK(\"x\"), -2; ]]> <!-- -->"};
    return names;
}

/// The name as exported files have it: what turns the text after it round is left out.
std::string without_turning(std::string name) {
    const std::size_t at = name.find("\u202E");
    return at == std::string::npos ? name : name.replace(at, 3, "\uFFFD");
}

class HardTrip : public testing::Test {
  protected:
    void SetUp() override { folder.write("way.gpx", flat_track(120)); }

    /// Everything that the program writes of `trip`; returns what it answered.
    ExitCode write_all(const Json& trip) {
        const fs::path file = folder.write("trip.json", trip.dump());
        const Said plan = say({"plan", file, "--show", "all"});
        const Said book = say({"book", file, "-o", path("trip.html"), "--overwrite"});
        const Said exported = say({"export",
                                   file,
                                   "--gpx",
                                   path("trip.gpx"),
                                   "--geojson",
                                   path("trip.geojson"),
                                   "--csv",
                                   path("tables"),
                                   "--overwrite"});
        EXPECT_EQ(plan.err, "");
        EXPECT_EQ(book.code, plan.code) << book.err;
        EXPECT_EQ(exported.code, plan.code) << exported.err;
        shown = plan.out;
        return plan.code;
    }

    void expect_whole_files() const {
        const std::string html = text_of(path("trip.html"));
        EXPECT_TRUE(html.starts_with("<!DOCTYPE html>"));
        EXPECT_TRUE(html.ends_with("</html>\n"));
        EXPECT_THAT(html, Not(HasSubstr("<script>window.broken")));
        EXPECT_EQ(Json::parse(text_of(path("trip.geojson"))).at("type"), "FeatureCollection");
        for (const std::string& table : csv_table_names())
            EXPECT_TRUE(text_of(fs::path(path("tables")) / table).ends_with("\r\n")) << table;
        const std::string gpx = text_of(path("trip.gpx"));
        EXPECT_TRUE(gpx.ends_with("</gpx>\n"));
        if (test::have("xmllint")) {
            const std::string said =
                test::printed_by({"sh",
                                  "-c",
                                  "exec xmllint --noout --schema '" TUMPLINE_SOURCE_DIR
                                  "/tests/published/gpx-1.1-check.xsd' '" +
                                      path("trip.gpx") + "' 2>&1"});
            EXPECT_EQ(said, path("trip.gpx") + " validates\n");
        }
    }

    [[nodiscard]] std::string path(const std::string& name) const {
        return (folder.path() / name).string();
    }

    test::TempFolder folder;
    std::string shown; ///< the plan as text
};

TEST_F(HardTrip, WithNothingButWhatIsNeededGoesThroughEveryCommand) {
    // Without a time zone the text and the book were a fault of the program once.
    ASSERT_EQ(write_all(bare_trip()), ExitCode::done);
    expect_whole_files();
    EXPECT_THAT(shown, HasSubstr("times of UTC"));
    EXPECT_THAT(shown, HasSubstr("/time_zone"));
    const std::string file = path("trip.json");
    const std::vector<std::vector<std::string>> commands = {
        {"check", file},
        {"pack", file},
        {"pack", file, "--format", "json"},
        {"plan", file, "--format", "json"},
        {"plan", file, "--format", "csv"},
        {"nights", file},
        {"nights", file, "--format", "json"},
        {"odds", file, "--draws", "20"},
        {"odds", file, "--draws", "20", "--format", "json"},
        {"compare", file, file},
        {"compare", file, "--set", "/party/0/pace=1.1", "--format", "json"}};
    for (const std::vector<std::string>& command : commands) {
        const Said said = say(command);
        EXPECT_EQ(said.code, ExitCode::done) << command[0] << ": " << said.err;
        EXPECT_NE(said.out, "") << command[0];
    }
}

TEST_F(HardTrip, NamesStandInEveryFileAndBreakNone) {
    for (const std::string& name : hard_names()) {
        SCOPED_TRACE(name);
        Json trip = bare_trip();
        trip["name"] = name;
        trip["party"][0]["name"] = name;
        trip["route"]["legs"] = {{{"name", name}, {"track", "way"}}};
        trip["route"]["places"] = {{{"name", name}, {"kind", "camp"}, {"at", {1.04, 63.035}}}};
        trip["craft"] = {{{"name", name}, {"mass", "3 kg"}, {"crew", {name}}}};
        trip["kit"] = {{{"item", name}, {"mass", "1 kg"}, {"for", name}, {"in", name}}};
        trip["days"]["nights"] = {name};
        trip["appointments"] = {{{"what", name}, {"at", name}, {"day", 1}, {"by", "18:00"}}};
        trip["contact"]["text"] = name + "\n" + name;
        ASSERT_EQ(write_all(trip), ExitCode::done);
        expect_whole_files();
        // every name comes back whole from what programs read
        const Json exported = Json::parse(text_of(path("trip.geojson")));
        std::set<std::string> named;
        for (const Json& feature : exported.at("features"))
            named.insert(feature.at("properties").at("name").get<std::string>());
        EXPECT_THAT(named, testing::Contains(without_turning(name)));
        const Json plan = Json::parse(say({"plan", path("trip.json"), "--format", "json"}).out);
        EXPECT_EQ(plan.at("legs").at(0).at("loads").at(0).at("member"), name);
    }
}

TEST_F(HardTrip, ANameOfTwoLinesIsAnErrorAndNothingIsWritten) {
    for (const char* line_end : {"\n", "\r\n", "\t", "\x01"}) {
        Json trip = bare_trip();
        trip["party"][0]["name"] = std::string("two") + line_end + "lines";
        const fs::path file = folder.write("trip.json", trip.dump());
        const Said said = say({"book", file, "-o", path("trip.html")});
        EXPECT_EQ(said.code, ExitCode::bad_input);
        EXPECT_THAT(said.err, HasSubstr("/party/0/name"));
        EXPECT_EQ(said.err.find('\n'), said.err.size() - 1);
        EXPECT_FALSE(fs::exists(path("trip.html")));
    }
}

TEST_F(HardTrip, OfSixtyDaysIsWhole) {
    folder.write("way.gpx", flat_track(7000)); // some 610 km
    Json trip = bare_trip();
    trip["days"] = {{"hours", 2.6}};
    trip["food"] = {{"ration", "600 g"}};
    for (int i = 1; i < 10; ++i) // food for a week at a time
        trip["route"]["places"].push_back(
            {{"name", fmt::format("shop {}", i)},
             {"kind", "resupply"},
             {"at", {1.0 + 0.0008 * 700 * i, 63.0 + 0.0007 * 700 * i}}});
    const ExitCode code = write_all(trip);
    EXPECT_EQ(code, ExitCode::done) << shown.substr(0, 2000);
    expect_whole_files();
    const Json plan = Json::parse(say({"plan", path("trip.json"), "--format", "json"}).out);
    EXPECT_GE(plan.at("totals").at("days").get<int>(), 55);
    EXPECT_LE(plan.at("totals").at("days").get<int>(), 70);
    EXPECT_LT(fs::file_size(path("trip.html")), 1'500'000U);
}

TEST_F(HardTrip, OfAFewStepsIsWhole) {
    folder.write("way.gpx", flat_track(2));
    ASSERT_EQ(write_all(bare_trip()), ExitCode::done);
    expect_whole_files();
}

TEST_F(HardTrip, WithoutHeightsSaysSoInTheBookAndLeavesThemOutOfTheFiles) {
    ASSERT_EQ(write_all(bare_trip()), ExitCode::done);
    EXPECT_THAT(text_of(path("trip.html")), HasSubstr("Heights are unknown"));
    EXPECT_THAT(text_of(path("trip.gpx")), Not(HasSubstr("<ele>")));
    const Json exported = Json::parse(text_of(path("trip.geojson")));
    EXPECT_EQ(exported.at("features").at(0).at("geometry").at("coordinates").at(0).size(), 2U);
}

/// Runs `command` where every write beyond a few kilobytes fails; `outputs` must then be what they
/// were, and nothing else be in their folder.
class FullDisk : public HardTrip {
  protected:
    [[nodiscard]] static std::set<fs::path> files_in(const fs::path& place) {
        std::set<fs::path> files;
        for (const fs::directory_entry& entry : fs::recursive_directory_iterator(place))
            files.insert(entry.path());
        return files;
    }

    [[nodiscard]] std::vector<std::vector<std::string>> commands(const fs::path& place) const {
        const std::string trip = path("trip.json");
        return {{"book", trip, "-o", place / "trip.html"},
                {"export", trip, "--csv", place / "tables", "--geojson", place / "trip.geojson"},
                {"export", trip, "--gpx", place / "trip.gpx", "--geojson", place / "trip.geojson"},
                {"new", path("way.gpx"), "-o", place / "new.json"}};
    }
};

TEST_F(FullDisk, LeavesWhatWasThereAndNothingElse) {
    folder.write("trip.json", bare_trip().dump());
    const fs::path place = folder.path() / "out";
    fs::create_directory(place);
    for (const char* name : {"trip.html", "trip.gpx", "trip.geojson"})
        std::ofstream(place / name) << "old";
    const std::set<fs::path> before = files_in(place);

    // A limit on the size of files stands for a disk that fills up half way. Of the GPX and the
    // tables at least the first would still fit.
    struct rlimit usual {};

    ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &usual), 0);
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    for (const std::vector<std::string>& command : commands(place)) {
        struct rlimit small = usual;
        small.rlim_cur = 2500;
        ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &small), 0);
        std::vector<std::string> words = command;
        if (command[0] != "new")
            words.emplace_back("--overwrite");
        const Said said = say(words);
        ::setrlimit(RLIMIT_FSIZE, &usual);
        EXPECT_EQ(said.code, ExitCode::bad_input) << command[0] << said.out;
        EXPECT_THAT(said.err, HasSubstr("File too large")) << command[0];
        EXPECT_EQ(files_in(place), before) << command[0];
        for (const char* name : {"trip.html", "trip.gpx", "trip.geojson"})
            EXPECT_EQ(text_of(place / name), "old") << command[0] << " " << name;
    }
    std::signal(SIGXFSZ, handler);
}

TEST_F(FullDisk, OnTheSecondFileLeavesTheFirstUnwrittenToo) { // it was written once
    folder.write("way.gpx", flat_track(2));
    Json party = bare_trip();
    for (int i = 0; i < 12; ++i) // each has columns of its own in the GeoJSON, none in the GPX
        party["party"].push_back({{"name", fmt::format("member {}", i)}, {"body", "70 kg"}});
    const std::string trip = folder.write("trip.json", party.dump());
    ASSERT_EQ(say({"export", trip, "--gpx", path("1.gpx"), "--geojson", path("1.geojson")}).code,
              ExitCode::done);
    const auto small_file = fs::file_size(path("1.gpx"));
    const auto large_file = fs::file_size(path("1.geojson"));
    ASSERT_LT(small_file + 50, large_file);

    struct rlimit usual {};

    ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &usual), 0);
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    struct rlimit small = usual;
    small.rlim_cur = (small_file + large_file) / 2;
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &small), 0);
    const Said said = say({"export",
                           trip,
                           "--gpx",
                           path("2.gpx"),
                           "--geojson",
                           path("2.geojson"),
                           "--csv",
                           path("t")});
    ::setrlimit(RLIMIT_FSIZE, &usual);
    std::signal(SIGXFSZ, handler);
    EXPECT_EQ(said.code, ExitCode::bad_input);
    EXPECT_THAT(said.err, HasSubstr("2.geojson"));
    for (const char* name : {"2.gpx", "2.geojson", "t"})
        EXPECT_FALSE(fs::exists(path(name))) << name;
}

TEST_F(FullDisk, IsToldWithAdvice) {
    folder.write("trip.json", bare_trip().dump());
    const fs::path place = folder.path() / "small";
    fs::create_directory(place);
    if (::mount("tmpfs", place.c_str(), "tmpfs", 0, "size=4k,nr_inodes=20") != 0)
        GTEST_SKIP() << "a small disk cannot be made here: " << std::strerror(errno);
    for (const std::vector<std::string>& command : commands(place)) {
        const Said said = say(command);
        EXPECT_EQ(said.code, ExitCode::bad_input) << command[0];
        EXPECT_THAT(said.err, HasSubstr("make room on the disk")) << command[0];
        EXPECT_EQ(files_in(place), std::set<fs::path>()) << command[0];
    }
    ::umount(place.c_str());
}

TEST_F(FullDisk, IsNoOtherThanAFolderThatOneMayNotWriteTo) {
    folder.write("trip.json", bare_trip().dump());
    const fs::path place = folder.path() / "closed";
    fs::create_directory(place);
    fs::permissions(place, fs::perms(0555));
    for (const std::vector<std::string>& command : commands(place))
        EXPECT_TRUE(test::holds_for_a_common_user([&] {
            const Said said = say(command);
            return said.code == ExitCode::bad_input &&
                   said.err.find("choose a folder that you may write to") != std::string::npos;
        })) << command[0];
    fs::permissions(place, fs::perms::owner_all);
    EXPECT_EQ(files_in(place), std::set<fs::path>());
}

} // namespace
} // namespace tumpline::cli
