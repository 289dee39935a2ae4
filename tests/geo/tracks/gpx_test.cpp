#include "geo/tracks/gpx.h"

#include "geo/input_error.h"
#include "geo/tracks/track.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

/// What a document with `body` inside <gpx> holds.
TrackFile read(const std::string& body, const std::string& root = "gpx version=\"1.1\"") {
    return read_gpx_text(fmt::format("<?xml version=\"1.0\"?>\n<{}>\n{}\n</gpx>\n", root, body),
                         "trip.gpx");
}

/// The first problem of a text that must be refused.
Problem refusal(const std::string& text) {
    try {
        const TrackFile file = read_gpx_text(text, "trip.gpx");
        ADD_FAILURE() << "read " << file.tracks.size() << " tracks";
    } catch (const InputError& error) {
        return error.problems().front();
    }
    return {};
}

const std::string two_points = R"(<trkpt lat="60" lon="8"/><trkpt lat="60.001" lon="8"/>)";

/// The parts of GPX 1.1 in the order of its schema (topografix.com/GPX/1/1/gpx.xsd), with an
/// extension in the places where the schema has them.
TEST(Gpx, ReadsEveryKindOfLineAndPointOfTheSchema) {
    const TrackFile file =
        read(R"(
<metadata><name>Not a track</name><time>2027-06-01T00:00:00Z</time></metadata>
<wpt lat="60.5" lon="8.5"><ele>912.5</ele><time>2027-06-18T10:00:00Z</time><name>Hut &amp; landing</name><sym>Flag</sym><type>camp</type></wpt>
<rte><name>Way round</name><number>1</number><type>walk</type>
  <rtept lat="60" lon="8"><name>Start</name></rtept><rtept lat="60.01" lon="8.01"/></rte>
<trk><name>  Over
  the pass </name><cmt>c</cmt><type>walk</type><extensions><x:name xmlns:x="urn:x">no</x:name><name>no</name></extensions>
  <trkseg><trkpt lat="60" lon="8"><ele>+100.25</ele><time>2027-06-18T08:00:00Z</time><name>no</name>
      <extensions><ele>5</ele><time>2000-01-01T00:00:00Z</time></extensions></trkpt>
    <trkpt lon="8" lat="60.001"><ele> 101 </ele><time>2027-06-18T10:01:00.25+02:00</time></trkpt></trkseg>
  <trkseg/>
  <trkseg><trkpt lat="60.01" lon="8"/><trkpt lat="60.02" lon="8"/></trkseg></trk>)",
             R"(gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1")");
    ASSERT_EQ(file.tracks.size(), 2U);
    ASSERT_EQ(file.waypoints.size(), 1U);
    EXPECT_EQ(file.waypoints[0].name, "Hut & landing");
    EXPECT_EQ(file.waypoints[0].type, "camp");
    EXPECT_EQ(file.waypoints[0].height_m, 912.5);
    EXPECT_EQ(file.heights, HeightDatum::geoid);

    const Track& route = file.tracks[0];
    EXPECT_EQ(route.kind, TrackKind::route);
    EXPECT_EQ(route.name, "Way round");
    EXPECT_EQ(route.parts.at(0).size(), 2U);

    const Track& track = file.tracks[1];
    EXPECT_EQ(track.kind, TrackKind::track);
    EXPECT_EQ(track.name, "Over the pass");
    EXPECT_EQ(track.type, "walk");
    ASSERT_EQ(track.parts.size(), 2U);
    const TrackPoint& first = track.parts[0][0];
    EXPECT_EQ(first.at, (Position{.lat_deg = 60.0, .lon_deg = 8.0}));
    EXPECT_EQ(first.height_m, 100.25);
    using namespace std::chrono_literals;
    using namespace std::chrono;
    const Instant eight = sys_days(2027y / June / 18d) + 8h;
    EXPECT_EQ(first.time, eight);
    EXPECT_EQ(track.parts[0][1].height_m, 101.0);
    EXPECT_EQ(track.parts[0][1].time, eight + 60'250ms);
    EXPECT_EQ(track.repairs.joined_parts, 1U);
    EXPECT_EQ(track.repairs.missing_heights, 2U);
}

