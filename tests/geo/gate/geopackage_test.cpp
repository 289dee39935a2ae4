#include "geo/gate/geopackage.h"

#include "geo/gate/gdal_library.h"
#include "geo/input_error.h"
#include "geo/tracks/vector_file.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <gdal_priv.h>
#include <gtest/gtest.h>
#include <ogrsf_frmts.h>
#include <sqlite3.h>

#include <filesystem>
#include <fstream>
#include <memory>
#include <string>
#include <vector>

namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;

/// A GeoPackage of one line from 8 E to 8.1 E on 60 N, written by GDAL.
void write_geopackage(const fs::path& file) {
    prepare_gdal();
    const std::string memory = "/vsimem/" + file.filename().string();
    {
        GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GPKG");
        const std::unique_ptr<GDALDataset> made(
            driver->Create(memory.c_str(), 0, 0, 0, GDT_Unknown, nullptr));
        ASSERT_NE(made, nullptr);
        OGRSpatialReference wgs84;
        wgs84.importFromEPSG(4326);
        wgs84.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
        OGRLayer* layer = made->CreateLayer("ways", &wgs84, wkbLineString, nullptr);
        OGRFieldDefn name("name", OFTString);
        layer->CreateField(&name);
        OGRFeature feature(layer->GetLayerDefn());
        feature.SetField("name", "Shore");
        OGRLineString line;
        line.addPoint(8.0, 60.0);
        line.addPoint(8.1, 60.0);
        feature.SetGeometry(&line);
        ASSERT_EQ(layer->CreateFeature(&feature), OGRERR_NONE);
    }
    test::keep_memory(memory, file);
}

void run_sql(const fs::path& file, const std::string& sql) {
    sqlite3* database = nullptr;
    ASSERT_EQ(sqlite3_open(file.c_str(), &database), SQLITE_OK);
    EXPECT_EQ(sqlite3_exec(database, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK) << sql;
    sqlite3_close(database);
}

std::string refused(const fs::path& file) {
    try {
        static_cast<void>(read_vector_file(file));
    } catch (const InputError& error) {
        return error.problems().front().found;
    }
    return "nothing";
}

std::vector<std::string> names_in(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder))
        names.push_back(entry.path().filename().string());
    return names;
}

class GeoPackage : public testing::Test {
  protected:
    GeoPackage() { write_geopackage(file_); }

    test::TempFolder folder_;
    fs::path file_ = folder_.path() / "a b%?.gpkg"; // letters that an address would take amiss
};

TEST_F(GeoPackage, IsReadAndNothingIsLeftBesideIt) {
    const TrackFile tracks = read_vector_file(file_);
    EXPECT_EQ(tracks.tracks.at(0).name, "Shore");
    EXPECT_EQ(tracks.tracks.at(0).parts.at(0).at(1).at.lon_deg, 8.1);
    EXPECT_EQ(names_in(folder_.path()), std::vector<std::string>{"a b%?.gpkg"});
}

/// A view is a program; this one never ends.
TEST_F(GeoPackage, IsOfTablesAndNotOfViews) {
    run_sql(file_,
            "CREATE VIEW endless AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM "
            "n) SELECT i AS fid FROM n;"
            "INSERT INTO gpkg_contents (table_name, data_type) VALUES ('endless', 'attributes')");
    EXPECT_EQ(refused(file_), "the view \"endless\"");
}

TEST_F(GeoPackage, IsClosedByTheProgramThatWroteIt) {
    run_sql(file_, "PRAGMA journal_mode = WAL");
    EXPECT_EQ(refused(file_), "a database with a write-ahead log");
    EXPECT_EQ(names_in(folder_.path()), std::vector<std::string>{"a b%?.gpkg"});
}

TEST_F(GeoPackage, IsNoDatabaseCutShort) {
    fs::resize_file(file_, 50);
    EXPECT_EQ(refused(file_), "a damaged database");
}

TEST(Sqlite, IsKnownByItsFirstBytes) {
    EXPECT_TRUE(is_sqlite(std::string_view("SQLite format 3\0", 16)));
    EXPECT_FALSE(is_sqlite("{\"SQLite format 3\": 1}"));
}

} // namespace
} // namespace tumpline::geo
