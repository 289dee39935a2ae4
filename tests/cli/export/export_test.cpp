#include "cli/app.h"
#include "cli/export/export_csv.h"
#include "cli/export/export_geojson.h"
#include "cli/export/export_gpx.h"
#include "cli/export/export_parts.h"
#include "cli/words/words.h"
#include "geo/ground/elevation.h"
#include "geo/ground/geoid.h"
#include "geo/tracks/gpx.h"
#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/hand_built_plan.h"
#include "tests/support/hand_built_route.h"
#include "tests/support/hand_built_variants.h"
#include "tests/support/random_trip.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <cpl_conv.h>
#include <gdal_priv.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <ogrsf_frmts.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <map>
#include <memory>
#include <string>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using test::root;
using test::Said;
using test::say;
using test::text_of;
using testing::HasSubstr;

struct Sample {
    planner::Route route;
    planner::Plan plan;
};

Sample sample(const std::string& name) {
    const planner::Trip trip = planner::read_trip(root / "sample-routes" / name / "trip.json");
    planner::Route route = planner::build_route(trip);
    planner::Plan plan = planner::make_plan(trip, route);
    return {std::move(route), std::move(plan)};
}

/// A plan written by hand over a route that runs over the 180th meridian.
Sample across_the_meridian() {
    planner::Plan plan = test::hand_built_plan();
    planner::Route route = test::hand_built_route(plan, {.lat_deg = 61.5, .lon_deg = 179.97});
    return {std::move(route), std::move(plan)};
}

/// What GDAL reads; an outside reader for every file that we write. From memory: the program's
/// gate, which is in this process, lets GDAL read files where a Passage says so.
std::unique_ptr<GDALDataset> open_vector(const fs::path& file, const char* driver) {
    RegisterOGRGPX();
    RegisterOGRCSV();
    RegisterOGRGeoJSON();
    static std::map<std::string, std::string> kept;
    std::ifstream in(file, std::ios::binary);
    std::string& bytes = kept["/vsimem/export/" + file.filename().string()];
    bytes.assign(std::istreambuf_iterator<char>(in), {});
    const std::string memory = "/vsimem/export/" + file.filename().string();
    VSIFCloseL(VSIFileFromMemBuffer(
        memory.c_str(), reinterpret_cast<GByte*>(bytes.data()), bytes.size(), FALSE));
    const CPLConfigOptionSetter heights("GPX_ELE_AS_25D", "YES", false);
    const char* drivers[] = {driver, nullptr};
    return std::unique_ptr<GDALDataset>(
        GDALDataset::Open(memory.c_str(), GDAL_OF_VECTOR | GDAL_OF_READONLY, drivers));
}

/// Whether the file keeps to the schema; empty where there is no xmllint.
std::optional<bool> valid_gpx(const fs::path& file) {
    if (std::system("xmllint --version >/dev/null 2>&1") != 0) // NOLINT: a fixed command
        return std::nullopt;
    const std::string command = "xmllint --noout --schema '" +
                                (root / "tests/published/gpx-1.1-check.xsd").string() + "' '" +
                                file.string() + "' >/dev/null 2>&1";
    return std::system(command.c_str()) == 0; // NOLINT: names of ours
}

class Export : public testing::Test {
  protected:
    void expect_valid(const std::string& gpx) {
        const std::optional<bool> valid = valid_gpx(folder.write("check.gpx", gpx));
        if (!valid)
            GTEST_SKIP() << "xmllint is not installed: the schema is not checked";
        EXPECT_TRUE(*valid) << gpx.substr(0, 2000);
    }

    test::TempFolder folder;
};

TEST_F(Export, GpxKeepsToTheSchema) {
    for (const char* name : {"saddle", "lake-chain", "desert-river"}) {
        const Sample trip = sample(name);
        expect_valid(export_gpx(trip.plan, trip.route));
    }
}