TEST(Gpx, ReadsVersion1_0WithForeignElementsInItsPoints) {
    const TrackFile file = read(R"(<trk><name>Old</name><trkseg>
<trkpt lat="60" lon="8"><t:ele xmlns:t="urn:t">7</t:ele><ele>5</ele><speed>1.2</speed></trkpt>
<trkpt lat="60.001" lon="8"/></trkseg></trk>)",
                                R"(gpx version="1.0" xmlns="http://www.topografix.com/GPX/1/0")");
    EXPECT_EQ(file.tracks.at(0).parts.at(0).at(0).height_m, 5.0);
}

TEST(Gpx, KnowsElementsUnderAnyPrefix) {
    const TrackFile file = read_gpx_text(
        R"(<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1"><g:trk><g:name>P</g:name><name>no</name><g:trkseg>
<g:trkpt lat="60" lon="8"/><g:trkpt lat="60.001" lon="8"/></g:trkseg></g:trk></g:gpx>)",
        "trip.gpx");
    EXPECT_EQ(file.tracks.at(0).name, "P");
}

TEST(Gpx, ReadsTheEncodingsOfXml) {
    const std::string latin =
        "<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?><gpx><trk><name>F\xF8ring"
        "</name><trkseg>" +
        two_points + "</trkseg></trk></gpx>";
    EXPECT_EQ(read_gpx_text(latin, "latin.gpx").tracks.at(0).name, "F\xC3\xB8ring");
    std::string wide = "\xFF\xFE";
    for (const char letter :
         "<gpx><trk><name>W</name><trkseg>" + two_points + "</trkseg></trk></gpx>") {
        wide += letter;
        wide += '\0';
    }
    EXPECT_EQ(read_gpx_text(wide, "wide.gpx").tracks.at(0).name, "W");
}

TEST(Gpx, CountsPointsWithoutAUsablePlace) {
    const TrackFile file = read(
        "<trk><trkseg>" + two_points +
        R"(<trkpt lat="91" lon="8"/><trkpt lat="60" lon="181"/><trkpt lat="60"/><trkpt lat="nan" lon="8"/>
<trkpt lat="1e999" lon="8"/><trkpt lat="60,1" lon="8"/><trkpt lat="60.1x" lon="8"/><trkpt lat="" lon="8"/>
</trkseg></trk><wpt lat="x" lon="y"><name>Lost</name></wpt>)");
    EXPECT_EQ(file.tracks.at(0).repairs.invalid_points, 8U);
    EXPECT_EQ(file.tracks.at(0).parts.at(0).size(), 2U);
    EXPECT_EQ(file.left_out, std::vector<std::string>{"waypoint Lost without a usable place"});
}

TEST(Gpx, TellsTheLineOfTheFirstPointIfNoneIsUsable) {
    const Problem problem =
        refusal("<gpx>\n<trk><trkseg>\n<trkpt lat=\"95\" lon=\"8\"/></trkseg></trk></gpx>");
    EXPECT_EQ(problem.file, "trip.gpx");
    EXPECT_EQ(problem.place, "line 3");
    EXPECT_EQ(problem.found, "lat \"95\" lon \"8\"");
}

TEST(Gpx, RefusesEntityDeclarations) {
    const Problem problem =
        refusal("<?xml version=\"1.0\"?>\n<!DOCTYPE gpx [\n<!ENTITY a \"b\">\n]>\n"
                "<gpx><trk><name>&a;</name></trk></gpx>");
    EXPECT_EQ(problem.place, "line 3");
    EXPECT_EQ(problem.found, "a declaration of the entity a");
}

TEST(Gpx, RefusesWhatIsCutShort) {
    const std::string whole = "<gpx>\n<trk><trkseg>" + two_points + "\n</trkseg></trk></gpx>";
    for (std::size_t size = 0; size < whole.size(); ++size) {
        const Problem problem = refusal(whole.substr(0, size));
        EXPECT_TRUE(problem.place.starts_with("line ")) << size;
    }
}

