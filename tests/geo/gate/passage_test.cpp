#include "geo/gate/passage.h"

#include "geo/gate/gdal_library.h"
#include "tests/support/hostile_rasters.h"
#include "tests/support/temp_folder.h"

#include <cpl_string.h>
#include <cpl_vsi.h>
#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <string>

namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;

/// Whether GDAL opens a file, and for what ("rb", "wb", "rb+").
bool opens(const std::string& name, const char* access = "rb") {
    VSILFILE* file = VSIFOpenL(name.c_str(), access);
    if (file != nullptr)
        VSIFCloseL(file);
    return file != nullptr;
}

class GdalsFiles : public testing::Test {
  protected:
    GdalsFiles() { prepare_gdal(); }

    test::TempFolder folder_;
    fs::path inside_ = folder_.write("inside.txt", "0123456789");
};

TEST_F(GdalsFiles, AreClosedWithoutAPassage) {
    EXPECT_FALSE(opens(inside_));
    {
        const Folders folders = folders_around(inside_);
        const Passage passage(folders);
        EXPECT_TRUE(opens(inside_));
        const Folders none;
        {
            const Passage inner(none);
            EXPECT_FALSE(opens(inside_));
        }
        EXPECT_TRUE(opens(inside_));
    }
    EXPECT_FALSE(opens(inside_));
}

TEST_F(GdalsFiles, AreThoseInAndBelowTheFolders) {
    fs::create_directory(folder_.path() / "trip");
    fs::create_directory(folder_.path() / "trip" / "below");
    const fs::path below = folder_.write("trip/below/a.txt", "x");
    fs::create_directory(folder_.path() / "trip2");
    const fs::path namesake = folder_.write("trip2/a.txt", "x");
    fs::create_symlink(inside_, folder_.path() / "trip" / "way-out");
    const Folders folders{fs::canonical(folder_.path() / "trip")};
    const Passage passage(folders);
    EXPECT_TRUE(opens(below));
    EXPECT_FALSE(opens(namesake));
    EXPECT_FALSE(opens(inside_));
    EXPECT_FALSE(opens(folder_.path() / "trip" / ".." / "inside.txt"));
    EXPECT_FALSE(opens(folder_.path() / "trip" / "way-out"));
    EXPECT_FALSE(opens("/etc/passwd"));
}

TEST_F(GdalsFiles, AreReadAndNeverWritten) {
    const Folders folders = folders_around(inside_);
    const Passage passage(folders);
    for (const char* access : {"w", "wb", "a", "ab", "r+", "rb+", "w+"}) {
        EXPECT_FALSE(opens(inside_, access)) << access;
        EXPECT_FALSE(opens(folder_.path() / "new.txt", access)) << access;
    }
    EXPECT_NE(VSIUnlink(inside_.c_str()), 0);
    EXPECT_NE(VSIMkdir((folder_.path() / "new").c_str(), 0777), 0);
    EXPECT_NE(VSIRename(inside_.c_str(), (folder_.path() / "moved").c_str()), 0);
    EXPECT_EQ(fs::file_size(inside_), 10U);
    EXPECT_FALSE(fs::exists(folder_.path() / "new.txt"));
}

TEST_F(GdalsFiles, AreRegularFiles) {
    const fs::path pipe = test::make_pipe(folder_.path() / "pipe");
    Folders folders = folders_around(inside_);
    folders.emplace_back("/dev");
    const Passage passage(folders);
    EXPECT_FALSE(opens(pipe)); // would wait for ever
    EXPECT_FALSE(opens("/dev/zero"));
    VSIStatBufL status;
    EXPECT_NE(VSIStatL(pipe.c_str(), &status), 0);
    EXPECT_EQ(VSIStatL(inside_.c_str(), &status), 0);
    EXPECT_EQ(status.st_size, 10);
}

TEST_F(GdalsFiles, HaveNoCompanyThatMayBeOfAnyFormat) {
    const Folders folders = folders_around(inside_);
    const Passage passage(folders);
    for (const char* name : {"a.tif.ovr", "a.tif.msk", "a.rrd", "a.aux"})
        EXPECT_FALSE(opens(folder_.write(name, "x"))) << name;
}

TEST_F(GdalsFiles, AreReadAsTheyStand) {
    const Folders folders = folders_around(inside_);
    const Passage passage(folders);
    VSILFILE* file = VSIFOpenL(inside_.c_str(), "rb");
    ASSERT_NE(file, nullptr);
    std::array<char, 4> bytes{};
    EXPECT_EQ(VSIFSeekL(file, 3, SEEK_SET), 0);
    EXPECT_EQ(VSIFReadL(bytes.data(), 1, 4, file), 4U);
    EXPECT_EQ(std::string(bytes.data(), 4), "3456");
    EXPECT_EQ(VSIFTellL(file), 7U);
    EXPECT_EQ(VSIFEofL(file), 0);
    EXPECT_EQ(VSIFReadL(bytes.data(), 1, 4, file), 3U); // 7, 8, 9 and the end
    EXPECT_NE(VSIFEofL(file), 0);
    EXPECT_EQ(VSIFCloseL(file), 0);
}

/// Every file system that GDAL itself says it has.
TEST_F(GdalsFiles, AreNotFetchedUnpackedOrStarted) {
    const Folders folders{"/"};
    const Passage passage(folders);
    const CPLStringList prefixes(VSIGetFileSystemsPrefixes());
    EXPECT_GT(prefixes.size(), 10);
    for (int index = 0; index < prefixes.size(); ++index) {
        const std::string prefix = prefixes[index];
        if (prefix != "/vsimem/") {
            EXPECT_FALSE(opens(prefix + inside_.string())) << prefix;
        }
    }
    EXPECT_FALSE(opens("/vsigzip/" + inside_.string()));
    EXPECT_FALSE(opens("/vsistdin/"));
    EXPECT_TRUE(opens("/vsimem/passage", "wb"));
    EXPECT_EQ(VSIUnlink("/vsimem/passage"), 0);
}

TEST(FoldersAround, AreThoseOfALinkAndOfItsTargetAndTheTrips) {
    const test::TempFolder folder;
    const fs::path root = fs::canonical(folder.path());
    for (const char* name : {"trip", "store", "links"})
        fs::create_directory(root / name);
    const fs::path file = folder.write("store/a.tif", "x");
    fs::create_symlink(file, root / "links" / "a.tif");
    EXPECT_EQ(folders_around(root / "links" / "a.tif", root / "trip"),
              (Folders{root / "links", root / "store", root / "trip"}));
    EXPECT_EQ(folders_around(root / "store" / "a.tif", root / "store"), (Folders{root / "store"}));
    EXPECT_EQ(folders_around(root / "absent" / "a.tif"), Folders{});
}

} // namespace
} // namespace tumpline::geo