TEST_F(Export, GpxKeepsToTheSchemaWhateverTheNamesAre) {
    planner::Plan plan = test::with_hostile_names(test::hand_built_plan());
    plan.legs[0].name = "not a character: \xEF\xBF\xBF, \xEF\xBF\xBE";
    const planner::Route route = test::hand_built_route(plan);
    expect_valid(export_gpx(plan, route));
}

TEST_F(Export, GpxKeepsToTheSchemaAtTheMeridianItself) {
    Sample trip = across_the_meridian();
    trip.route.legs[0].line = geo::Polyline({{61.5, 179.9}, {61.5, 180.0}});
    trip.plan.legs[0].to_m = trip.plan.legs[0].from_m + trip.route.legs[0].line.length_m();
    const std::string gpx = export_gpx(trip.plan, trip.route);
    EXPECT_THAT(gpx, HasSubstr("lon=\"-180\""));
    EXPECT_THAT(gpx, testing::Not(HasSubstr("lon=\"180\"")));
    expect_valid(gpx);
}

TEST_F(Export, GpxOfRandomTripsKeepsToTheSchema) {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const test::RandomTrip random = test::random_trip(seed);
        const planner::Plan plan = planner::make_plan(random.trip, random.route);
        SCOPED_TRACE(seed);
        expect_valid(export_gpx(plan, random.route));
    }
}

TEST_F(Export, TheSchemaRefusesWhatItShould) { // so that the tests above can fail
    const Sample trip = sample("saddle");
    std::string gpx = export_gpx(trip.plan, trip.route);
    const std::size_t trk = gpx.find("<trk>");
    ASSERT_NE(trk, std::string::npos);
    const std::optional<bool> valid =
        valid_gpx(folder.write("spoilt.gpx", gpx.insert(trk + 5, "<type>before the name</type>")));
    if (!valid)
        GTEST_SKIP() << "xmllint is not installed: the schema is not checked";
    EXPECT_FALSE(*valid);
}

TEST_F(Export, GpxElementsStandInTheOrderOfTheFormat) { // without any tool
    const Sample trip = sample("saddle");
    const std::string gpx = export_gpx(trip.plan, trip.route);
    EXPECT_LT(gpx.find("<metadata>"), gpx.find("<wpt"));
    EXPECT_LT(gpx.rfind("<wpt"), gpx.find("<trk>"));
    const std::string track = gpx.substr(gpx.find("<trk>"));
    std::size_t before = 0;
    for (const char* element : {"<name>", "<desc>", "<number>", "<type>", "<trkseg>", "<trkpt"}) {
        const std::size_t at = track.find(element);
        ASSERT_NE(at, std::string::npos) << element;
        EXPECT_GT(at, before) << element;
        before = at;
    }
}

TEST_F(Export, GdalReadsEveryLegAndPlaceOfTheGpx) {
    const Sample trip = sample("saddle");
    const fs::path file = folder.write("trip.gpx", export_gpx(trip.plan, trip.route));
    const auto data = open_vector(file, "GPX");
    ASSERT_NE(data, nullptr);
    OGRLayer* tracks = data->GetLayerByName("tracks");
    ASSERT_EQ(tracks->GetFeatureCount(), static_cast<GIntBig>(trip.plan.legs.size()));
    for (const planner::PlanLeg& leg : trip.plan.legs) {
        const std::unique_ptr<OGRFeature> track(tracks->GetNextFeature());
        EXPECT_EQ(track->GetFieldAsString("name"), export_name(leg));
        EXPECT_EQ(track->GetFieldAsString("type"), word(leg.travel));
        const auto* lines = track->GetGeometryRef()->toMultiLineString();
        ASSERT_EQ(lines->getNumGeometries(), 1);
        const OGRLineString* line = lines->getGeometryRef(0);
        const ExportLine points = export_line(leg, trip.route);
        ASSERT_EQ(line->getNumPoints(), static_cast<int>(points.size()));
        for (int i = 0; i < line->getNumPoints(); ++i) {
            const ExportPoint& point = points[static_cast<std::size_t>(i)];
            EXPECT_NEAR(line->getX(i), point.at.lon_deg, 1e-9);
            EXPECT_NEAR(line->getY(i), point.at.lat_deg, 1e-9);
            EXPECT_NEAR(line->getZ(i), point.height_m.value(), 0.005001);
        }
    }
    OGRLayer* waypoints = data->GetLayerByName("waypoints");
    const auto places = export_places(trip.plan, trip.route);
    ASSERT_EQ(waypoints->GetFeatureCount(), static_cast<GIntBig>(places.size()));
    for (const ExportPlace& place : places) {
        const std::unique_ptr<OGRFeature> point(waypoints->GetNextFeature());
        EXPECT_EQ(point->GetFieldAsString("name"), place.name);
        EXPECT_EQ(point->GetFieldAsString("type"), place.kind);
        EXPECT_NEAR(point->GetGeometryRef()->toPoint()->getX(), place.at.lon_deg, 1e-9);
    }
}

