#include "geo/gate/quiet_gdal.h"

#include <cpl_error.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::geo {
namespace {

TEST(QuietGdal, KeepsTheFirstFaultOnOneLineAndPrintsNothing) {
    testing::internal::CaptureStderr();
    const QuietGdal quiet;
    EXPECT_EQ(quiet.fault(), "");
    CPLError(CE_Warning, CPLE_AppDefined, "a warning");
    EXPECT_EQ(quiet.fault(), "");
    CPLError(CE_Failure, CPLE_AppDefined, "first\nof two");
    CPLError(CE_Failure, CPLE_AppDefined, "second");
    EXPECT_EQ(quiet.fault(), "first of two");
    {
        const QuietGdal inner;
        CPLError(CE_Failure, CPLE_AppDefined, "%s", std::string(1000, 'x').c_str());
        EXPECT_EQ(inner.fault().size(), 300U); // hostile files choose what stands here
    }
    EXPECT_EQ(quiet.fault(), "first of two");
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
}

} // namespace
} // namespace tumpline::geo
