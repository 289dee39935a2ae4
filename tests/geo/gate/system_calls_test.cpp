#include "tests/support/hostile_rasters.h"
#include "tests/support/raster_file.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

/// What the program asks of the system while it reads files made to lead it astray, told by strace:
/// no socket, no other program, nothing opened for writing, made, moved or removed.
namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;

int exit_code(const std::string& command) {
    const int status = std::system(command.c_str()); // NOLINT: a command of ours
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

std::map<fs::path, std::string> contents(const fs::path& folder) {
    std::map<fs::path, std::string> found;
    for (const auto& entry : fs::recursive_directory_iterator(folder))
        if (entry.is_regular_file()) {
            std::ifstream in(entry.path(), std::ios::binary);
            found[entry.path()].assign(std::istreambuf_iterator<char>(in), {});
        }
    return found;
}

class SystemCalls : public testing::Test {
  protected:
    void SetUp() override {
        if (exit_code("strace -V >/dev/null 2>&1") != 0)
            GTEST_SKIP() << "strace is not here";
        if (exit_code("strace -o /dev/null true >/dev/null 2>&1") != 0)
            GTEST_SKIP() << "this machine does not let one program watch another";
        test::write_raster(trip("good.tif"), test::small_raster(), test::tilted_m);
        std::string gpx = "<gpx version=\"1.1\" creator=\"test\"><trk><name>way</name><trkseg>";
        for (int point = 0; point < 20; ++point)
            gpx += fmt::format("<trkpt lat=\"60.99\" lon=\"{:.3f}\"/>", 12.001 + 0.001 * point);
        put("way.gpx", gpx + "</trkseg></trk></gpx>");
        put("victim.gpx", "another input");
        test::make_pipe(trip("pipe"));
    }

    [[nodiscard]] fs::path trip(const std::string& name) const { return trip_ / name; }

    void put(const std::string& name, const std::string& text) const {
        std::ofstream(trip(name), std::ios::binary) << text;
    }

    /// Runs the program in the trip's folder; exits with `code`, and does nothing but read.
    void only_reads(const std::string& arguments, int code) const {
        const auto before = contents(trip_);
        const fs::path log = folder_.path() / "strace.log";
        // Ended after a minute, should it hang. What looks for leaks in sanitizer builds cannot be
        // watched.
        const std::string command = fmt::format(
            "cd '{}' && ASAN_OPTIONS=detect_leaks=0 timeout 60 strace -f -qq -o '{}' -e "
            "trace=%network,execve,open,openat,creat,rename,renameat,renameat2,unlink,unlinkat,"
            "mkdir,mkdirat,truncate,mknod,mknodat '{}' {} >/dev/null 2>&1 </dev/null",
            trip_.string(),
            log.string(),
            TUMPLINE_PROGRAM,
            arguments);
        EXPECT_EQ(exit_code(command), code) << arguments;
        EXPECT_EQ(contents(trip_), before) << arguments;
        std::ifstream in(log);
        int programs = 0;
        int lines = 0;
        for (std::string line; std::getline(in, line); ++lines) {
            if (line.find(" execve(") != std::string::npos) {
                ++programs;
                continue;
            }
            const bool opens = line.find(" open(") != std::string::npos ||
                               line.find(" openat(") != std::string::npos;
            const bool writes = line.find("O_WRONLY") != std::string::npos ||
                                line.find("O_RDWR") != std::string::npos ||
                                line.find("O_CREAT") != std::string::npos;
            const bool call = line.find('(') != std::string::npos;
            EXPECT_FALSE(call && (!opens || writes)) << arguments << ": " << line;
        }
        EXPECT_EQ(programs, 1) << arguments;
        EXPECT_GT(lines, 5) << arguments;
    }

    test::TempFolder folder_;
    fs::path trip_ = [this] {
        fs::create_directory(folder_.path() / "trip");
        return fs::canonical(folder_.path() / "trip");
    }();
};

TEST_F(SystemCalls, ForGoodFilesAreReads) {
    put("all.vrt", test::vrt_of("good.tif"));
    only_reads("track way.gpx --elevation good.tif --elevation all.vrt", 0);
    put("line.geojson", test::geojson_in("urn:ogc:def:crs:EPSG::4326"));
    only_reads("track line.geojson", 0);
    only_reads("plan '" + (test::root / "sample-routes/saddle/trip.json").string() + "'", 0);
}

TEST_F(SystemCalls, ForRastersThatLeadElsewhereAreReads) {
    const std::string address = "http://127.0.0.1:9/dem";
    put("link.kml", test::kml_with_link(address + ".kml"));
    put("stream.vrt", test::vrt_of("/vsicurl_streaming/" + address + ".tif"));
    put("netcdf.vrt", test::vrt_of("NETCDF:&quot;" + address + ".nc&quot;:z"));
    put("raw.vrt", test::raw_vrt_of("/bin/sh"));
    put("near.vrt", test::raw_vrt_of("way.gpx"));
    put("pipe.vrt", test::vrt_of("pipe"));
    put("self.vrt", test::vrt_of("self.vrt"));
    put("out.vrt", test::vrt_of("../../../../../../etc/passwd"));
    put("bad.mrf", test::mrf_with_files("victim.gpx", "new.idx"));
    put("service.xml",
        "<GDAL_WMS><Service name=\"WMS\"><ServerUrl>" + address +
            "</ServerUrl></Service></GDAL_WMS>");
    put("grid.vrt", [] { // a coordinate system that names a pipe
        std::string text = test::vrt_of("good.tif");
        text.replace(text.find("EPSG:4326"), 9, "+proj=longlat +ellps=bessel +nadgrids=pipe");
        return text;
    }());
    for (const char* name : {"link.kml",
                             "stream.vrt",
                             "netcdf.vrt",
                             "raw.vrt",
                             "near.vrt",
                             "pipe.vrt",
                             "self.vrt",
                             "out.vrt",
                             "bad.mrf",
                             "service.xml",
                             "pipe",
                             "NETCDF:\\\"http://127.0.0.1:9/dem.nc\\\":z",
                             "/vsicurl/http://127.0.0.1:9/dem.tif",
                             "/dev/zero"})
        only_reads(fmt::format("track way.gpx --elevation \"{}\"", name), 2);
    only_reads("track way.gpx --elevation grid.vrt", 2);
}

TEST_F(SystemCalls, ForTracksThatLeadElsewhereAreReads) {
    put("link.kml", test::kml_with_link("http://127.0.0.1:9/more.kml"));
    put("layers.vrt",
        "<OGRVRTDataSource><OGRVRTLayer name=\"way\"><SrcDataSource>way.gpx</SrcDataSource>"
        "</OGRVRTLayer></OGRVRTDataSource>");
    put("link.geojson", R"({"type": "FeatureCollection", "crs": {"type": "link", "properties":
        {"href": "http://127.0.0.1:9/crs", "type": "proj4"}}, "features": []})");
    put("init.geojson", test::geojson_in("+init=" + trip("pipe").string() + ":1"));
    put("schema.gml", R"(<?xml version="1.0" encoding="utf-8"?>
<ogr:FeatureCollection xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
 xsi:schemaLocation="http://ogr.maptools.org/ http://127.0.0.1:9/way.xsd"
 xmlns:ogr="http://ogr.maptools.org/" xmlns:gml="http://www.opengis.net/gml"></ogr:FeatureCollection>)");
    put("nodes.osm", R"(<osm version="0.6"><node id="1" lat="60" lon="12"/></osm>)");
    for (const char* name : {"link.kml",
                             "layers.vrt",
                             "link.geojson",
                             "init.geojson",
                             "schema.gml",
                             "nodes.osm",
                             "pipe"})
        only_reads(fmt::format("track {}", name), 2);
}

} // namespace
} // namespace tumpline::geo