TEST_F(Export, NightsWaterAndWaysOutAreWaypoints) {
    const Sample trip = sample("saddle");
    std::map<std::string_view, int> kinds;
    for (const ExportPlace& place : export_places(trip.plan, trip.route))
        ++kinds[place.kind];
    EXPECT_EQ(kinds["night"], trip.plan.totals.days - 1);
    EXPECT_GT(kinds["water"], 0);
    EXPECT_GT(kinds["exit"], 0);
}

TEST_F(Export, ReadBackAsTracksTheLegsKeepTheirLengthAndWay) {
    const Sample trip = sample("saddle");
    const geo::TrackFile read = geo::read_gpx_text(export_gpx(trip.plan, trip.route), "out.gpx");
    ASSERT_EQ(read.tracks.size(), trip.plan.legs.size());
    for (std::size_t i = 0; i < read.tracks.size(); ++i) {
        std::vector<geo::Position> points;
        for (const geo::TrackPoint& point : geo::joined(read.tracks[i]))
            points.push_back(point.at);
        const planner::PlanLeg& leg = trip.plan.legs[i];
        EXPECT_EQ(read.tracks[i].type, word(leg.travel));
        EXPECT_NEAR(geo::Polyline(points).length_m(), leg.to_m - leg.from_m, 0.01);
    }
}

TEST_F(Export, GdalReadsEveryLegAndFigureOfTheGeoJson) {
    const Sample trip = sample("saddle");
    const fs::path file = folder.write("trip.geojson", export_geojson(trip.plan, trip.route));
    const auto data = open_vector(file, "GeoJSON");
    ASSERT_NE(data, nullptr);
    OGRLayer* layer = data->GetLayer(0);
    const auto places = export_places(trip.plan, trip.route);
    ASSERT_EQ(layer->GetFeatureCount(),
              static_cast<GIntBig>(trip.plan.legs.size() + places.size()));
    const bool geoid = geo::geoid_height_m({61.5, 13.1}).has_value();
    for (const planner::PlanLeg& leg : trip.plan.legs) {
        const std::unique_ptr<OGRFeature> feature(layer->GetNextFeature());
        EXPECT_EQ(feature->GetFieldAsString("name"), leg.name);
        EXPECT_EQ(feature->GetFieldAsInteger("day"), leg.day);
        EXPECT_EQ(feature->GetFieldAsString("travel"), word(leg.travel));
        EXPECT_DOUBLE_EQ(feature->GetFieldAsDouble("from_m"), leg.from_m);
        EXPECT_DOUBLE_EQ(feature->GetFieldAsDouble("ascent_m"), leg.ascent_m);
        EXPECT_DOUBLE_EQ(feature->GetFieldAsDouble("moving_s"), leg.moving_s);
        for (const planner::MemberLoad& load : leg.loads)
            EXPECT_DOUBLE_EQ(feature->GetFieldAsDouble((load.member + " pack_max_kg").c_str()),
                             load.pack_max_kg);
        const OGRLineString* line = feature->GetGeometryRef()->toLineString();
        const ExportLine points = export_line(leg, trip.route);
        ASSERT_EQ(line->getNumPoints(), static_cast<int>(points.size()));
        EXPECT_EQ(line->Is3D(), geoid);
        for (int i = 0; i < line->getNumPoints(); ++i) {
            const ExportPoint& point = points[static_cast<std::size_t>(i)];
            EXPECT_NEAR(line->getX(i), point.at.lon_deg, 1e-9);
            EXPECT_NEAR(line->getY(i), point.at.lat_deg, 1e-9);
            if (geoid) {
                EXPECT_NEAR(line->getZ(i),
                            point.height_m.value() + geo::geoid_height_m(point.at).value(),
                            0.005001);
            }
        }
    }
    for (const ExportPlace& place : places) {
        const std::unique_ptr<OGRFeature> feature(layer->GetNextFeature());
        EXPECT_EQ(feature->GetFieldAsString("name"), place.name);
        EXPECT_EQ(feature->GetFieldAsString("kind"), place.kind);
        EXPECT_DOUBLE_EQ(feature->GetFieldAsDouble("along_m"), place.along_m);
    }
}

