#include "geo/gate/plain_file.h"

#include "geo/input_error.h"
#include "tests/support/hostile_rasters.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace tumpline::geo {
namespace {

std::string found(const std::filesystem::path& file) {
    try {
        static_cast<void>(require_plain_file(file, track_wanted));
    } catch (const InputError& error) {
        EXPECT_EQ(error.problems().front().file, file.string());
        EXPECT_FALSE(error.problems().front().expected.empty());
        EXPECT_FALSE(error.problems().front().advice.empty());
        return error.problems().front().found;
    }
    return "nothing";
}

TEST(PlainFile, IsARegularFileWithSomethingInIt) {
    const test::TempFolder folder;
    EXPECT_EQ(require_plain_file(folder.write("a", "abc"), track_wanted), "abc");
    EXPECT_EQ(require_plain_file(folder.write("b", std::string(5000, 'x')), track_wanted).size(),
              4096U);
    EXPECT_EQ(found(folder.path() / "absent"), "no such file");
    EXPECT_EQ(found(folder.path()), "a folder");
    EXPECT_EQ(found("/dev/zero"), "a device or pipe");
    EXPECT_EQ(found(test::make_pipe(folder.path() / "pipe")), "a device or pipe");
    EXPECT_EQ(found(folder.write("empty", "")), "an empty file");
}

TEST(PlainFile, IsNeitherPackedNorFarAway) {
    const test::TempFolder folder;
    EXPECT_EQ(found(folder.write("a.hgt.zip", "PK\x03\x04...")), "a packed file");
    EXPECT_EQ(found(folder.write("a.gpx.gz", "\x1F\x8B...")), "a packed file");
    EXPECT_EQ(found("https://example.org/a.gpx"), "an address");
    EXPECT_EQ(found("/vsistdin/"), "an address");
}

} // namespace
} // namespace tumpline::geo
