#include "geo/gate/gdal_library.h"

#include "geo/gate/gdal_formats.h"
#include "geo/gate/passage.h"
#include "geo/gate/proj_gate.h"

#include <cpl_conv.h>
#include <cpl_http.h>
#include <ogr_srs_api.h>

#include <array>
#include <mutex>

namespace tumpline::geo {

namespace {

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

/// Whatever the environment says; some formats ask for these while they register.
constexpr std::array<std::array<const char*, 2>, 10> settings{
    {{"CPL_VSIL_CURL_ALLOWED_FILENAME", "no address at all"},
     {"GDAL_VRT_ENABLE_PYTHON", "NO"},
     {"GDAL_CACHEMAX", "64"},               // MB; rasters keep their own cells besides
     {"GDAL_PAM_ENABLED", "NO"},            // no .aux.xml is read or left behind
     {"SQLITE_USE_OGR_VFS", "YES"},         // GeoPackages through the gate as well
     {"OGR_SQLITE_PRAGMA", "temp_store=2"}, // in memory
     {"SPATIALITE_LOAD", "NO"},             // its virtual tables open files by themselves
     {"OGR_SQLITE_LOAD_EXTENSIONS", ""},
     {"LIBKML_RESOLVE_STYLE", "NO"},
     {"OGR_GEOJSON_MAX_OBJ_SIZE", "2000"}}}; // MB; open_vector bounds the values

} // namespace

bool prepare_gdal() {
    static std::once_flag prepared;
    std::call_once(prepared, [] {
        install_file_gate();
        for (const auto& [name, value] : settings)
            CPLSetConfigOption(name, value);
        OSRSetPROJEnableNetwork(FALSE);
        CPLHTTPSetFetchCallback(refuse_fetch, nullptr);
        register_formats();
    });
    return close_gdals_proj();
}

} // namespace tumpline::geo
