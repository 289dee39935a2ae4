#include "cli/app.h"
#include "tests/support/said.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

namespace tumpline::cli {

namespace {

namespace fs = std::filesystem;
using test::Said;
using test::say;
using test::text_of;
using testing::HasSubstr;

/// A copy of a sample trip in a folder of its own.
class BookCommand : public testing::Test {
  protected:
    void SetUp() override { fs::copy(test::root / "sample-routes" / "saddle", folder.path()); }

    test::TempFolder folder;
    fs::path trip = folder.path() / "trip.json";
    fs::path output = folder.path() / "book.html";
};

TEST_F(BookCommand, WritesABookOfASampleTrip) {
    const Said said = say({"book", trip, "-o", output});
    EXPECT_EQ(said.code, ExitCode::done) << said.err;
    EXPECT_EQ(said.out, "");
    const std::string html = text_of(output);
    EXPECT_TRUE(html.starts_with("<!DOCTYPE html>"));
    EXPECT_TRUE(html.ends_with("</html>\n"));
}

TEST_F(BookCommand, NeverWritesOverAnInput) {
    for (const char* input : {"trip.json", "saddle.gpx", "saddle-dem.tif"}) {
        const fs::path file = folder.path() / input;
        const std::string before = text_of(file);
        const Said said = say({"book", trip, "-o", file});
        EXPECT_EQ(said.code, ExitCode::bad_input) << input;
        EXPECT_THAT(said.err, HasSubstr(input));
        EXPECT_EQ(text_of(file), before) << input;
    }
}

TEST_F(BookCommand, LeavesNothingWhereItCannotWrite) {
    EXPECT_EQ(say({"book", trip, "-o", folder.path() / "nowhere" / "book.html"}).code,
              ExitCode::bad_input);
    EXPECT_EQ(say({"book", trip, "-o", folder.path()}).code, ExitCode::bad_input);
    EXPECT_FALSE(fs::exists(folder.path() / "nowhere"));
}

TEST_F(BookCommand, KeepsTheOldBookIfTheTripIsSpoilt) {
    std::ofstream(output) << "the old book";
    std::ofstream(trip) << "{";
    EXPECT_EQ(say({"book", trip, "-o", output}).code, ExitCode::bad_input);
    EXPECT_EQ(text_of(output), "the old book");
}

TEST_F(BookCommand, NeedsTheNameOfTheFile) {
    const Said said = say({"book", trip});
    EXPECT_EQ(said.code, ExitCode::bad_input);
    EXPECT_THAT(said.err, HasSubstr("no -o BOOK.html"));
}

} // namespace
} // namespace tumpline::cli
