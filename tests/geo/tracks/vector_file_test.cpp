#include "geo/tracks/vector_file.h"

#include "geo/ground/elevation.h"
#include "geo/ground/geoid.h"
#include "geo/input_error.h"
#include "geo/lines/geodesic.h"
#include "geo/lines/polyline.h"
#include "tests/support/published_value.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>

namespace tumpline::geo {
namespace {

using nlohmann::json;

class VectorFile : public testing::Test {
  protected:
    [[nodiscard]] TrackFile read(const std::string& text,
                                 const std::string& name = "trip.geojson") {
        return read_vector_file(folder_.write(name, text));
    }

    [[nodiscard]] Problem refusal(const std::string& text,
                                  const std::string& name = "trip.geojson") {
        try {
            const TrackFile file = read(text, name);
            ADD_FAILURE() << "read " << file.tracks.size() << " tracks";
        } catch (const InputError& error) {
            return error.problems().front();
        }
        return {};
    }

    test::TempFolder folder_;
};

std::string feature(const std::string& geometry, const std::string& properties = "{}") {
    return fmt::format(
        R"({{"type": "Feature", "properties": {}, "geometry": {}}})", properties, geometry);
}

std::string line(const std::string& coordinates) {
    return fmt::format(R"({{"type": "LineString", "coordinates": {}}})", coordinates);
}

/// RFC 7946, section 1.5: a point, a line and an area with the properties of the example.
TEST_F(VectorFile, ReadsTheExampleOfTheGeoJsonStandard) {
    const TrackFile file = read(R"({
       "type": "FeatureCollection",
       "features": [{
           "type": "Feature",
           "geometry": {"type": "Point", "coordinates": [102.0, 0.5]},
           "properties": {"prop0": "value0"}
       }, {
           "type": "Feature",
           "geometry": {"type": "LineString",
               "coordinates": [[102.0, 0.0], [103.0, 1.0], [104.0, 0.0], [105.0, 1.0]]},
           "properties": {"prop0": "value0", "prop1": 0.0}
       }, {
           "type": "Feature",
           "geometry": {"type": "Polygon",
               "coordinates": [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]]]},
           "properties": {"prop0": "value0", "prop1": {"this": "that"}}
       }]
   })");
    ASSERT_EQ(file.tracks.size(), 1U);
    EXPECT_EQ(file.tracks[0].kind, TrackKind::line);
    ASSERT_EQ(file.tracks[0].parts.at(0).size(), 4U);
    EXPECT_EQ(file.tracks[0].parts[0][1].at, (Position{.lat_deg = 1.0, .lon_deg = 103.0}));
    ASSERT_EQ(file.waypoints.size(), 1U);
    EXPECT_EQ(file.waypoints[0].at, (Position{.lat_deg = 0.5, .lon_deg = 102.0}));
    EXPECT_EQ(file.left_out, std::vector<std::string>{"1 area"});
    EXPECT_EQ(file.heights, HeightDatum::none);
}

/// RFC 7946, section 3.1.9: a line from 45 N 170 E to 45 N 170 W, cut at the antimeridian.
TEST_F(VectorFile, JoinsALineCutAtTheAntimeridian) {
    const TrackFile file = read(R"({"type": "MultiLineString", "coordinates": [
        [[170.0, 45.0], [180.0, 45.0]], [[-180.0, 45.0], [-170.0, 45.0]]]})");
    const Track& track = file.tracks.at(0);
    EXPECT_EQ(track.repairs.antimeridian, 1U);
    EXPECT_EQ(track.repairs.joined_parts, 0U); // both ends are one place
    std::vector<Position> places;
    for (const TrackPoint& point : joined(track))
        places.push_back(point.at);
    const Polyline across(places);
    EXPECT_NEAR(
        across.length_m(),
        2.0 * distance_m({.lat_deg = 45.0, .lon_deg = 0.0}, {.lat_deg = 45.0, .lon_deg = 10.0}),
        1e-6);
}