/// Every line of a GeoJSON geometry.
std::vector<nlohmann::json> lines_of(const nlohmann::json& geometry) {
    if (geometry.at("type") == "LineString")
        return {geometry.at("coordinates")};
    EXPECT_EQ(geometry.at("type"), "MultiLineString");
    return geometry.at("coordinates").get<std::vector<nlohmann::json>>();
}

TEST_F(Export, GeoJsonIsCutAtTheAntimeridian) { // RFC 7946, section 3.1.9
    const Sample trip = across_the_meridian();
    const auto json = nlohmann::json::parse(export_geojson(trip.plan, trip.route));
    std::size_t cut = 0;
    for (std::size_t i = 0; i < trip.plan.legs.size(); ++i) {
        const auto lines = lines_of(json.at("features").at(i).at("geometry"));
        cut += lines.size() - 1;
        for (const auto& line : lines) {
            ASSERT_GE(line.size(), 2U);
            for (std::size_t k = 1; k < line.size(); ++k)
                EXPECT_LE(std::abs(line[k][0].get<double>() - line[k - 1][0].get<double>()), 180.0);
        }
        for (std::size_t k = 1; k < lines.size(); ++k) {
            EXPECT_EQ(std::abs(lines[k][0][0].get<double>()), 180.0);
            EXPECT_EQ(lines[k][0][0], -lines[k - 1].back()[0].get<double>());
            EXPECT_EQ(lines[k][0][1], lines[k - 1].back()[1]);
        }
    }
    EXPECT_GT(cut, 0U) << "the route should run over the meridian";
}

TEST_F(Export, TheCutLiesHalfWayWhereTheLineDoes) {
    const auto parts = cut_at_antimeridian({{{10.0, 179.0}, 100.0}, {{12.0, -179.0}, 300.0}});
    ASSERT_EQ(parts.size(), 2U);
    EXPECT_EQ(parts[0].back().at, (geo::Position{11.0, 180.0}));
    EXPECT_EQ(parts[1].front().at, (geo::Position{11.0, -180.0}));
    EXPECT_EQ(parts[0].back().height_m, 200.0);
    const auto back = cut_at_antimeridian({{{12.0, -179.0}, {}}, {{10.0, 179.0}, {}}});
    ASSERT_EQ(back.size(), 2U);
    EXPECT_EQ(back[0].back().at, (geo::Position{11.0, -180.0}));
    EXPECT_EQ(back[1].front().at, (geo::Position{11.0, 180.0}));
}

