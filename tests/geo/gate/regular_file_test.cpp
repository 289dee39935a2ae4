#include "geo/gate/regular_file.h"

#include "tests/support/hostile_rasters.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <filesystem>

namespace tumpline::geo {
namespace {

TEST(RegularFile, IsOpenedAlsoThroughALink) {
    const test::TempFolder folder;
    std::filesystem::create_symlink(folder.write("a", "x"), folder.path() / "link");
    std::FILE* file = open_regular_file(folder.path() / "link");
    ASSERT_NE(file, nullptr);
    EXPECT_EQ(std::fgetc(file), 'x');
    std::fclose(file);
}

TEST(RegularFile, IsNoPipeFolderOrDevice) {
    const test::TempFolder folder;
    EXPECT_EQ(open_regular_file(test::make_pipe(folder.path() / "pipe")), nullptr);
    EXPECT_EQ(open_regular_file(folder.path()), nullptr);
    EXPECT_EQ(open_regular_file("/dev/zero"), nullptr);
    EXPECT_EQ(open_regular_file(folder.path() / "absent"), nullptr);
}

} // namespace
} // namespace tumpline::geo