TEST_F(VectorFile, APointWithoutAHeightAmongOthersHasNone) {
    const TrackFile file =
        read(line("[[10, 60, 500], [10, 60.01], [10, 60.02, 500], [10, 60.04, 500]]"));
    EXPECT_EQ(file.tracks.at(0).repairs.void_heights, 1U);
    EXPECT_FALSE(file.tracks.at(0).parts.at(0).at(1).height_m);
    EXPECT_TRUE(file.tracks.at(0).parts.at(0).at(2).height_m);
}

TEST_F(VectorFile, RefusesNamesThatAreNotUtf8) {
    try {
        (void)read(feature(line("[[8, 60], [8.1, 60]]"),
                           "{\"name\": \"Br\xfc"
                           "cke\"}"));
        FAIL() << "was read";
    } catch (const InputError& error) {
        EXPECT_NE(error.problems().front().found.find("not UTF-8"), std::string::npos);
    }
}

TEST_F(VectorFile, TurnsLongitudesBeyondTheAntimeridianBack) {
    const TrackFile file = read(line("[[179.5, 10.0], [180.5, 10.0], [190.0, 10.0]]"));
    EXPECT_EQ(file.tracks.at(0).parts.at(0).at(1).at.lon_deg, -179.5);
    EXPECT_EQ(file.tracks.at(0).repairs.antimeridian, 1U);
    EXPECT_EQ(file.tracks.at(0).repairs.invalid_points, 0U);
}

TEST_F(VectorFile, TakesNamesAndTypesFromTheAttributes) {
    const TrackFile file = read(
        R"({"type": "FeatureCollection", "features": [)" +
        feature(line("[[8, 60], [8.1, 60]]"), R"({"name": "Over land", "travel": "walk"})") + "," +
        feature(line("[[8, 60], [8.2, 60]]"),
                R"({"title": "Lake", "type": "paddle", "name": null})") +
        "," + feature(R"({"type": "Point", "coordinates": [8.1, 60]})", R"({"name": "Landing"})") +
        "," + feature("null", R"({"name": "Nowhere"})") + "]}");
    ASSERT_EQ(file.tracks.size(), 2U);
    EXPECT_EQ(file.tracks[0].name, "Over land");
    EXPECT_EQ(file.tracks[0].type, "walk");
    EXPECT_EQ(file.tracks[1].name, "Lake");
    EXPECT_EQ(file.tracks[1].type, "paddle");
    EXPECT_EQ(file.waypoints.at(0).name, "Landing");
}

TEST_F(VectorFile, ReadsLinesInsideCollections) {
    const TrackFile file = read(R"({"type": "GeometryCollection", "geometries": [
        {"type": "LineString", "coordinates": [[8, 60], [8.1, 60]]},
        {"type": "MultiPoint", "coordinates": [[8, 60], [9, 60]]},
        {"type": "LineString", "coordinates": [[8.2, 60], [8.3, 60]]}]})");
    EXPECT_EQ(file.tracks.at(0).parts.size(), 2U);
    EXPECT_EQ(file.tracks.at(0).repairs.joined_parts, 1U);
    EXPECT_EQ(file.waypoints.size(), 2U);
}

/// RFC 7946, section 3.1.1: the third element is the height above the ellipsoid.
TEST_F(VectorFile, BringsGeoJsonHeightsToTheGeoid) {
    const Position at{.lat_deg = 60.0, .lon_deg = 8.0};
    const std::optional<double> geoid_m = geoid_height_m(at);
    const TrackFile file = read(line("[[8, 60, 1000], [8.001, 60, 1010]]"));
    const std::optional<double> height_m = file.tracks.at(0).parts.at(0).at(0).height_m;
    ASSERT_TRUE(height_m);
    if (geoid_m) {
        EXPECT_EQ(file.heights, HeightDatum::corrected);
        EXPECT_NEAR(*height_m, 1000.0 - *geoid_m, 1e-9);
        EXPECT_GT(*geoid_m, 30.0); // the geoid lies some 40 m above the ellipsoid in Norway
    } else {
        EXPECT_EQ(file.heights, HeightDatum::ellipsoid);
        EXPECT_EQ(*height_m, 1000.0);
    }
}

