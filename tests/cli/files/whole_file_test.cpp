#include "cli/files/whole_file.h"

#include "cli/files/output_mark.h"
#include "cli/files/temporary_names.h"
#include "geo/input_error.h"
#include "tests/support/common_user.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

namespace tumpline::cli {
namespace {

namespace fs = std::filesystem;
using test::text_of;
using testing::HasSubstr;

class WholeFile : public testing::Test {
  protected:
    void SetUp() override {
        std::string name = (fs::temp_directory_path() / "whole_file_XXXXXX").string();
        ASSERT_NE(::mkdtemp(name.data()), nullptr);
        folder_ = name;
    }

    void TearDown() override {
        fs::permissions(folder_, fs::perms::owner_all);
        fs::remove_all(folder_);
    }

    [[nodiscard]] std::size_t files() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
    }

    [[nodiscard]] static std::string refusal(const OutputFile& output, std::string_view content) {
        try {
            write_whole(output, content);
        } catch (const geo::InputError& error) {
            return error.what();
        }
        return "written";
    }

    fs::path folder_;
};

TEST_F(WholeFile, ANameAloneStandsInTheFolderOneIsIn) { // "no folder" was the answer once
    const fs::path before = fs::current_path();
    fs::current_path(folder_);
    write_whole({.file = "plan.html", .inputs = {}}, "one");
    write_whole({.file = "./more.html", .inputs = {}}, "two");
    fs::current_path(before);
    EXPECT_EQ(text_of(folder_ / "plan.html"), "one");
    EXPECT_EQ(text_of(folder_ / "more.html"), "two");
}

TEST_F(WholeFile, WritesAndReplaces) {
    const fs::path file = folder_ / "plan.html";
    write_whole({.file = file, .inputs = {}}, "one");
    EXPECT_EQ(text_of(file), "one");
    fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
    write_whole({.file = file, .inputs = {}, .overwrite = true}, "two");
    EXPECT_EQ(text_of(file), "two");
    EXPECT_EQ(fs::status(file).permissions(), fs::perms::owner_read | fs::perms::owner_write);
    EXPECT_EQ(files(), 1U);
}

TEST_F(WholeFile, NeverWritesOverAnInputUnderAnyName) {
    const fs::path input = folder_ / "trip.json";
    std::ofstream(input) << "precious";
    fs::create_hard_link(input, folder_ / "hard.json");
    fs::create_symlink(input, folder_ / "soft.json");
    for (const char* name : {"trip.json", "hard.json", "soft.json", "./trip.json"}) {
        EXPECT_THAT(refusal({.file = folder_ / name, .inputs = {input}}, "gone"),
                    HasSubstr("which this command reads"))
            << name;
        EXPECT_EQ(text_of(input), "precious");
    }
}

TEST_F(WholeFile, FollowsALinkToAnotherFile) {
    write_whole({.file = folder_ / "real.txt", .inputs = {}}, "old");
    fs::create_symlink(folder_ / "real.txt", folder_ / "link.txt");
    write_whole({.file = folder_ / "link.txt", .inputs = {}, .overwrite = true}, "new");
    EXPECT_EQ(text_of(folder_ / "real.txt"), "new");
    EXPECT_TRUE(fs::is_symlink(folder_ / "link.txt"));
}

TEST_F(WholeFile, RefusesAFolderADeviceAndAMissingFolder) {
    EXPECT_THAT(refusal({.file = folder_, .inputs = {}}, "x"), HasSubstr("found a folder"));
    EXPECT_THAT(refusal({.file = "/dev/full", .inputs = {}}, "x"), HasSubstr("no plain file"));
    EXPECT_THAT(refusal({.file = folder_ / "none" / "x.txt", .inputs = {}}, "x"),
                HasSubstr("make the folder first"));
    EXPECT_THAT(refusal({.file = "", .inputs = {}}, "x"), HasSubstr("no file name"));
    EXPECT_EQ(files(), 0U);
}

TEST_F(WholeFile, RefusesAFolderThatMayNotBeWrittenTo) {
    fs::permissions(folder_, fs::perms(0555));
    EXPECT_TRUE(test::holds_for_a_common_user([this] {
        return refusal({.file = folder_ / "x.txt", .inputs = {}}, "x")
                   .find("choose a folder that you may write to") != std::string::npos;
    }));
}

TEST_F(WholeFile, AFailedWriteLeavesTheOldContentAndNothingElse) {
    const fs::path file = folder_ / "plan.html";
    write_whole({.file = file, .inputs = {}}, "old");

    // A limit on the size of files stands for a disk that fills up half way.
    struct rlimit before {};

    ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &before), 0);
    struct rlimit small = before;
    small.rlim_cur = 4096;
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &small), 0);
    const std::string said =
        refusal({.file = file, .inputs = {}, .overwrite = true}, std::string(100'000, 'x'));
    ::setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, handler);
    EXPECT_THAT(said, HasSubstr("File too large"));
    EXPECT_EQ(text_of(file), "old");
    EXPECT_EQ(files(), 1U);
}