TEST(Gpx, BoundsDepthAndTheSizeOfATag) {
    std::string deep = "<gpx>";
    for (int level = 0; level < 100'000; ++level)
        deep += "<a>";
    EXPECT_EQ(refusal(deep).found, "elements nested more than 64 deep");
    EXPECT_EQ(refusal("<gpx><trk a=\"" + std::string(4'000'000, 'x') + "\"/></gpx>").found,
              "a tag of more than a megabyte");
}

TEST(Gpx, NamesOtherDocuments) {
    EXPECT_EQ(refusal("<!DOCTYPE html>\n<html><body><br></body></html>").found, "a web page");
    EXPECT_EQ(refusal("<kml></kml>").found, "a document <kml>");
    EXPECT_EQ(refusal("<gpx></gpx>").found, "no line and no point");
    EXPECT_EQ(
        refusal("<gpx><trk><name>A</name><trkseg><trkpt lat=\"1\" lon=\"2\"/></trkseg></trk></gpx>")
            .found,
        "track 1 A with only one place");
}

TEST(Gpx, KeepsNamesInOneCleanLine) {
    const TrackFile file = read("<trk><name>a<![CDATA[<b>]]>\t\n\xC2\x9B"
                                "31m c</name><trkseg>" +
                                two_points + "</trkseg></trk>");
    EXPECT_EQ(file.tracks.at(0).name, "a<b> 31m c");
    const TrackFile longer = read("<trk><name>" + std::string(100'000, 'n') + "</name><trkseg>" +
                                  two_points + "</trkseg></trk>");
    EXPECT_EQ(longer.tracks.at(0).name.size(), 200U);
}

TEST(Gpx, CountsTimeStampsThatAreNoTimes) {
    const TrackFile file = read(R"(<trk><trkseg>
<trkpt lat="60" lon="8"><time>2027-06-18T08:00:00Z</time></trkpt>
<trkpt lat="60.001" lon="8"><time>yesterday</time></trkpt>
<trkpt lat="60.002" lon="8"><time>2027-02-30T08:00:00Z</time></trkpt>
<trkpt lat="60.003" lon="8"><time/></trkpt>
<trkpt lat="60.004" lon="8"/></trkseg></trk>)");
    const Track& track = file.tracks.at(0);
    EXPECT_EQ(track.repairs.invalid_times, 3U); // a word, a 30th of February, nothing
    EXPECT_TRUE(track.parts.at(0).at(0).time);
    EXPECT_FALSE(track.parts.at(0).at(1).time);
    EXPECT_EQ(track.parts.at(0).size(), 5U);
}

TEST(Gpx, LeavesOutHeightsOfWaypointsThatNoGroundHas) {
    const TrackFile file = read(R"(
<wpt lat="60" lon="8"><ele>1e300</ele><name>Tower</name></wpt>
<wpt lat="60" lon="8"><ele>-9999</ele><name>Hole</name></wpt>
<wpt lat="60" lon="8"><ele>8848</ele><name>Top</name></wpt>)");
    EXPECT_FALSE(file.waypoints.at(0).height_m);
    EXPECT_FALSE(file.waypoints.at(1).height_m);
    EXPECT_EQ(file.waypoints.at(2).height_m, 8848.0);
    EXPECT_EQ(file.left_out,
              (std::vector<std::string>{"the height 1e+300 m of the named point Tower",
                                        "the height -9999 m of the named point Hole"}));
}

/// A kilobyte; sampled every 25 m it took gigabytes.
TEST(Gpx, IsNoLongerThanFiftyThousandKilometres) {
    std::string points;
    for (int point = 0; point < 25; ++point)
        points += fmt::format(
            "<trkpt lat=\"{}\" lon=\"{}\"/>", point % 2 == 0 ? 45 : -45, point % 2 == 0 ? 0 : 179);
    const std::string text =
        "<gpx version=\"1.1\"><trk><trkseg>" + points + "</trkseg></trk></gpx>";
    EXPECT_LT(text.size(), 1024U);
    const Problem problem = refusal(text);
    EXPECT_NE(problem.found.find("km together"), std::string::npos) << problem.found;
    EXPECT_EQ(problem.expected, "50000 km at most");
    EXPECT_FALSE(problem.advice.empty());
    // Round the Earth on the equator, 40 075 km, in steps of 90 degrees: read.
    EXPECT_EQ(read(R"(<trk><trkseg><trkpt lat="0" lon="0"/><trkpt lat="0" lon="90"/>
<trkpt lat="0" lon="180"/><trkpt lat="0" lon="-90"/><trkpt lat="0" lon="0"/></trkseg></trk>)")
                  .tracks.size(),
              1U);
}

} // namespace
} // namespace tumpline::geo
