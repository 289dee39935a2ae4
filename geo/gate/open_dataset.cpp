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
#include <cstdint>
#include <fstream>
#include <system_error>
#include <vector>

namespace tumpline::geo {

namespace {

constexpr std::string_view a_raster =
    "an elevation raster (GeoTIFF, HGT, VRT, ASCII grid, BIL, DTED or USGS DEM)";
constexpr std::string_view a_layer_file =
    "GeoPackage, GeoJSON, KML, shapefile, GML, TopoJSON, FlatGeobuf or an OpenStreetMap extract";
constexpr Wanted layer_wanted{
    .what = "a file of water, ways or other things to draw on the map",
    .missing = "check the name; the map's layers are looked for in the trip file's folder"};
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

/// A file of lines, points and areas, and how it is opened.
struct Opening {
    std::vector<const char*> formats;
    const char* const* options;
    std::string_view expected;
    std::string_view advice;
};

/// What should have been there instead, and what to do about it.
struct Instead {
    std::string_view expected;
    std::string_view advice;
};

[[noreturn]] void
refuse_unopened(const std::filesystem::path& file, const QuietGdal& quiet, const Instead& instead) {
    throw InputError(
        {{.file = file.string(),
          .place = fault_place(quiet.fault(), file),
          .found = of_unknown_kind(quiet.fault()) ? "a file of an unknown kind"
                                                  : fault_in_words(quiet.fault(), file),
          .expected = std::string(instead.expected),
          .advice = std::string(instead.advice)}});
}

Dataset open_whole(const std::filesystem::path& file, const Opening& how) {
    const QuietGdal quiet;
    Dataset dataset(GDALDataset::Open(std::filesystem::absolute(file).c_str(),
                                      GDAL_OF_VECTOR | GDAL_OF_READONLY,
                                      how.formats.data(),
                                      how.options));
    if (!dataset)
        refuse_unopened(file, quiet, {how.expected, how.advice});
    if (!quiet.fault()
             .empty()) // such as a coordinate system that GDAL gives up and takes for WGS 84
        throw InputError({{.file = file.string(),
                           .place = fault_place(quiet.fault(), file),
                           .found = fault_in_words(quiet.fault(), file),
                           .expected = "a file that can be read to its end and needs nothing else",
                           .advice = "export the file again"}});
    return dataset;
}

/// Which tags of OpenStreetMap become fields; areas are told from lines by these keys.
constexpr std::string_view extract_tags =
    "closed_ways_are_polygons=boundary,building,landuse,leisure,natural,water\n"
    "attribute_name_laundering=yes\n"
    "[points]\nosm_id=no\nother_tags=no\n"
    "attributes=name,waterway,rapids,whitewater,whitewater:rapid_grade,natural,building\n"
    "[lines]\nosm_id=no\nother_tags=no\n"
    "attributes=name,waterway,highway,rapids,whitewater:section_grade,whitewater:rapid_grade,"
    "intermittent,trail_visibility,natural\n"
    "[multipolygons]\nosm_id=no\nother_tags=no\n"
    "attributes=name,natural,water,waterway,landuse,building,boundary,leisure,intermittent\n"
    "[multilinestrings]\nosm_id=no\nother_tags=no\nattributes=name,type\n"
    "[other_relations]\nosm_id=no\nother_tags=no\nattributes=name,type\n";

/// Bytes that GDAL finds under a name in memory while this lives.
class MemoryFile {
  public:
    explicit MemoryFile(std::string_view bytes)
        : bytes_(bytes), name_(fmt::format("/vsimem/tumpline_{}.ini", fmt::ptr(this))) {
        VSIFCloseL(VSIFileFromMemBuffer(
            name_.c_str(), reinterpret_cast<GByte*>(bytes_.data()), bytes_.size(), FALSE));
    }

    ~MemoryFile() { VSIUnlink(name_.c_str()); }

    MemoryFile(const MemoryFile&) = delete;
    MemoryFile& operator=(const MemoryFile&) = delete;
    MemoryFile(MemoryFile&&) = delete;
    MemoryFile& operator=(MemoryFile&&) = delete;

    [[nodiscard]] const std::string& name() const { return name_; }

  private:
    std::string bytes_;
    std::string name_;
};

bool is_extract(const std::filesystem::path& file) {
    std::string ending = file.extension().string();
    std::ranges::transform(ending, ending.begin(), [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    });
    return ending == ".osm" || ending == ".pbf";
}

bool is_flat(std::string_view head) {
    return head.starts_with("fgb");
}

/// What bounds the time that a file takes.
struct Handling {
    bool extract;
    bool indexed; ///< only what lies in the map's frame is read
};

void refuse_too_large(const std::filesystem::path& file, const Handling& handling) {
    constexpr std::uintmax_t most_extract = 50'000'000;
    constexpr std::uintmax_t most = 2'000'000'000;
    std::error_code error;
    const std::uintmax_t bytes = std::filesystem::file_size(file, error);
    if (error || handling.indexed || bytes <= (handling.extract ? most_extract : most))
        return;
    throw InputError(
        {{.file = file.string(),
          .place = "",
          .found = fmt::format("a file of {} MB", bytes / 1'000'000),
          .expected = handling.extract ? "an extract of 50 MB at most"
                                       : "2 GB at most, or a GeoPackage, which has an index",
          .advice = "cut it to the trip first (osmium extract --bbox, ogr2ogr -spat)"}});
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
        refuse_unopened(file, quiet, {a_raster, "turn it into GeoTIFF (gdal_translate)"});
    return dataset;
}

Dataset open_vector(const std::filesystem::path& file) {
    const std::string head = require_plain_file(file, track_wanted);
    if (is_text_tree(head))
        refuse_unbounded(file);
    if (is_sqlite(head))
        require_plain_tables(file);
    need_coordinate_systems(file);
    // nothing is written beside the input, nothing fetched that a schema names
    const std::array<const char*, 3> options{"WRITE_GFS=NO", "DOWNLOAD_SCHEMA=NO", nullptr};
    return open_whole(file,
                      {.formats = vector_formats(),
                       .options = options.data(),
                       .expected = a_vector_file,
                       .advice = "export the track as GPX or GeoJSON (ogr2ogr)"});
}

Dataset open_layers(const std::filesystem::path& file) {
    const std::string head = require_plain_file(file, layer_wanted);
    const bool extract = is_extract(file);
    refuse_too_large(file, {.extract = extract, .indexed = is_sqlite(head) || is_flat(head)});
    if (is_text_tree(head) && !extract) // an extract is read as a stream
        refuse_unbounded(file);
    if (is_sqlite(head))
        require_plain_tables(file);
    need_coordinate_systems(file);
    const QuietGdal quiet;
    const MemoryFile tags(extract_tags);
    const std::string tags_option = "CONFIG_FILE=" + tags.name();
    const std::array<const char*, 3> plain{"WRITE_GFS=NO", "DOWNLOAD_SCHEMA=NO", nullptr};
    const std::array<const char*, 3> for_extract{
        tags_option.c_str(), "INTERLEAVED_READING=YES", nullptr};
    return open_whole(file,
                      {.formats = layer_formats(),
                       .options = extract ? for_extract.data() : plain.data(),
                       .expected = a_layer_file,
                       .advice = "turn it into GeoPackage or GeoJSON (ogr2ogr)"});
}

} // namespace tumpline::geo