TEST_F(VectorFile, CountsPlacesThatAreNotOnEarth) {
    const TrackFile file = read(line("[[8, 60], [8.1, 60], [8, 95], [1000, 60], [8.2, 60]]"));
    EXPECT_EQ(file.tracks.at(0).repairs.invalid_points, 2U);
    const Problem problem = refusal(line("[[500000, 6650000], [500100, 6650000]]"));
    EXPECT_EQ(problem.place, "feature 1");
    EXPECT_EQ(problem.found, "[500000, 6650000]");
}

/// A line through points on a UTM grid, as GeoJSON with the coordinate system named the old way.
std::string on_grid(const json& coordinates, int epsg) {
    return json{{"type", "FeatureCollection"},
                {"crs",
                 {{"type", "name"},
                  {"properties", {{"name", fmt::format("urn:ogc:def:crs:EPSG::{}", epsg)}}}}},
                {"features",
                 {{{"type", "Feature"},
                   {"properties", json::object()},
                   {"geometry", {{"type", "LineString"}, {"coordinates", coordinates}}}}}}}
        .dump();
}

/// Flinders Peak and Buninyong on the grids of GDA94 (EPSG 28354 and 28355): the printed
/// coordinates must lead to the printed latitudes and longitudes.
TEST_F(VectorFile, FindsThePlacesOfPrintedGridCoordinates) {
    const std::vector<test::PublishedValue> east = test::published("geodesy", "utm_easting");
    const std::vector<test::PublishedValue> north = test::published("geodesy", "utm_northing");
    ASSERT_EQ(east.size(), north.size());
    for (std::size_t row = 0; row < east.size(); ++row) {
        const Position place{.lat_deg = east[row].input("lat_deg"),
                             .lon_deg = east[row].input("lon_deg")};
        ASSERT_EQ(place.lat_deg, north[row].input("lat_deg"));
        const double x = east[row].expected;
        const double y = north[row].expected;
        const TrackFile file = read(
            on_grid({{x, y}, {x + 1000.0, y}}, 28300 + static_cast<int>(east[row].input("zone"))));
        EXPECT_LT(distance_m(file.tracks.at(0).parts.at(0).at(0).at, place), 0.0003) << east[row];
    }
}

/// The perimeter of a square of 100 km on the UTM grid, from the manual of Planimeter.
TEST_F(VectorFile, MeasuresAGridSquareAsPrinted) {
    for (const test::PublishedValue& row : test::published("geodesy", "utm_polyline_length")) {
        ASSERT_EQ(row.text("points_utm_zone"), "18n");
        json corners = json::parse(row.text("points_easting_northing_m"));
        corners.push_back(corners[0]);
        std::vector<Position> places;
        for (const TrackPoint& point : joined(read(on_grid(corners, 32618)).tracks.at(0)))
            places.push_back(point.at);
        EXPECT_NEAR(Polyline(places).length_m(), row.expected, row.tolerance) << row;
    }
}

TEST_F(VectorFile, ReadsKml) {
    const TrackFile file = read(R"(<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2"><Document><Placemark><name>Shore</name><LineString>
<coordinates>8,60,500 8.01,60,510 8.02,60,505</coordinates></LineString></Placemark>
<Placemark><name>Camp</name><Point><coordinates>8.02,60</coordinates></Point></Placemark>
</Document></kml>)",
                                "trip.kml");
    EXPECT_EQ(file.tracks.at(0).name, "Shore");
    EXPECT_EQ(file.tracks.at(0).parts.at(0).at(0).height_m, 500.0); // KML's stand above the geoid
    EXPECT_EQ(file.heights, HeightDatum::geoid);
    EXPECT_EQ(file.waypoints.at(0).name, "Camp");
}

