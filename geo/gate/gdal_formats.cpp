#include "geo/gate/gdal_formats.h"

#include <gdal_frmts.h>
#include <ogrsf_frmts.h>

#include <array>

namespace tumpline::geo {

namespace {

struct Format {
    const char* name;
    void (*announce)(); ///< makes it known to GDAL
};

/// Heights are handed out in these. None of them writes, starts a program or speaks to another
/// machine; the VRT alone leads to other files, and is looked through before it is opened.
constexpr std::array<Format, 7> rasters{{{"VRT", GDALRegister_VRT},
                                         {"GTiff", GDALRegister_GTiff},
                                         {"SRTMHGT", GDALRegister_SRTMHGT},
                                         {"AAIGrid", GDALRegister_AAIGrid},
                                         {"EHdr", GDALRegister_EHdr},
                                         {"DTED", GDALRegister_DTED},
                                         {"USGSDEM", GDALRegister_USGSDEM}}};

/// Tracks are drawn and kept in these.
constexpr std::array<Format, 8> vectors{{{"ESRI Shapefile", RegisterOGRShape},
                                         {"LIBKML", RegisterOGRLIBKML},
                                         {"GeoJSON", RegisterOGRGeoJSON},
                                         {"GeoJSONSeq", RegisterOGRGeoJSONSeq},
                                         {"TopoJSON", RegisterOGRTopoJSON},
                                         {"GML", RegisterOGRGML},
                                         {"GPKG", RegisterOGRGeoPackage},
                                         {"FlatGeobuf", RegisterOGRFlatGeobuf}}};

/// Extracts of OpenStreetMap, for what lies around a route; never for tracks.
constexpr Format extract{"OSM", RegisterOGROSM};

template <std::size_t Count>
std::vector<const char*> names(const std::array<Format, Count>& formats) {
    std::vector<const char*> names;
    names.reserve(Count + 1);
    for (const Format& format : formats)
        names.push_back(format.name);
    names.push_back(nullptr);
    return names;
}

} // namespace

void register_formats() {
    for (const Format& format : rasters)
        format.announce();
    for (const Format& format : vectors)
        format.announce();
    extract.announce();
}

std::vector<const char*> raster_formats() {
    return names(rasters);
}

std::vector<const char*> vector_formats() {
    return names(vectors);
}

std::vector<const char*> layer_formats() {
    std::vector<const char*> all = names(vectors);
    all.insert(all.begin(), extract.name);
    return all;
}

} // namespace tumpline::geo
