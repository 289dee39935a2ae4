#include "geo/gate/open_dataset.h"

#include "geo/input_error.h"
#include "tests/support/hostile_rasters.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <gdal_priv.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <functional>
#include <string>

namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;

Problem problem_with(const std::function<void()>& opening) {
    try {
        opening();
    } catch (const InputError& error) {
        return error.problems().front();
    }
    return {.file = {}, .place = {}, .found = "nothing", .expected = {}, .advice = {}};
}

TEST(OpenRaster, OpensHeightsAndNothingElse) {
    const test::TempFolder folder;
    const fs::path good = folder.path() / "good.tif";
    test::write_raster(good, test::small_raster(), test::tilted_m);
    const Dataset dataset = open_raster(good, folders_around(good));
    EXPECT_EQ(dataset->GetRasterXSize(), 50);
    EXPECT_EQ(dataset->GetRasterYSize(), 40);
    EXPECT_EQ(dataset->GetAccess(), GA_ReadOnly);
    for (const auto& [name, text] :
         {std::pair<const char*, std::string>{"a.mrf", test::mrf_with_files("good.tif", "x.idx")},
          {"a.kml", test::kml_with_link("http://127.0.0.1:9/a.kml")},
          {"a.geojson", test::geojson_in("urn:ogc:def:crs:OGC:1.3:CRS84")},
          {"a.tif", "no raster"}}) {
        const fs::path file = folder.write(name, text);
        const Problem problem =
            problem_with([&] { static_cast<void>(open_raster(file, folders_around(file))); });
        EXPECT_EQ(problem.found, "a file of an unknown kind") << name;
        EXPECT_THAT(problem.advice, testing::HasSubstr("gdal_translate")) << name;
    }
}

TEST(OpenVector, OpensLinesAndNothingElse) {
    const test::TempFolder folder;
    const Folders folders = folders_around(folder.path() / "x");
    const Passage passage(folders);
    const Dataset dataset =
        open_vector(folder.write("a.geojson", test::geojson_in("urn:ogc:def:crs:OGC:1.3:CRS84")));
    EXPECT_EQ(dataset->GetLayerCount(), 1);
    test::write_raster(folder.path() / "good.tif", test::small_raster(), test::tilted_m);
    const Problem raster =
        problem_with([&] { static_cast<void>(open_vector(folder.path() / "good.tif")); });
    EXPECT_EQ(raster.found, "a file of an unknown kind");
    EXPECT_THAT(raster.advice, testing::HasSubstr("ogr2ogr"));
    const Problem crs = problem_with([&] {
        static_cast<void>(open_vector(folder.write(
            "b.geojson", test::geojson_in("+proj=longlat +nadgrids=absent.gsb +no_defs"))));
    });
    EXPECT_EQ(crs.expected, "a file that can be read to its end and needs nothing else");
}

} // namespace
} // namespace tumpline::geo
