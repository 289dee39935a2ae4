// Files that somebody cut short, mislabelled, or made to do harm: each reader answers soon, with a
// track or with a problem that can be put right.

#include "geo/input_error.h"
#include "geo/tracks/gpx.h"
#include "geo/tracks/read_tracks.h"
#include "geo/tracks/track.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <map>
#include <random>

namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;

const fs::path spoilt = test::root / "tests" / "spoilt";

/// What reading gave: tracks that keep what they promise, or problems.
struct Answer {
    std::size_t tracks = 0;
    std::vector<Problem> problems;
};

void expect_sound(const TrackFile& file) {
    EXPECT_FALSE(file.tracks.empty() && file.waypoints.empty());
    for (const Track& track : file.tracks) {
        EXPECT_GE(joined(track).size(), 2U);
        for (const TrackPoint& point : joined(track)) {
            EXPECT_TRUE(is_valid(point.at));
            EXPECT_TRUE(!point.height_m ||
                        (*point.height_m >= -500.0 && *point.height_m <= 9000.0));
        }
    }
    for (const Waypoint& point : file.waypoints)
        EXPECT_TRUE(is_valid(point.at));
}

Answer answer(const fs::path& file) {
    Answer given;
    testing::internal::CaptureStderr();
    try {
        const TrackFile tracks = read_tracks(file);
        expect_sound(tracks);
        given.tracks = tracks.tracks.size();
    } catch (const InputError& error) {
        given.problems = error.problems();
        EXPECT_FALSE(given.problems.empty());
        for (const Problem& problem : given.problems) {
            EXPECT_EQ(problem.file, file.string());
            EXPECT_FALSE(problem.found.empty());
            EXPECT_FALSE(problem.expected.empty());
            EXPECT_LT(to_string(problem).size(), 1000U);
        }
    }
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "") << file;
    return given;
}

TEST(Spoilt, EveryFileGetsAnAnswer) {
    std::size_t count = 0;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(spoilt)) {
        if (!entry.is_regular_file())
            continue;
        ++count;
        static_cast<void>(answer(entry.path()));
    }
    EXPECT_GE(count, 50U);
}

TEST(Spoilt, ProblemsSayWhatWasFoundAndWhere) {
    struct Told {
        std::string place;
        std::string found;
    };

    const std::map<std::string, Told> expected = {
        {"empty.gpx", {"", "an empty file"}},
        {"cut-short.gpx", {"line 5", "the end of the file before the end of the track"}},
        {"cut-in-tag.gpx", {"line 5", "the end of the file before the end of the track"}},
        {"binary.gpx", {"", "binary data"}},
        {"plain-text.gpx", {"line 1", "something that is no XML"}},
        {"web-page.gpx", {"line 2", "a web page"}},
        {"kml-inside.gpx", {"line 2", "a document <kml>"}},
        {"latin-1-undeclared.gpx", {"line 3", "characters that may not stand there"}},
        {"utf-16-called-utf-8.gpx", {"line 1", "an encoding that cannot be read"}},
        {"unknown-encoding.gpx", {"line 1", "an encoding that cannot be read"}},
        {"entity-bomb.gpx", {"line 3", "a declaration of the entity a"}},
        {"entity-from-file.gpx", {"line 2", "a declaration of the entity x"}},
        {"entity-of-parameters.gpx", {"line 3", "a declaration of the entity p"}},
        {"nested.gpx", {"line 1", "elements nested more than 64 deep"}},
        {"mismatched-tags.gpx", {"line 6", "a closing tag that does not match the open one"}},
        {"two-documents.gpx", {"line 8", "more text after the end of the document"}},
        {"one-point.gpx", {"", "track 1 Shore with only one place"}},
        {"zero-length.gpx", {"", "track 1 Shore with only one place"}},
        {"no-points.gpx", {"", "track 1 Shore with no usable point"}},
        {"nan.gpx", {"line 4", "lat \"-inf\" lon \"8\""}},
        {"huge-number.gpx", {"line 4", "lat \"" + std::string(40, '9') + "\" lon \"8\""}},
        {"decimal-commas.gpx", {"line 4", "lat \"60,0\" lon \"8\""}},
        {"no-coordinates.gpx", {"line 4", "lat \"\" lon \"\""}},
        {"empty.geojson", {"", "an empty file"}},
        {"double-comma.geojson", {"line 2", "broken JSON (\"unexpected character\")"}},
        {"nested.geojson", {"line 1", "broken JSON (\"nesting too deep\")"}},
        {"not-geojson.geojson", {"", "a file of an unknown kind"}},
        {"one-point-line.geojson", {"", "track 1 with only one place"}},
        {"elsewhere.vrt", {"", "a file of an unknown kind"}}};
    for (const auto& [name, told] : expected) {
        const Answer given = answer(spoilt / name);
        ASSERT_EQ(given.problems.size(), 1U) << name;
        EXPECT_EQ(given.problems[0].place, told.place) << name;
        EXPECT_EQ(given.problems[0].found, told.found) << name;
    }
}

