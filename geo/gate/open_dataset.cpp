#include "geo/gate/open_dataset.h"

#include "geo/gate/gdal_fault.h"
#include "geo/gate/gdal_formats.h"
#include "geo/gate/gdal_library.h"
#include "geo/gate/geopackage.h"
#include "geo/gate/plain_file.h"
#include "geo/gate/quiet_gdal.h"
#include "geo/gate/virtual_raster.h"
#include "geo/input_error.h"

#include <fmt/format.h>
#include <gdal_priv.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <fstream>
#include <vector>

namespace tumpline::geo {

namespace {

constexpr std::string_view a_raster =
    "an elevation raster (GeoTIFF, HGT, VRT, ASCII grid, BIL, DTED or USGS DEM)";
constexpr std::string_view a_vector_file =
    "GPX, GeoJSON, KML, GeoPackage, shapefile, GML, TopoJSON or FlatGeobuf";

/// GDAL's way to say that none of its formats fits the file.
bool of_unknown_kind(const std::string& fault) {
    return fault.empty() || fault.find("not recognized") != std::string::npos;
}

/// Whether a file that starts so is JSON or XML.
bool is_text_tree(std::string_view bytes) {
    const std::size_t first = bytes.find_first_not_of("\xEF\xBB\xBF \t\r\n");
    return first != std::string_view::npos &&
           (bytes[first] == '{' || bytes[first] == '[' || bytes[first] == '<');
}

/// Makes GDAL ready to open `file`.
void need_coordinate_systems(const std::filesystem::path& file) {
    if (!prepare_gdal())
        throw InputError({{.file = file.string(),
                           .place = "",
                           .found = "no PROJ database (proj.db) on this system, which says what "
                                    "coordinates mean",
                           .expected = "the one that comes with PROJ",
                           .advice = "install it (Debian: proj-data), or mend PROJ_DATA if it is "
                                     "set"}});
}

void refuse_unbounded(const std::filesystem::path& file) {
    constexpr std::size_t most_values = 5'000'000; // some 150 bytes each in the library's memory
    std::ifstream in(file, std::ios::binary);
    std::string chunk(std::size_t{1} << 20U, '\0');
    std::size_t values = 0;
    while (in) {
        in.read(chunk.data(), static_cast<std::streamsize>(chunk.size()));
        const std::string_view bytes(chunk.data(), static_cast<std::size_t>(in.gcount()));
        values += static_cast<std::size_t>(std::ranges::count_if(bytes, [](char letter) {
            return letter == ',' || letter == '[' || letter == '{' || letter == '<';
        }));
        if (values > most_values)
            throw InputError(
                {{.file = file.string(),
                  .place = "",
                  .found = fmt::format("more than {} values", most_values),
                  .expected = "a file that fits in memory, as a million points of GeoJSON do",
                  .advice = "save the track as GPX, or split the file"}});
    }
}

} // namespace

void CloseDataset::operator()(GDALDataset* dataset) const {
    const QuietGdal quiet;
    GDALClose(dataset);
}

Dataset open_raster(const std::filesystem::path& file, const Folders& folders) {
    const std::string head =
        require_plain_file(file, {.what = a_raster, .missing = "check the name"});
    need_coordinate_systems(file);
    const Passage passage(folders);
    const QuietGdal quiet;
    if (is_virtual_raster(head))
        require_plain_sources(file, folders);
    const std::vector<const char*> formats = raster_formats();
    // With its folder in front, a name cannot be taken for one of GDAL's own connections.
    Dataset dataset(GDALDataset::Open(std::filesystem::absolute(file).c_str(),
                                      GDAL_OF_RASTER | GDAL_OF_READONLY | GDAL_OF_VERBOSE_ERROR,
                                      formats.data()));
    if (!dataset)
        throw InputError(
            {{.file = file.string(),
              .place = fault_place(quiet.fault(), file),
              .found = of_unknown_kind(quiet.fault()) ? "a file of an unknown kind"
                                                      : fault_in_words(quiet.fault(), file),
              .expected = std::string(a_raster),
              .advice = "turn it into GeoTIFF (gdal_translate)"}});
    return dataset;
}

Dataset open_vector(const std::filesystem::path& file) {
    const std::string head = require_plain_file(file, track_wanted);
    if (is_text_tree(head))
        refuse_unbounded(file);
    if (is_sqlite(head))
        require_plain_tables(file);
    need_coordinate_systems(file);
    const QuietGdal quiet;
    const std::vector<const char*> formats = vector_formats();
    // nothing is written beside the input, nothing fetched that a schema names
    const std::array<const char*, 3> options{"WRITE_GFS=NO", "DOWNLOAD_SCHEMA=NO", nullptr};
    Dataset dataset(GDALDataset::Open(std::filesystem::absolute(file).c_str(),
                                      GDAL_OF_VECTOR | GDAL_OF_READONLY,
                                      formats.data(),
                                      options.data()));
    if (!dataset)
        throw InputError(
            {{.file = file.string(),
              .place = fault_place(quiet.fault(), file),
              .found = of_unknown_kind(quiet.fault()) ? "a file of an unknown kind"
                                                      : fault_in_words(quiet.fault(), file),
              .expected = std::string(a_vector_file),
              .advice = "export the track as GPX or GeoJSON (ogr2ogr)"}});
    if (!quiet.fault()
             .empty()) // such as a coordinate system that GDAL gives up and takes for WGS 84
        throw InputError({{.file = file.string(),
                           .place = fault_place(quiet.fault(), file),
                           .found = fault_in_words(quiet.fault(), file),
                           .expected = "a file that can be read to its end and needs nothing else",
                           .advice = "export the track again"}});
    return dataset;
}

} // namespace tumpline::geo
