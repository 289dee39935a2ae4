#include "geo/gate/gdal_library.h"

#include <cpl_conv.h>
#include <cpl_error.h>
#include <gdal_priv.h>
#include <ogr_srs_api.h>

#include <algorithm>
#include <mutex>
#include <string>

namespace tumpline::geo {

namespace {

void keep_first_fault(CPLErr severity, CPLErrorNum /*number*/, const char* message) {
    constexpr std::size_t longest = 300; // hostile files choose what stands here
    auto* fault = static_cast<std::string*>(CPLGetErrorHandlerUserData());
    if (severity < CE_Failure || fault == nullptr || !fault->empty())
        return;
    fault->assign(message);
    if (fault->size() > longest)
        fault->resize(longest);
    std::replace_if(
        fault->begin(), fault->end(), [](char c) { return c == '\n' || c == '\r'; }, ' ');
}

} // namespace

void prepare_gdal() {
    static std::once_flag prepared;
    std::call_once(prepared, [] {
        // First the settings: some drivers ask for them while they register.
        CPLSetConfigOption("CPL_VSIL_CURL_ALLOWED_FILENAME", "no address at all");
        CPLSetConfigOption("GDAL_VRT_ENABLE_PYTHON", "NO");
        CPLSetConfigOption("GDAL_CACHEMAX", "64"); // MB; rasters keep their own cells besides
        OSRSetPROJEnableNetwork(FALSE);
        GDALAllRegister();
        for (const char* name :
             {"HTTP",       "WMS",        "WMTS",          "WCS",   "WFS",           "OAPIF",
              "OGCAPI",     "STACTA",     "STACIT",        "DAAS",  "EEDA",          "EEDAI",
              "PLMOSAIC",   "PLSCENES",   "NGW",           "CSW",   "Elasticsearch", "Carto",
              "AmigoCloud", "PostgreSQL", "PostGISRaster", "MySQL", "MSSQLSpatial",  "ODBC",
              "CouchDB",    "Cloudant",   "GeoRaster",     "OCI",   "HANA"})
            if (GDALDriver* driver = GetGDALDriverManager()->GetDriverByName(name)) {
                GetGDALDriverManager()->DeregisterDriver(driver);
                GDALDestroyDriver(driver);
            }
    });
}

QuietGdal::QuietGdal() {
    CPLPushErrorHandlerEx(keep_first_fault, &fault_);
}

QuietGdal::~QuietGdal() {
    CPLPopErrorHandler();
    CPLErrorReset();
}

} // namespace tumpline::geo