TEST(Spoilt, WhatIsOnlyUnusualIsRead) {
    for (const char* name : {"utf-16.gpx", "heights-of-all-kinds.gpx"})
        EXPECT_EQ(answer(spoilt / name).tracks, 1U) << name;
}

TEST(Spoilt, PathsThatAreNoFilesAreNamed) {
    const test::TempFolder folder;
    const auto found = [](const fs::path& file) { return answer(file).problems.at(0).found; };
    EXPECT_EQ(found(folder.path() / "missing.gpx"), "no such file");
    EXPECT_EQ(found(folder.path()), "a folder");
    EXPECT_EQ(found("/dev/zero"), "a device or pipe");
    EXPECT_EQ(found("https://localhost/a.gpx"), "an address");
    EXPECT_EQ(found("/vsicurl/http://localhost/a.geojson"), "an address");
    EXPECT_EQ(found("/vsizip/a.zip/a.geojson"), "an address");
    const fs::path locked = folder.write("locked.gpx", "<gpx/>");
    fs::permissions(locked, fs::perms::none);
    if (geteuid() != 0) {
        EXPECT_EQ(found(locked), "a file that may not be read");
    }
    fs::create_symlink(folder.path() / "loop.gpx", folder.path() / "loop.gpx");
    EXPECT_EQ(found(folder.path() / "loop.gpx"), "no such file");
}

/// Sound files to spoil: one of each reader's kinds.
std::map<std::string, std::string> sound_files() {
    std::string points;
    std::string coordinates;
    for (int point = 0; point < 12; ++point) {
        points += fmt::format("<trkpt lat=\"{0}\" lon=\"8.1\"><ele>{1}</ele>"
                              "<time>2027-06-18T08:{1:02}:00Z</time></trkpt>\n",
                              60.0 + 0.001 * point,
                              10 + point);
        coordinates +=
            fmt::format("{}[8.1, {}, {}]", point == 0 ? "" : ", ", 60.0 + 0.001 * point, point);
    }
    return {
        {"a.gpx",
         "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" creator=\"c\">"
         "<wpt lat=\"60\" lon=\"8\"><name>Hut &amp; "
         "ford</name></wpt>\n<trk><name>A</name><trkseg>\n" +
             points + "</trkseg></trk></gpx>\n"},
        {"a.geojson",
         "{\"type\": \"FeatureCollection\", \"features\": [{\"type\": \"Feature\", \"properties\": "
         "{\"name\": \"A\"}, \"geometry\": {\"type\": \"LineString\", \"coordinates\": [" +
             coordinates + "]}}]}\n"},
        {"a.kml",
         "<?xml version=\"1.0\"?><kml "
         "xmlns=\"http://www.opengis.net/kml/2.2\"><Document><Placemark>"
         "<name>A</name><LineString><coordinates>8,60 8.1,60 8.2,60.1</coordinates></LineString>"
         "</Placemark></Document></kml>\n"}};
}

TEST(Spoilt, CopiesCutShortOrWithBitsTurnedGetAnAnswer) {
    const unsigned seed = 20270618;
    SCOPED_TRACE(fmt::format("seed {}", seed));
    std::mt19937_64 draw(seed);
    const test::TempFolder folder;
    for (const auto& [name, sound] : sound_files()) {
        EXPECT_EQ(answer(folder.write(name, sound)).tracks, 1U) << name;
        for (int copy = 0; copy < 150; ++copy) {
            std::string text = sound;
            if (copy % 3 == 0)
                text.resize(draw() % text.size());
            for (std::size_t flips = draw() % 8; flips > 0 && !text.empty(); --flips) {
                char& letter = text[draw() % text.size()];
                letter =
                    static_cast<char>(static_cast<unsigned char>(letter) ^ (1U << (draw() % 8)));
            }
            static_cast<void>(answer(folder.write(name, text)));
        }
    }
}

TEST(Spoilt, FilesMadeToBeLargeAreRefusedSoon) {
    const test::TempFolder folder;
    std::string named = "<gpx>";
    for (int track = 0; track < 100'001; ++track)
        named += "<trk/>";
    EXPECT_EQ(answer(folder.write("named.gpx", named + "</gpx>")).problems.at(0).found,
              "more than 100000 tracks and waypoints");
    std::string deep = "<gpx>";
    for (int level = 0; level < 1'000'000; ++level)
        deep += "<a>";
    EXPECT_EQ(answer(folder.write("deep.gpx", deep)).problems.at(0).found,
              "elements nested more than 64 deep");
    const std::string comment = "<gpx><!--" + std::string(8'000'000, '-') + "--></gpx>";
    EXPECT_FALSE(answer(folder.write("comment.gpx", comment)).problems.empty());
    std::string brackets(3'000'000, '[');
    EXPECT_FALSE(
        answer(folder.write("deep.geojson", "{\"type\":\"LineString\",\"coordinates\":" + brackets))
            .problems.empty());
}

} // namespace
} // namespace tumpline::geo
