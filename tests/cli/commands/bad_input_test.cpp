/// Bad input of every kind, through the door that people use: each command answers exit code 2 with
/// the file's name within two seconds, and writes nothing.

#include "cli/app.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;

const fs::path spoilt = test::root / "tests" / "spoilt";

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

constexpr const char* sound_track =
    "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"c\"><trk><name>A</name><trkseg>\n"
    "<trkpt lat=\"63.40\" lon=\"1.5\"><ele>10</ele></trkpt>\n"
    "<trkpt lat=\"63.45\" lon=\"1.5\"><ele>90</ele></trkpt>\n</trkseg></trk></gpx>\n";

/// What stands in a folder and below, with its bytes.
std::map<std::string, std::string> contents(const fs::path& folder) {
    std::map<std::string, std::string> all;
    std::error_code loops;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder))
        all[entry.path().string()] =
            entry.is_regular_file(loops) && access(entry.path().c_str(), R_OK) == 0
                ? bytes_of(entry.path())
                : std::string();
    return all;
}

/// Which input of a trip is spoilt.
enum class Role { trip, track, raster };

/// A folder with a trip file that is sound but for one file.
class BadTrip {
  public:
    BadTrip(Role role, const std::string& name) : bad_(folder_.path() / name) {
        static_cast<void>(folder_.write("sound.gpx", sound_track));
        trip_ = role == Role::trip ? bad_ : folder_.path() / "trip.json";
        if (role == Role::trip)
            return;
        const std::string track = role == Role::track ? name : "sound.gpx";
        const std::string raster =
            role == Role::raster ? fmt::format(", \"elevation\": [\"{}\"]", name) : "";
        static_cast<void>(folder_.write(
            "trip.json",
            fmt::format("{{\"tumpline\": 1, \"route\": {{\"tracks\": [\"{}\"]{}}}, \"party\": "
                        "[{{\"name\": \"Ada\", \"body\": \"70 kg\"}}]}}\n",
                        track,
                        raster)));
    }

    [[nodiscard]] const test::TempFolder& folder() const { return folder_; }

    [[nodiscard]] const fs::path& bad() const { return bad_; }

    /// Every command that would write or print a plan refuses.
    void expect_refused() const {
        const std::map<std::string, std::string> before = contents(folder_.path());
        const std::string out_file = (folder_.path() / "out").string();
        const std::vector<std::vector<std::string>> commands = {
            {"plan", trip_.string()},
            {"check", trip_.string()},
            {"export", trip_.string(), "--gpx", out_file + ".gpx", "--csv", out_file},
            {"book", trip_.string(), "-o", out_file + ".html"}};
        for (const std::vector<std::string>& command : commands) {
            SCOPED_TRACE(command.front());
            std::ostringstream out, err;
            EXPECT_EQ(run(command, {.out = out, .err = err}), ExitCode::bad_input);
            const std::string said = command.front() == "check" ? out.str() + err.str() : err.str();
            EXPECT_NE(said.find(bad_.filename().string()), std::string::npos) << said;
            EXPECT_NE(said.find("expected"), std::string::npos) << said;
            EXPECT_LT(said.size(), 20'000U);
            if (command.front() != "check") {
                EXPECT_EQ(out.str(), "");
            }
        }
        EXPECT_EQ(contents(folder_.path()), before) << "something was written";
    }

  private:
    test::TempFolder folder_;
    fs::path bad_;
    fs::path trip_;
};

void expect_refused(Role role, const fs::path& file) {
    SCOPED_TRACE(file);
    const BadTrip trip(role, file.filename().string());
    fs::copy_file(file, trip.bad());
    trip.expect_refused();
}

/// Spoilt files of a folder that are really read, with their reasons.
const std::set<std::string> readable = {
    "utf-16.gpx",               // declared as such, and so it is
    "windows-1252.gpx",         // the same
    "heights-of-all-kinds.gpx", // heights that are none are left out and counted
    "swapped.gpx",              // latitude and longitude both lie on Earth
    "null-coordinates.geojson", // the other lines of the file are sound
    "latin-1.geojson",          // only a name, which is repaired
    "huge-numbers.geojson"};

bool is_track(const fs::path& file) {
    const std::string ending = file.extension().string();
    return ending == ".gpx" || ending == ".geojson";
}

TEST(BadInput, TripFilesAreRefused) {
    std::size_t files = 0;
    for (const fs::directory_entry& entry : fs::directory_iterator(spoilt / "trip")) {
        expect_refused(Role::trip, entry.path());
        ++files;
    }
    EXPECT_GE(files, 40U);
}

TEST(BadInput, TracksAreRefused) {
    std::size_t files = 0;
    for (const fs::directory_entry& entry : fs::directory_iterator(spoilt)) {
        if (!entry.is_regular_file() || !is_track(entry.path()) ||
            readable.contains(entry.path().filename().string()))
            continue;
        expect_refused(Role::track, entry.path());
        ++files;
    }
    EXPECT_GE(files, 40U);
}

TEST(BadInput, RastersAreRefused) {
    std::size_t files = 0;
    for (const fs::directory_entry& entry : fs::directory_iterator(spoilt / "raster")) {
        expect_refused(Role::raster, entry.path());
        ++files;
    }
    EXPECT_GE(files, 15U);
}

TEST(BadInput, WhatIsNoFileIsRefused) {
    for (const auto& [role, name] : {std::pair{Role::trip, "trip-file.json"},
                                     std::pair{Role::track, "track.gpx"},
                                     std::pair{Role::track, "track.geojson"},
                                     std::pair{Role::raster, "heights.tif"}}) {
        SCOPED_TRACE(name);
        BadTrip(role, name).expect_refused(); // missing
        const BadTrip folder(role, name);
        fs::create_directory(folder.bad());
        folder.expect_refused();
        const BadTrip loop(role, name);
        fs::create_symlink(loop.bad(), loop.bad());
        loop.expect_refused();
        if (geteuid() == 0)
            continue; // root may read everything
        const BadTrip locked(role, name);
        fs::copy_file(locked.folder().path() / "sound.gpx", locked.bad());
        fs::permissions(locked.bad(), fs::perms::none);
        locked.expect_refused();
    }
}

/// A sound raster cut off anywhere but within its last cells is refused or gives every height.
TEST(BadInput, RastersCutShortAreRefused) {
    const fs::path sound = test::root / "sample-routes" / "saddle" / "saddle-dem.tif";
    const std::string bytes = bytes_of(sound);
    for (const double share : {0.001, 0.01, 0.1, 0.3, 0.6}) {
        SCOPED_TRACE(share);
        const BadTrip trip(Role::raster, "heights.tif");
        static_cast<void>(trip.folder().write(
            "heights.tif",
            std::string_view(bytes).substr(
                0, static_cast<std::size_t>(share * static_cast<double>(bytes.size())))));
        // The route is laid over the raster, so that its cells are asked for.
        static_cast<void>(trip.folder().write(
            "sound.gpx", bytes_of(test::root / "sample-routes" / "saddle" / "saddle.gpx")));
        trip.expect_refused();
    }
}

} // namespace
} // namespace tumpline::cli
