#include "geo/layers/write_features.h"

#include "geo/gate/open_dataset.h"
#include "geo/gate/passage.h"
#include "tests/support/temp_folder.h"

#include <gdal_priv.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <ogrsf_frmts.h>

namespace tumpline::geo {
namespace {

OutFile two_layers() {
    OutFeature camp;
    camp.fields = {{"name", {.text = "Birch spit", .number = {}}},
                   {"km", {.text = {}, .number = 12.5}}};
    camp.parts = {{{.at = {.lat_deg = 61.5, .lon_deg = 13.1}, .height_m = 640.0}}};
    OutFeature leg;
    leg.fields = {{"name", {.text = "Over the pass", .number = {}}}};
    leg.parts = {{{.at = {.lat_deg = 61.5, .lon_deg = 13.1}, .height_m = 640.0},
                  {.at = {.lat_deg = 61.6, .lon_deg = 13.3}, .height_m = 910.0}},
                 {{.at = {.lat_deg = 61.7, .lon_deg = 13.4}, .height_m = {}},
                  {.at = {.lat_deg = 61.8, .lon_deg = 13.5}, .height_m = 500.0}}};
    OutFeature nowhere;
    nowhere.fields = {{"name", {.text = "Somewhere", .number = {}}}};
    return {.layers = {{.name = "places", .points = true, .features = {camp, nowhere}},
                       {.name = "legs", .points = false, .features = {leg}}},
            .mark = "made by tumpline",
            .date = "2027-06-18"};
}

/// Read by the GDAL library itself.
void expect_all(const std::filesystem::path& file) {
    const Folders folders = folders_around(file);
    const Passage passage(folders);
    const Dataset read = open_layers(file);
    ASSERT_TRUE(read);
    OGRLayer* const places = read->GetLayerByName("places");
    ASSERT_NE(places, nullptr);
    EXPECT_EQ(places->GetFeatureCount(), 2);
    const OGRFeatureUniquePtr camp(places->GetNextFeature());
    EXPECT_STREQ(camp->GetFieldAsString("name"), "Birch spit");
    EXPECT_DOUBLE_EQ(camp->GetFieldAsDouble("km"), 12.5);
    const OGRPoint& at = *camp->GetGeometryRef()->toPoint();
    EXPECT_DOUBLE_EQ(at.getX(), 13.1); // longitude first, whatever the standard's axes
    EXPECT_DOUBLE_EQ(at.getY(), 61.5);
    EXPECT_DOUBLE_EQ(at.getZ(), 640.0);
    const OGRFeatureUniquePtr nowhere(places->GetNextFeature());
    EXPECT_EQ(nowhere->GetGeometryRef(), nullptr);
    EXPECT_FALSE(nowhere->IsFieldSetAndNotNull(nowhere->GetFieldIndex("km")));
    OGRLayer* const legs = read->GetLayerByName("legs");
    ASSERT_NE(legs, nullptr);
    const OGRFeatureUniquePtr leg(legs->GetNextFeature());
    const OGRMultiLineString& lines = *leg->GetGeometryRef()->toMultiLineString();
    ASSERT_EQ(lines.getNumGeometries(), 2);
    EXPECT_DOUBLE_EQ(lines.getGeometryRef(0)->getZ(1), 910.0);
    // A height of the second part is not known: it has none.
    EXPECT_DOUBLE_EQ(lines.getGeometryRef(1)->getZ(1), 0.0);
    EXPECT_DOUBLE_EQ(lines.getGeometryRef(1)->getX(0), 13.4);
}

TEST(WriteFeatures, AGeoPackageIsReadBackWhole) {
    const test::TempFolder folder;
    const std::string bytes = geopackage(two_layers());
    EXPECT_EQ(bytes.substr(0, 15), "SQLite format 3"); // OGC 12-128r18, 1.1.1.1.1
    const auto file = folder.write("t.gpkg", bytes);
    expect_all(file);
    const Folders folders = folders_around(file);
    const Passage passage(folders);
    const Dataset read = open_layers(file);
    OGRLayer* const about = read->GetLayerByName("about");
    ASSERT_NE(about, nullptr);
    EXPECT_STREQ(OGRFeatureUniquePtr(about->GetNextFeature())->GetFieldAsString("mark"),
                 "made by tumpline");
}

TEST(WriteFeatures, AKmlIsReadBackWholeAndItsMarkIsAComment) {
    const test::TempFolder folder;
    const std::string text = kml(two_layers());
    EXPECT_THAT(text, testing::HasSubstr("?>\n<!-- made by tumpline -->\n"));
    expect_all(folder.write("t.kml", text));
}

TEST(WriteFeatures, TheSameFileIsTheSameBytes) {
    EXPECT_EQ(geopackage(two_layers()), geopackage(two_layers()));
    EXPECT_EQ(kml(two_layers()), kml(two_layers()));
}

} // namespace
} // namespace tumpline::geo