TEST_F(WholeFile, AWriterThatThrowsLeavesNothing) {
    const auto fail = [](const fs::path& file) {
        std::ofstream(file) << "half";
        throw std::runtime_error("broken");
    };
    EXPECT_THROW(write_whole_with({.file = folder_ / "x.gpx", .inputs = {}}, fail),
                 std::runtime_error);
    EXPECT_EQ(files(), 0U);
}

TEST_F(WholeFile, AWriterMayReplaceTheTemporaryFile) {
    const auto replace = [](const fs::path& file) {
        fs::remove(file);
        std::ofstream(file) << "whole";
    };
    write_whole_with({.file = folder_ / "x.gpx", .inputs = {}}, replace);
    EXPECT_EQ(text_of(folder_ / "x.gpx"), "whole");
    EXPECT_EQ(files(), 1U);
}

TEST_F(WholeFile, ReplacesOnlyWhatItWroteItselfAndNobodyChanged) {
    const fs::path file = folder_ / "plan.gpx";
    const std::string ours = marked("<!-- " + std::string(blank_mark) + " -->\n<gpx/>\n");
    write_whole({.file = file, .inputs = {}}, ours);
    write_whole({.file = file, .inputs = {}}, ours + "\n"); // as a newer plan would be
    EXPECT_EQ(text_of(file), ours + "\n");
    EXPECT_THAT(refusal({.file = file, .inputs = {}}, ours), HasSubstr("changed since"));
    std::ofstream(file) << "<gpx>recorded</gpx>";
    EXPECT_THAT(refusal({.file = file, .inputs = {}}, ours), HasSubstr("--overwrite"));
    EXPECT_THROW(check_writable({.file = file, .inputs = {}}), geo::InputError);
    EXPECT_EQ(text_of(file), "<gpx>recorded</gpx>");
    EXPECT_EQ(files(), 1U);
    write_whole({.file = file, .inputs = {}, .overwrite = true}, ours);
    EXPECT_EQ(text_of(file), ours);
}

TEST_F(WholeFile, ALinkThatLeadsNowhereIsNoName) {
    fs::create_symlink(folder_ / "gone.gpx", folder_ / "link.gpx");
    for (const bool overwrite : {false, true})
        EXPECT_THAT(
            refusal({.file = folder_ / "link.gpx", .inputs = {}, .overwrite = overwrite}, "x"),
            HasSubstr("leads nowhere"));
    EXPECT_TRUE(fs::is_symlink(folder_ / "link.gpx"));
    EXPECT_EQ(files(), 1U);
}

TEST_F(WholeFile, ASetOfWhichOneCannotTakeItsPlaceLeavesEverythingAsItWas) {
    std::ofstream(folder_ / "first.csv") << "old";
    const OutputFile first{folder_ / "first.csv", {}, true};
    const OutputFile second{folder_ / "second.csv", {}, true};
    // Its temporary name is short: only the last step, after the first two took theirs, fails.
    const OutputFile third{folder_ / (std::string(300, 'x') + ".csv"), {}, true};
    EXPECT_THROW(write_all_whole({{first, "new"}, {second, "new"}, {third, "new"}}),
                 geo::InputError);
    EXPECT_EQ(text_of(folder_ / "first.csv"), "old");
    EXPECT_EQ(files(), 1U);
    write_all_whole({{first, "new"}, {second, "new"}});
    EXPECT_EQ(text_of(folder_ / "first.csv"), "new");
    EXPECT_EQ(text_of(folder_ / "second.csv"), "new");
    EXPECT_EQ(files(), 2U);
}

TEST_F(WholeFile, ASignalLeavesNothingBehind) {
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
        const pid_t child = ::fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            std::signal(signal, SIG_DFL);
            remove_temporaries_on_signals();
            try {
                write_whole_with({.file = folder_ / "x.gpx", .inputs = {}},
                                 [signal](const fs::path& /*file*/) { std::raise(signal); });
            } catch (...) {
            }
            ::_exit(0); // not reached: the signal still stops the program
        }
        int status = 0;
        ASSERT_EQ(::waitpid(child, &status, 0), child);
        ASSERT_TRUE(WIFSIGNALED(status)) << signal;
        EXPECT_EQ(WTERMSIG(status), signal);
        EXPECT_EQ(files(), 0U) << signal;
    }
}

TEST_F(WholeFile, ASignalThatTheCallerIgnoresStaysIgnored) { // as nohup does
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
        std::signal(SIGHUP, SIG_IGN);
        remove_temporaries_on_signals();
        std::raise(SIGHUP);
        ::_exit(7);
    }
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFEXITED(status));
    EXPECT_EQ(WEXITSTATUS(status), 7);
}

TEST_F(WholeFile, CheckingWritesNothing) {
    check_writable({.file = folder_ / "x.gpx", .inputs = {}});
    EXPECT_EQ(files(), 0U);
}

} // namespace
} // namespace tumpline::cli