TEST_F(Export, ALineOnTheMeridianItselfLeavesNoCrumbs) {
    for (const std::vector<double>& lons : {std::vector{180.0, -179.0},
                                            {-180.0, 179.0},
                                            {179.0, -180.0},
                                            {179.0, 180.0, -179.0},
                                            {179.0, -180.0, 179.0},
                                            {180.0, -180.0, 180.0}}) {
        ExportLine line;
        for (const double lon_deg : lons)
            line.push_back({{10.0, lon_deg}, {}});
        for (const ExportLine& part : cut_at_antimeridian(line)) {
            EXPECT_GE(part.size(), 2U);
            for (std::size_t i = 1; i < part.size(); ++i)
                EXPECT_LE(std::abs(part[i].at.lon_deg - part[i - 1].at.lon_deg), 180.0);
        }
    }
}

TEST_F(Export, CoordinatesHaveNoExponentAndNoLocale) {
    std::string text;
    for (const double degrees : {1e-9, -1e-7, 0.0, 61.5, -0.000000499, 179.9999999999}) {
        append_degrees(text, degrees);
        text.push_back(' ');
    }
    EXPECT_EQ(text, "0.000000001 -0.0000001 0 61.5 -0.000000499 180 ");
    std::string metres;
    append_metres(metres, -0.5);
    append_metres(metres, 1234.567);
    EXPECT_EQ(metres, "-0.51234.57");
}

/// Every record of a table as GDAL reads it: columns of the heading, then values.
std::vector<std::vector<std::string>> table(const fs::path& file) {
    std::vector<std::vector<std::string>> records(1);
    const auto data = open_vector(file, "CSV");
    if (data == nullptr)
        return records;
    OGRLayer* layer = data->GetLayer(0);
    const OGRFeatureDefn* columns = layer->GetLayerDefn();
    for (int i = 0; i < columns->GetFieldCount(); ++i)
        records[0].emplace_back(columns->GetFieldDefn(i)->GetNameRef());
    while (const auto feature = std::unique_ptr<OGRFeature>(layer->GetNextFeature())) {
        records.emplace_back();
        for (int i = 0; i < columns->GetFieldCount(); ++i)
            records.back().emplace_back(feature->GetFieldAsString(i));
    }
    return records;
}

TEST_F(Export, GdalReadsEveryRecordOfTheTables) {
    Sample trip = sample("saddle");
    trip.plan.days[0].from = "=HYPERLINK(\"x\"), \"quoted\"";
    std::map<std::string, std::vector<std::vector<std::string>>> tables;
    for (const CsvTable& each : export_csv(trip.plan)) {
        EXPECT_TRUE(each.text.ends_with("\r\n"));
        tables[each.name] = table(folder.write(each.name, each.text));
    }
    const auto& days = tables.at("days.csv");
    ASSERT_EQ(days.size(), trip.plan.days.size() + 1);
    EXPECT_EQ(days[1][3], "'=HYPERLINK(\"x\"), \"quoted\"");
    for (std::size_t i = 0; i < trip.plan.days.size(); ++i) {
        const auto column = std::find(days[0].begin(), days[0].end(), "ascent_m") - days[0].begin();
        EXPECT_EQ(std::stod(days[i + 1].at(static_cast<std::size_t>(column))),
                  trip.plan.days[i].ascent_m);
        EXPECT_EQ(std::stod(days[i + 1].back()), trip.plan.days[i].members.back().heaviest_kg);
    }
    EXPECT_EQ(tables.at("legs.csv").size(), trip.plan.legs.size() + 1);
    const auto& loads = tables.at("loads.csv");
    std::size_t record = 1;
    for (const planner::PlanLeg& leg : trip.plan.legs)
        for (const planner::MemberLoad& load : leg.loads) {
            ASSERT_LT(record, loads.size());
            EXPECT_EQ(loads[record][5], load.member);
            EXPECT_EQ(std::stod(loads[record][8]), load.pack_max_kg);
            EXPECT_EQ(std::stod(loads[record][13]), load.parts.food_kg);
            ++record;
        }
    EXPECT_EQ(record, loads.size());
    const auto& cautions = tables.at("cautions.csv");
    ASSERT_EQ(cautions.size(), trip.plan.cautions.size() + 1);
    for (std::size_t i = 0; i < trip.plan.cautions.size(); ++i)
        EXPECT_EQ(cautions[i + 1][1], trip.plan.cautions[i].code);
}

