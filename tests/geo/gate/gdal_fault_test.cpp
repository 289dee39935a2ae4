#include "geo/gate/gdal_fault.h"

#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

TEST(GdalFault, HasThePlaceThatGdalNames) {
    const test::TempFolder folder;
    const auto file = folder.write("a.json", "{\n\n\n}");
    EXPECT_EQ(fault_place("XML parsing of GML file failed at line 12, column 3", file), "line 12");
    // bytes 0 to 3 are "{" and three ends of lines: byte 4 stands on the fourth
    EXPECT_EQ(fault_place("JSON parsing error: odd (at offset 4)", file), "line 4");
    EXPECT_EQ(fault_place("no idea", file), "");
}

TEST(GdalFault, IsToldWithoutPathsAndOffsets) {
    EXPECT_EQ(fault_in_words("JSON parsing error: odd comma (at offset 4)", "a.json"),
              "broken JSON (\"odd comma\")");
    const auto path = std::filesystem::absolute("a.tif").string();
    EXPECT_EQ(fault_in_words(path + ": too\nshort", "a.tif"), "trouble (\": too short\")");
}

} // namespace
} // namespace tumpline::geo
