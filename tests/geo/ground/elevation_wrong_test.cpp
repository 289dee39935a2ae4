#include "geo/ground/elevation.h"
#include "geo/input_error.h"
#include "tests/support/hostile_rasters.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>

/// Rasters made of others, and those that cannot be used.
namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;
using test::centre;
using test::RasterFile;
using test::small_raster;
using test::TempFolder;
using test::tilted_m;
using test::vrt_of;
using test::write_hgt;
using test::write_raster;
using testing::HasSubstr;

Problem problem_of(const fs::path& file) {
    try {
        Elevation elevation({file});
        (void)elevation.at({.lat_deg = 60.99, .lon_deg = 12.01});
    } catch (const InputError& error) {
        EXPECT_FALSE(error.problems().empty());
        return error.problems().front();
    }
    return {.file = "no problem", .place = {}, .found = {}, .expected = {}, .advice = {}};
}

TEST(Elevation, ReadsAVrt) {
    const TempFolder folder;
    write_raster(folder.path() / "slope.tif", small_raster(), tilted_m);
    Elevation elevation({folder.write("all.vrt", vrt_of("slope.tif"))});
    EXPECT_NEAR(*elevation.at(centre(7, 9)), tilted_m(7, 9), 1e-3);
}

TEST(Elevation, RefusesAVrtThatPointsToTheNetwork) {
    const TempFolder folder;
    testing::internal::CaptureStderr();
    for (const char* source : {"/vsicurl/http://192.0.2.1/dem.tif",
                               "http://192.0.2.1/dem.tif",
                               "/vsis3/bucket/dem.tif",
                               "WMTS:http://192.0.2.1/wmts"}) {
        const Problem problem = problem_of(folder.write("net.vrt", vrt_of(source)));
        EXPECT_THAT(problem.file, HasSubstr("net.vrt")) << source;
    }
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
}

TEST(Elevation, NamesWhatIsWrongWithARaster) {
    const TempFolder folder;
    testing::internal::CaptureStderr();
    EXPECT_EQ(problem_of(folder.path() / "absent.tif").found, "no such file");
    EXPECT_EQ(problem_of("/vsicurl/http://192.0.2.1/dem.tif").found, "an address");
    EXPECT_EQ(problem_of("http://192.0.2.1/dem.tif").found, "an address");
    EXPECT_EQ(problem_of(folder.path()).found, "a folder");
    EXPECT_THAT(problem_of(folder.write("text.tif", "not a raster")).expected,
                HasSubstr("elevation raster"));
    EXPECT_THAT(problem_of(folder.write("empty.tif", "")).expected, HasSubstr("elevation raster"));

    RasterFile raster = small_raster();
    raster.crs = "";
    write_raster(folder.path() / "nowhere.tif", raster, tilted_m);
    EXPECT_EQ(problem_of(folder.path() / "nowhere.tif").place, "CRS");
    raster.crs = "LOCAL_CS[\"a field\",UNIT[\"metre\",1]]";
    write_raster(folder.path() / "local.tif", raster, tilted_m);
    EXPECT_EQ(problem_of(folder.path() / "local.tif").place, "CRS");
    raster = small_raster();
    raster.bytes = true;
    write_raster(folder.path() / "map.tif", raster, [](int, int) { return 0.0; });
    EXPECT_EQ(problem_of(folder.path() / "map.tif").place, "band 1");
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
}

TEST(Elevation, NamesEveryRasterThatCannotBeUsed) {
    const TempFolder folder;
    try {
        const Elevation elevation({folder.path() / "one.tif", folder.path() / "two.tif"});
        FAIL();
    } catch (const InputError& error) {
        ASSERT_EQ(error.problems().size(), 2U);
        EXPECT_THAT(error.problems()[1].file, HasSubstr("two.tif"));
    }
}

TEST(Elevation, SpoiltRastersAreAnsweredInTime) {
    const TempFolder folder;
    write_raster(folder.path() / "good.tif", small_raster(), tilted_m);
    write_hgt(folder.path() / "N60E012.hgt", 1201, [](int column, int) { return column; });
    std::mt19937_64 engine(11);
    testing::internal::CaptureStderr();
    for (const char* name : {"good.tif", "N60E012.hgt"}) {
        std::ifstream in(folder.path() / name, std::ios::binary);
        const std::string good((std::istreambuf_iterator<char>(in)), {});
        for (int round = 0; round < 150; ++round) {
            std::string bad = good;
            if (round % 3 == 0)
                bad.resize(engine() % bad.size());
            else // most bits stand in cells; what leads to them stands at the ends
                for (int flip = 0; flip < 8; ++flip) {
                    const std::size_t end = std::min<std::size_t>(bad.size(), 512);
                    const std::size_t place = engine() % end;
                    bad[flip % 2 == 0 ? place : bad.size() - 1 - place] =
                        static_cast<char>(engine());
                }
            const fs::path spoilt = folder.path() / "spoilt" / name;
            fs::create_directory(spoilt.parent_path());
            std::ofstream(spoilt, std::ios::binary) << bad;
            try {
                Elevation elevation({spoilt});
                (void)elevation.describe();
                for (int row = 0; row < 40; ++row)
                    EXPECT_TRUE(std::isfinite(elevation.at(centre(row, row)).value_or(0.0)));
            } catch (const InputError& error) {
                EXPECT_THAT(std::string(error.what()), HasSubstr(name));
            }
        }
    }
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
}

TEST(Elevation, AHugeDeclaredRasterTakesNoMemory) {
    const TempFolder folder;
    const std::string vrt =
        R"(<VRTDataset rasterXSize="2000000000" rasterYSize="2000000000"><SRS>EPSG:4326</SRS>
<GeoTransform>-180.0, 1.8e-7, 0.0, 90.0, 0.0, -9e-8</GeoTransform>
<VRTRasterBand dataType="Float64" band="1"/></VRTDataset>)";
    const fs::path file = folder.write("huge.vrt", vrt);
    Elevation elevation({file});
    for (int lon_deg = -179; lon_deg < 180; ++lon_deg)
        EXPECT_EQ(elevation.at({.lat_deg = 61.0, .lon_deg = lon_deg + 0.25}).value_or(0.0), 0.0);
}

} // namespace
} // namespace tumpline::geo
