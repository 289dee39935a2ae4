#include "geo/tracks/vector_guard.h"

#include "geo/input_error.h"
#include "geo/tracks/track_text.h"

#include <cpl_conv.h>
#include <cpl_http.h>
#include <fmt/format.h>
#include <gdal_priv.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cstddef>
#include <fstream>
#include <optional>
#include <string_view>

namespace tumpline::geo {

namespace {

/// Formats that lead elsewhere: to other files and addresses (a VRT), to services and databases, to
/// another program, or to documents and pictures that hold no tracks. GPX has a reader of its own.
constexpr std::array<std::string_view, 30> shut_out{
    "OGR_VRT", "VRT",      "WFS",           "OAPIF",       "OGCAPI",     "CSW",
    "GMLAS",   "HTTP",     "Elasticsearch", "Carto",       "AmigoCloud", "NGW",
    "EEDA",    "PLSCENES", "PostgreSQL",    "MySQL",       "ODBC",       "PGeo",
    "MDB",     "OCI",      "MSSQLSpatial",  "OGR_OGDI",    "GPSBabel",   "GPX",
    "PDF",     "FITS",     "PCIDSK",        "JP2OpenJPEG", "netCDF",     "BAG"};

/// Settings while a guard lives.
constexpr std::array<std::array<const char*, 2>, 2> settings{
    {{"OGR_SQLITE_STATIC_VIRTUAL_OGR", "NO"},
     {"OGR_GEOJSON_MAX_OBJ_SIZE", "2000"}}}; // MB; refuse_unbounded comes before it

CPLHTTPResult* refuse_fetch(const char* /*url*/,
                            CSLConstList /*options*/,
                            GDALProgressFunc /*progress*/,
                            void* /*progress_data*/,
                            CPLHTTPFetchWriteFunc /*write*/,
                            void* /*write_data*/,
                            void* /*user*/) {
    auto* result = static_cast<CPLHTTPResult*>(CPLCalloc(1, sizeof(CPLHTTPResult)));
    result->nStatus = 1;
    result->pszErrBuf = CPLStrdup("no network");
    return result;
}

/// Whether a file that starts so is JSON or XML.
bool is_text_tree(std::string_view bytes) {
    const std::size_t first = bytes.find_first_not_of("\xEF\xBB\xBF \t\r\n");
    return first != std::string_view::npos &&
           (bytes[first] == '{' || bytes[first] == '[' || bytes[first] == '<');
}

bool is_packed(std::string_view bytes) {
    return bytes.starts_with("PK\x03\x04") || bytes.starts_with("\x1F\x8B");
}

/// The number after `mark` in `text`.
std::optional<std::size_t> number_after(std::string_view text, std::string_view mark) {
    const std::size_t start = text.find(mark);
    if (start == std::string_view::npos)
        return std::nullopt;
    const std::string_view rest = text.substr(start + mark.size());
    std::size_t value = 0;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), value);
    return error == std::errc() ? std::optional(value) : std::nullopt;
}

/// The line that holds byte `offset` of `file`.
std::size_t line_at(const std::filesystem::path& file, std::size_t offset) {
    std::ifstream in(file, std::ios::binary);
    std::size_t line = 1;
    for (std::size_t byte = 0; byte < offset && in; ++byte)
        line += in.get() == '\n' ? 1U : 0U;
    return line;
}

/// Takes away from `text` what stands between `from` and `to`, both included, if both are there.
void remove_between(std::string& text, std::string_view from, std::string_view to) {
    const std::size_t start = text.find(from);
    const std::size_t end = start == std::string::npos ? start : text.find(to, start);
    if (end != std::string::npos)
        text.erase(start, end + to.size() - start);
}

} // namespace

VectorGuard::VectorGuard() {
    CPLHTTPPushFetchCallback(refuse_fetch, nullptr);
    for (const auto& [name, value] : settings)
        CPLSetThreadLocalConfigOption(name, value);
}

VectorGuard::~VectorGuard() {
    for (const auto& [name, value] : settings)
        CPLSetThreadLocalConfigOption(name, nullptr);
    CPLHTTPPopFetchCallback();
}

std::vector<const char*> vector_drivers() {
    std::vector<const char*> drivers;
    GDALDriverManager& manager = *GetGDALDriverManager();
    for (int index = 0; index < manager.GetDriverCount(); ++index) {
        GDALDriver& driver = *manager.GetDriver(index);
        const bool vector = driver.GetMetadataItem(GDAL_DCAP_VECTOR) != nullptr;
        if (vector && std::ranges::find(shut_out, driver.GetDescription()) == shut_out.end())
            drivers.push_back(driver.GetDescription());
    }
    drivers.push_back(nullptr);
    return drivers;
}

void refuse_unbounded(const std::filesystem::path& file) {
    constexpr std::size_t most_values = 5'000'000; // some 150 bytes each in the library's memory
    std::ifstream in(file, std::ios::binary);
    std::string chunk(std::size_t{1} << 20U, '\0');
    std::size_t values = 0;
    for (bool first = true; in; first = false) {
        in.read(chunk.data(), static_cast<std::streamsize>(chunk.size()));
        const std::string_view bytes(chunk.data(), static_cast<std::size_t>(in.gcount()));
        if (first && is_packed(bytes))
            throw InputError({{.file = file.string(),
                               .place = "",
                               .found = "a packed file",
                               .expected = "a track file",
                               .advice = "unpack it first"}});
        if (first && !is_text_tree(bytes))
            return;
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

std::string fault_place(const std::string& fault, const std::filesystem::path& file) {
    if (const auto line = number_after(fault, "line "))
        return fmt::format("line {}", *line);
    if (const auto offset = number_after(fault, "(at offset ")) // of text; others' are of bytes
        return fmt::format("line {}", line_at(file, *offset));
    return "";
}

std::string fault_in_words(std::string fault, const std::filesystem::path& file) {
    const bool json =
        fault.find("JSON parsing error") != std::string::npos || fault.starts_with("At line ");
    remove_between(fault, "(at offset ", ")");
    remove_between(fault, "At line ", ": ");
    remove_between(fault, "JSON parsing error", ": ");
    remove_between(fault, "PROJ: ", "proj_");
    remove_between(fault, "create_from", ": ");
    const std::string path = std::filesystem::absolute(file).string();
    remove_between(fault, path, path);
    return fmt::format("{} (\"{}\")", json ? "broken JSON" : "trouble", one_line(fault));
}

} // namespace tumpline::geo
