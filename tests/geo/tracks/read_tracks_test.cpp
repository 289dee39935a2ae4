#include "geo/tracks/read_tracks.h"

#include "geo/input_error.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <string>

namespace tumpline::geo {
namespace {

const std::string gpx = "<gpx version=\"1.1\"><trk><trkseg><trkpt lat=\"60\" lon=\"8\"/>"
                        "<trkpt lat=\"60.01\" lon=\"8\"/></trkseg></trk></gpx>";
const std::string geojson =
    R"({"type": "LineString", "coordinates": [[8, 60], [8, 60.01], [8, 60.02]]})";

class ReadTracks : public testing::Test {
  protected:
    [[nodiscard]] std::size_t points(const std::string& name, const std::string& text) {
        return joined(read_tracks(folder_.write(name, text)).tracks.at(0)).size();
    }

    [[nodiscard]] std::string found(const std::string& name, const std::string& text) {
        try {
            static_cast<void>(read_tracks(folder_.write(name, text)));
        } catch (const InputError& error) {
            return error.problems().front().found;
        }
        return "nothing";
    }

    test::TempFolder folder_;
};

TEST_F(ReadTracks, KnowsGpxByItsFirstElementWhateverItIsCalled) {
    EXPECT_EQ(points("a.gpx", gpx), 2U);
    EXPECT_EQ(points("a.xml", "<?xml version=\"1.0\"?><!-- <kml> -->\n" + gpx), 2U);
    EXPECT_EQ(points("download", gpx), 2U);
    EXPECT_EQ(points("a.geojson", geojson), 3U);
    EXPECT_EQ(points("download2", geojson), 3U);
}

TEST_F(ReadTracks, JudgesByTheNameWhatHoldsNothingThatItKnows) {
    EXPECT_EQ(found("a.gpx", "no XML at all"), "something that is no XML");
    EXPECT_EQ(found("a.gpx", std::string("\x89PNG\r\n\0\0", 8)), "binary data");
    EXPECT_EQ(found("a.txt", "no track at all"), "a file of an unknown kind");
    EXPECT_EQ(found("a.html", "<html><body>Sign in to download</body></html>"), "a web page");
}

} // namespace
} // namespace tumpline::geo
