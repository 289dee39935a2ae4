#include "geo/gate/gdal_library.h"

#include <cpl_conv.h>
#include <cpl_http.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::geo {
namespace {

TEST(PrepareGdal, FindsProjsDatabaseEachTime) {
    EXPECT_TRUE(prepare_gdal());
    EXPECT_TRUE(prepare_gdal());
}

TEST(PrepareGdal, ClosesItsWayToTheNetwork) {
    prepare_gdal();
    CPLHTTPResult* result = CPLHTTPFetch("http://127.0.0.1:9/", nullptr);
    ASSERT_NE(result, nullptr);
    EXPECT_NE(result->nStatus, 0);
    EXPECT_EQ(std::string(result->pszErrBuf), "no network");
    CPLHTTPDestroyResult(result);
}

/// Whatever the environment says: a setting made by the program goes before it.
TEST(PrepareGdal, SettlesWhatFormatsAskFor) {
    prepare_gdal();
    EXPECT_STREQ(CPLGetConfigOption("GDAL_PAM_ENABLED", ""), "NO");
    EXPECT_STREQ(CPLGetConfigOption("GDAL_VRT_ENABLE_PYTHON", ""), "NO");
    EXPECT_STREQ(CPLGetConfigOption("SPATIALITE_LOAD", ""), "NO");
}

} // namespace
} // namespace tumpline::geo