/// Found by hand: the library keeps what it learnt of a GML file in another beside it.
TEST_F(VectorFile, LeavesNothingBesideItsInput) {
    const TrackFile file = read(R"(<?xml version="1.0" encoding="utf-8" ?>
<ogr:FeatureCollection xmlns:ogr="http://ogr.maptools.org/" xmlns:gml="http://www.opengis.net/gml">
<gml:featureMember><ogr:way fid="way.0"><ogr:geometryProperty><gml:LineString srsName="EPSG:4326">
<gml:coordinates>8,60 8.1,60</gml:coordinates></gml:LineString></ogr:geometryProperty>
<ogr:name>Way</ogr:name></ogr:way></gml:featureMember></ogr:FeatureCollection>)",
                                "trip.gml");
    EXPECT_EQ(file.tracks.at(0).name, "Way");
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(folder_.path()))
        names.push_back(entry.path().filename().string());
    EXPECT_EQ(names, std::vector<std::string>{"trip.gml"});
}

TEST_F(VectorFile, FollowsNoReferenceToElsewhere) {
    static_cast<void>(folder_.write("inner.geojson", line("[[8, 60], [8.1, 60]]")));
    const Problem layers = refusal(fmt::format("<OGRVRTDataSource><OGRVRTLayer name=\"inner\">"
                                               "<SrcDataSource>{}</SrcDataSource></OGRVRTLayer>"
                                               "</OGRVRTDataSource>",
                                               (folder_.path() / "inner.geojson").string()),
                                   "trip.vrt");
    EXPECT_EQ(layers.found, "a file of an unknown kind");
    EXPECT_FALSE(refusal(R"({"type": "FeatureCollection", "crs": {"type": "link", "properties":
        {"href": "http://localhost:9/crs", "type": "proj4"}}, "features": []})")
                     .expected.empty());
}

TEST_F(VectorFile, TellsTheLineOfBrokenJson) {
    const Problem problem =
        refusal("{\"type\": \"FeatureCollection\",\n\"features\": [\n{\"type\": \"Feature\",,\n]}");
    EXPECT_EQ(problem.place, "line 3");
    EXPECT_FALSE(problem.found.empty());
}

TEST_F(VectorFile, RefusesWhatWouldFillTheMemory) {
    std::string text = R"({"type": "LineString", "coordinates": [[8, 60])";
    while (text.size() < 20'000'000)
        text += ",[],[],[],[],[],[]";
    EXPECT_EQ(refusal(text + "]}").found, "more than 5000000 values");
    EXPECT_EQ(refusal("PK\x03\x04 and what else is packed", "trip.kmz").found, "a packed file");
}

TEST_F(VectorFile, WantsACoordinateSystem) {
    const Problem problem = refusal(R"(<?xml version="1.0" encoding="utf-8" ?>
<ogr:FeatureCollection xmlns:ogr="http://ogr.maptools.org/" xmlns:gml="http://www.opengis.net/gml">
<gml:featureMember><ogr:way fid="way.0"><ogr:geometryProperty><gml:LineString>
<gml:coordinates>8,60 8.1,60</gml:coordinates></gml:LineString></ogr:geometryProperty>
</ogr:way></gml:featureMember></ogr:FeatureCollection>)",
                                    "trip.gml");
    EXPECT_EQ(problem.found, "coordinates without a coordinate system");
}

TEST_F(VectorFile, WantsALineOrAPoint) {
    EXPECT_EQ(refusal(R"({"type": "FeatureCollection", "features": []})").found,
              "no line and no point");
    EXPECT_EQ(refusal(line("[[8, 60], [8, 60]]")).found, "track 1 with only one place");
}

} // namespace
} // namespace tumpline::geo
