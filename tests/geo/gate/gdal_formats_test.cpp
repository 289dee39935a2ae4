#include "geo/gate/gdal_formats.h"

#include "geo/gate/gdal_library.h"

#include <gdal_priv.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::geo {
namespace {

TEST(GdalFormats, AreKnownToGdal) {
    prepare_gdal();
    int count = 0;
    for (const auto& formats : {raster_formats(), vector_formats()}) {
        ASSERT_EQ(formats.back(), nullptr);
        for (const char* name : formats)
            if (name != nullptr) {
                EXPECT_NE(GetGDALDriverManager()->GetDriverByName(name), nullptr) << name;
                ++count;
            }
    }
    EXPECT_EQ(count, 15); // 7 of heights, 8 of tracks
}

TEST(GdalFormats, OfLayersAreThoseOfTracksAndExtractsOfOpenStreetMap) {
    prepare_gdal();
    EXPECT_EQ(layer_formats().size(), vector_formats().size() + 1);
    EXPECT_STREQ(layer_formats().front(), "OSM");
    EXPECT_NE(GetGDALDriverManager()->GetDriverByName("OSM"), nullptr);
    for (const char* name : vector_formats())
        EXPECT_TRUE(name == nullptr || std::string_view(name) != "OSM");
}

/// GDAL knows some two hundred; these wrote, fetched, hung or led elsewhere.
TEST(GdalFormats, AreTheOnlyOnes) {
    prepare_gdal();
    for (const char* name : {"HTTP",       "WMS",     "MRF",         "KMLSUPEROVERLAY",
                             "netCDF",     "OGR_VRT", "SQLite",      "ODBC",
                             "PostgreSQL", "HFA",     "PDF",         "GMLAS",
                             "CAD",        "HDF5",    "JP2OpenJPEG", "Zarr",
                             "STACTA",     "WFS",     "GRIB",        "MapInfo File",
                             "DXF",        "ENVI"})
        EXPECT_EQ(GetGDALDriverManager()->GetDriverByName(name), nullptr) << name;
}

} // namespace
} // namespace tumpline::geo
