#include "geo/gate/virtual_raster.h"

#include "geo/ground/elevation.h"
#include "geo/input_error.h"
#include "tests/support/hostile_rasters.h"
#include "tests/support/raster_file.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;
using test::raw_vrt_of;
using test::vrt_of;
using testing::HasSubstr;

/// A trip's folder with a raster in it, and a folder for rasters below it.
class VirtualRaster : public testing::Test {
  protected:
    VirtualRaster() {
        fs::create_directory(trip_);
        fs::create_directory(trip_ / "heights");
        test::write_raster(trip_ / "good.tif", test::small_raster(), test::tilted_m);
        test::write_raster(outside_ / "far.tif", test::small_raster(), test::tilted_m);
    }

    /// What is wrong with a VRT in the trip's folder, or below it.
    [[nodiscard]] Problem refusal(const std::string& text, const std::string& name = "a.vrt") {
        try {
            const Elevation elevation({folder_.write("trip/" + name, text)}, trip_);
        } catch (const InputError& error) {
            return error.problems().front();
        }
        return {.file = {}, .place = {}, .found = "nothing", .expected = {}, .advice = {}};
    }

    test::TempFolder folder_;
    fs::path outside_ = folder_.path();
    fs::path trip_ = folder_.path() / "trip";
};

TEST_F(VirtualRaster, IsReadFromBesideItAndFromTheTripsFolder) {
    for (const char* name : {"a.vrt", "heights/a.vrt"}) {
        const std::string source = std::string(name) == "a.vrt" ? "good.tif" : "../good.tif";
        Elevation elevation({folder_.write(std::string("trip/") + name, vrt_of(source))}, trip_);
        // cell (7, 9) of the plane: 100 + 3 x 7 - 2 x 9 = 103
        EXPECT_NEAR(*elevation.at(test::centre(7, 9)), 103.0, 1e-3) << name;
    }
}

TEST_F(VirtualRaster, IsLookedForWhereALinkLeads) {
    static_cast<void>(folder_.write("store.vrt", vrt_of("far.tif"))); // outside, beside its raster
    fs::create_symlink(outside_ / "store.vrt", trip_ / "link.vrt");
    Elevation elevation({trip_ / "link.vrt"}, trip_);
    EXPECT_NEAR(*elevation.at(test::centre(7, 9)), 103.0, 1e-3);
}

TEST_F(VirtualRaster, LeadsToNoOtherFolder) {
    for (const std::string& source : {std::string("../far.tif"), (outside_ / "far.tif").string()}) {
        const Problem problem = refusal(vrt_of(source));
        EXPECT_EQ(problem.found, "a file in another folder") << source;
        EXPECT_THAT(problem.place, HasSubstr("far.tif"));
        EXPECT_THAT(problem.expected, HasSubstr("trip's folder"));
        EXPECT_THAT(problem.advice, HasSubstr("copy it there"));
    }
    fs::create_symlink(outside_ / "far.tif", trip_ / "link.tif");
    EXPECT_EQ(refusal(vrt_of("link.tif")).found, "a file in another folder");
    // without a trip's folder: only beside the file
    EXPECT_THROW(Elevation({folder_.write("trip/heights/b.vrt", vrt_of("../good.tif"))}),
                 InputError);
}

TEST_F(VirtualRaster, LeadsToNothingButFiles) {
    test::make_pipe(trip_ / "pipe");
    EXPECT_EQ(refusal(vrt_of("pipe")).found, "a folder, device or pipe");
    EXPECT_EQ(refusal(vrt_of("heights")).found, "a folder, device or pipe");
    EXPECT_EQ(refusal(vrt_of("/dev/zero")).found, "a folder, device or pipe");
    EXPECT_EQ(refusal(vrt_of("absent.tif")).found, "no such file");
    for (const char* source : {"/vsicurl_streaming/http://192.0.2.1/dem.tif",
                               "NETCDF:&quot;http://192.0.2.1/dem.nc&quot;:z",
                               "vrt://good.tif?bands=1",
                               "&lt;VRTDataset/&gt;",
                               ""})
        EXPECT_NE(refusal(vrt_of(source)).found, "nothing") << source;
}

TEST_F(VirtualRaster, IsMadeOfRastersInTheFormatsOfHeights) {
    static_cast<void>(folder_.write("trip/notes.txt", "buy string"));
    EXPECT_EQ(refusal(vrt_of("notes.txt")).found, "a file of an unknown kind");
    const Problem raw = refusal(raw_vrt_of("/bin/sh"));
    EXPECT_EQ(raw.found, "the kind VRTRawRasterBand");
    EXPECT_THAT(raw.advice, HasSubstr("gdal_translate"));
    std::string other_case = raw_vrt_of("notes.txt");
    other_case.replace(other_case.find("subClass"), 8, "SUBCLASS");
    EXPECT_EQ(refusal(other_case).found, "the kind VRTRawRasterBand");
    EXPECT_EQ(refusal("<VRTDataset rasterXSize=\"1\"").found, "broken XML");
}

TEST_F(VirtualRaster, IsNotMadeOfItself) {
    EXPECT_EQ(refusal(vrt_of("a.vrt")).found, "a VRT that is made of itself");
    static_cast<void>(folder_.write("trip/b.vrt", vrt_of("a.vrt")));
    EXPECT_EQ(refusal(vrt_of("b.vrt")).found, "a VRT that is made of itself");
}

TEST_F(VirtualRaster, StandsNoMoreThanEightDeepInOthers) {
    static_cast<void>(folder_.write("trip/1.vrt", vrt_of("good.tif")));
    for (int depth = 2; depth <= 9; ++depth)
        static_cast<void>(folder_.write(fmt::format("trip/{}.vrt", depth),
                                        vrt_of(fmt::format("{}.vrt", depth - 1))));
    EXPECT_EQ(refusal(vrt_of("7.vrt")).found, "nothing"); // a.vrt itself is the eighth
    EXPECT_EQ(refusal(vrt_of("8.vrt")).found, "VRTs more than 8 deep in one another");
}

/// Seven VRTs, each of the one below ten times over: 10^7 rasters to look into for one height.
TEST_F(VirtualRaster, NamesNoMoreThanAHundredThousandSources) {
    const auto ten_of = [](const std::string& source) {
        std::string text = vrt_of(source);
        const std::size_t first = text.find("<SimpleSource>");
        const std::size_t end = text.find("</VRTRasterBand>");
        const std::string one = text.substr(first, end - first);
        for (int more = 0; more < 9; ++more)
            text.insert(first, one);
        return text;
    };
    static_cast<void>(folder_.write("trip/1.vrt", ten_of("good.tif")));
    for (int depth = 2; depth <= 6; ++depth)
        static_cast<void>(folder_.write(fmt::format("trip/{}.vrt", depth),
                                        ten_of(fmt::format("{}.vrt", depth - 1))));
    EXPECT_EQ(refusal(ten_of("6.vrt")).found, "more than 100000 sources");
}

} // namespace
} // namespace tumpline::geo