TEST_F(Export, TablesKeepTheirColumnsWhateverTheNamesAre) {
    const planner::Plan plan = test::with_hostile_names(test::hand_built_plan());
    for (const CsvTable& each : export_csv(plan)) {
        const auto records = table(folder.write(each.name, each.text));
        for (const auto& one : records)
            EXPECT_EQ(one.size(), records[0].size()) << each.name;
    }
    const auto json =
        nlohmann::json::parse(export_geojson(plan, test::hand_built_route(plan))); // valid JSON
    EXPECT_EQ(json.at("type"), "FeatureCollection");
}

TEST_F(Export, ALongLegKeepsItsPoints) {
    planner::Plan plan = test::one_leg(test::hand_built_plan());
    planner::Route route = test::hand_built_route(plan);
    std::vector<geo::Position> points;
    for (int i = 0; i < 50'000; ++i)
        points.push_back({60.0 + 1e-5 * i, 13.0 + 1e-6 * (i % 7)});
    route.legs[0].line = geo::Polyline(std::move(points));
    route.legs[0].to_m = route.legs[0].from_m + route.legs[0].line.length_m();
    plan.legs[0].to_m = plan.legs[0].from_m + route.legs[0].line.length_m();
    const std::string gpx = export_gpx(plan, route);
    const std::string json = export_geojson(plan, route);
    const geo::TrackFile read = geo::read_gpx_text(gpx, "long.gpx");
    EXPECT_GE(read.tracks.at(0).parts.at(0).size(), 49'900U);
    EXPECT_GT(json.size(), 1'000'000U);
}

class ExportCommand : public testing::Test {
  protected:
    void SetUp() override { fs::copy(root / "sample-routes" / "saddle", folder.path()); }

    test::TempFolder folder;
    fs::path trip = folder.path() / "trip.json";
};

TEST_F(ExportCommand, WritesWhatIsAskedForAndNothingElse) {
    const fs::path gpx = folder.path() / "out.gpx";
    const fs::path json = folder.path() / "out.geojson";
    const fs::path tables = folder.path() / "tables";
    ASSERT_EQ(say({"export", trip, "--gpx", gpx}).code, ExitCode::done);
    EXPECT_TRUE(text_of(gpx).ends_with("</gpx>\n"));
    EXPECT_FALSE(fs::exists(json) || fs::exists(tables));
    const Said said = say({"export", trip, "--geojson", json, "--csv", tables});
    EXPECT_EQ(said.code, ExitCode::done) << said.err;
    EXPECT_EQ(said.out + said.err, "");
    for (const std::string& name : csv_table_names())
        EXPECT_TRUE(fs::exists(tables / name)) << name;
    EXPECT_EQ(say({"export", trip, "--gpx", gpx}).code, ExitCode::done) << "a second time";
    const Said tables_again = say({"export", trip, "--csv", tables}); // they hold no mark
    EXPECT_EQ(tables_again.code, ExitCode::bad_input);
    EXPECT_THAT(tables_again.err, HasSubstr("--overwrite"));
    EXPECT_EQ(say({"export", trip, "--csv", tables, "--overwrite"}).code, ExitCode::done);
}

TEST_F(ExportCommand, KeepsWhatSomebodyElseWroteOrChanged) {
    const fs::path gpx = folder.path() / "recorded.gpx";
    std::ofstream(gpx) << "<gpx>a recording</gpx>";
    EXPECT_EQ(say({"export", trip, "--gpx", gpx}).code, ExitCode::bad_input);
    EXPECT_EQ(text_of(gpx), "<gpx>a recording</gpx>");
    EXPECT_EQ(say({"export", trip, "--gpx", gpx, "--overwrite"}).code, ExitCode::done);
    std::ofstream(gpx, std::ios::app) << "<!-- my note -->";
    const std::string noted = text_of(gpx);
    EXPECT_EQ(say({"export", trip, "--gpx", gpx}).code, ExitCode::bad_input);
    EXPECT_EQ(text_of(gpx), noted);
    const fs::path book = folder.path() / "other.json";
    std::ofstream(book) << "{}";
    EXPECT_EQ(say({"book", trip, "-o", book}).code, ExitCode::bad_input);
    EXPECT_EQ(text_of(book), "{}");
    EXPECT_EQ(say({"book", trip, "-o", folder.path() / "book.html"}).code, ExitCode::done);
    EXPECT_EQ(say({"book", trip, "-o", folder.path() / "book.html"}).code, ExitCode::done);
}

TEST_F(ExportCommand, TwoSpellingsOfOneOutputAreOne) {
    const fs::path before = fs::current_path();
    fs::current_path(folder.path());
    fs::create_directory_symlink(".", "here");
    for (const std::string& spelling : {std::string("./out.gpx"),
                                        std::string("here/out.gpx"),
                                        (folder.path() / "out.gpx").string()})
        EXPECT_EQ(say({"export", trip, "--gpx", "out.gpx", "--geojson", spelling}).code,
                  ExitCode::bad_input)
            << spelling;
    EXPECT_EQ(say({"export", trip, "--gpx", "tables", "--csv", "./tables"}).code,
              ExitCode::bad_input);
    EXPECT_FALSE(fs::exists("out.gpx") || fs::exists("tables"));
    fs::current_path(before);
}

TEST_F(ExportCommand, NeverWritesOverAnInput) {
    for (const char* option : {"--gpx", "--geojson"})
        for (const char* input : {"trip.json", "saddle.gpx", "saddle-dem.tif"}) {
            const fs::path file = folder.path() / input;
            const std::string before = text_of(file);
            EXPECT_EQ(say({"export", trip, option, file}).code, ExitCode::bad_input) << input;
            EXPECT_EQ(text_of(file), before) << input;
        }
    fs::create_hard_link(trip, folder.path() / "days.csv");
    EXPECT_EQ(say({"export", trip, "--csv", folder.path()}).code, ExitCode::bad_input);
    EXPECT_FALSE(fs::exists(folder.path() / "legs.csv"));
}

TEST_F(ExportCommand, WritesNothingIfOneOutputCannotBe) {
    const fs::path gpx = folder.path() / "out.gpx";
    const std::vector<std::vector<std::string>> wrong = {
        {"--geojson", folder.path() / "nowhere" / "out.geojson"},
        {"--geojson", gpx},
        {"--csv", trip},
        {"--csv", folder.path() / "nowhere" / "tables"}};
    for (const std::vector<std::string>& options : wrong) {
        std::vector<std::string> arguments = {"export", trip, "--gpx", gpx};
        arguments.insert(arguments.end(), options.begin(), options.end());
        EXPECT_EQ(say(arguments).code, ExitCode::bad_input) << options[1];
        EXPECT_FALSE(fs::exists(gpx)) << options[1];
    }
}

TEST_F(ExportCommand, NeedsAnOutput) {
    const Said said = say({"export", trip});
    EXPECT_EQ(said.code, ExitCode::bad_input);
    EXPECT_THAT(said.err, HasSubstr("--gpx"));
}

TEST_F(ExportCommand, APlanThatCannotBeCarriedOutIsWrittenAndSaysSo) {
    const fs::path gpx = folder.path() / "out.gpx";
    const Said said = say({"export",
                           trip,
                           "--gpx",
                           gpx,
                           "--set",
                           "/appointments/0/hard=true",
                           "--set",
                           "/appointments/0/by=09:00"});
    EXPECT_EQ(said.code, ExitCode::no_plan) << said.err;
    EXPECT_THAT(text_of(gpx), HasSubstr("cannot be done"));
    EXPECT_THAT(said.err, HasSubstr("STOP"));
}

} // namespace
} // namespace tumpline::cli
