#include "geo/input_error.h"
#include "planner/trip/trip_file.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

namespace fs = std::filesystem;

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

std::vector<fs::path> files_in(const fs::path& folder) {
    std::vector<fs::path> files;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder))
        files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

const fs::path source = TUMPLINE_SOURCE_DIR;

TEST(SpoiltTrips, AreRefusedWithAPlaceOrAReason) {
    const std::vector<fs::path> files = files_in(source / "tests/spoilt/trip");
    ASSERT_GE(files.size(), 40U);
    for (const fs::path& file : files) {
        SCOPED_TRACE(file.filename());
        try {
            (void)read_trip(file);
            ADD_FAILURE() << "was read as a trip";
        } catch (const geo::InputError& error) {
            ASSERT_FALSE(error.problems().empty());
            for (const geo::Problem& problem : error.problems()) {
                EXPECT_EQ(problem.file, file.string());
                EXPECT_FALSE(problem.expected.empty());
                EXPECT_LT(to_string(problem).size(), 1000U);
            }
        }
    }
}

TEST(SpoiltTrips, ThatAreNotThereOrNoFilesSaySo) {
    const auto message = [](const fs::path& file) {
        try {
            (void)read_trip(file);
            return std::string("read");
        } catch (const geo::InputError& error) {
            return to_string(error.problems().front());
        }
    };
    EXPECT_EQ(message("no/such/trip.json"),
              "no/such/trip.json: found no such file, expected a trip file");
    const std::string folder = (source / "tests").string();
    EXPECT_EQ(message(folder), folder + ": found a folder, expected a trip file");
}

/// A copy with bytes changed, cut or doubled is read or refused; nothing else may happen.
TEST(SpoiltTrips, CopiesWithFlippedBytesAreReadOrRefused) {
    const fs::path file = source / "sample-routes/saddle/trip.json";
    const std::string good = bytes_of(file);
    ASSERT_FALSE(good.empty());
    std::mt19937_64 bits(20'270'618);
    int refused = 0;
    for (int i = 0; i < 800; ++i) {
        std::string text = good;
        for (int change = 0; change <= i % 3; ++change) {
            const std::size_t at = bits() % text.size();
            switch (bits() % 4) {
            case 0:
                text[at] = static_cast<char>(bits() & 0xFFU);
                break;
            case 1:
                text[at] = "{}[]\",:0-9e/*\\ \n"[bits() % 16];
                break;
            case 2:
                text.erase(at, 1 + bits() % 8);
                break;
            default:
                text.insert(at, text.substr(at, 1 + bits() % 40));
                break;
            }
            if (text.empty())
                text = " ";
        }
        try {
            (void)read_trip_text(text, file);
        } catch (const geo::InputError& error) {
            EXPECT_FALSE(error.problems().empty());
            ++refused;
        }
    }
    EXPECT_GT(refused, 200);
}

TEST(SampleRoutes, HaveTripFilesWithoutProblems) {
    int read = 0;
    for (const fs::path& folder : files_in(source / "sample-routes")) {
        const fs::path file = folder / "trip.json";
        if (!fs::exists(file))
            continue;
        try {
            EXPECT_FALSE(read_trip(file).name.empty());
            ++read;
        } catch (const geo::InputError& error) {
            for (const geo::Problem& problem : error.problems())
                ADD_FAILURE() << to_string(problem);
        }
    }
    EXPECT_GE(read, 3);
}

} // namespace
} // namespace tumpline::planner
