#include "geo/ground/elevation.h"
#include "geo/ground/geoid.h"
#include "geo/profiles/profile.h"
#include "tests/support/published_value.h"
#include "tests/support/random_draws.h"
#include "tests/support/raster_file.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <locale>
#include <map>
#include <sstream>
#include <string>
#include <vector>

/// Heights and climb beside printed rows and beside the grid of the geoid.
namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;
using test::PublishedValue;
using test::RasterFile;
using test::TempFolder;
using test::write_hgt;
using test::write_raster;

// Rows of the sources that are facts about data, not figures of ours, and where they are used.
const std::map<std::string, std::string>& facts() {
    static const std::map<std::string, std::string> used{
        {"rmse_of_le90", "docs/models/elevation.md, choice of the threshold"},
        {"copernicus_accuracy", "docs/models/elevation.md, choice of the threshold"},
    };
    return used;
}

class PublishedElevation : public testing::TestWithParam<PublishedValue> {};

TEST_P(PublishedElevation, AgreesWithPrintedFigures) {
    const PublishedValue& row = GetParam();
    if (facts().count(row.formula) != 0)
        return;
    const TempFolder folder;
    if (row.formula == "ascent" || row.formula == "descent") {
        const nlohmann::json heights = nlohmann::json::parse(row.text("elevations_m"));
        const Climb found = climb(heights.get<std::vector<double>>(), row.input("threshold_m"));
        EXPECT_NEAR(row.formula == "ascent" ? found.ascent_m : found.descent_m,
                    row.expected,
                    row.tolerance);
    } else if (row.formula == "bilinear") {
        const RasterFile raster{.columns = 2,
                                .rows = 2,
                                .corner_and_cell = {12.0, 0.5, 0.0, 61.0, 0.0, -0.5},
                                .crs = "EPSG:4326",
                                .no_data = std::nullopt,
                                .unit = ""};
        write_raster(folder.path() / "four.tif", raster, [&](int column, int line) {
            return row.input(fmt::format("z{}{}_m", column, line));
        });
        Elevation elevation({folder.path() / "four.tif"});
        const auto found = elevation.at({.lat_deg = 61.0 - 0.5 * (0.5 + row.input("y")),
                                         .lon_deg = 12.0 + 0.5 * (0.5 + row.input("x"))});
        ASSERT_TRUE(found);
        EXPECT_NEAR(*found, row.expected, 1e-4); // cells are kept as 32-bit numbers
    } else if (row.formula == "hgt_bytes") {
        const int side = static_cast<int>(row.input("rows"));
        const fs::path tile = folder.path() / "N34W119.hgt";
        write_hgt(tile, side, [](int column, int line) { return column - line; });
        EXPECT_EQ(static_cast<double>(fs::file_size(tile)), row.expected);
        Elevation elevation({tile});
        const double cells = side - 1;
        EXPECT_NEAR(*elevation.at({.lat_deg = 34.25, .lon_deg = -118.75}),
                    0.25 * cells - 0.75 * cells,
                    1e-3);
    } else if (row.formula == "hgt_name") {
        const fs::path tile = folder.path() / (row.expected_text + ".hgt");
        write_hgt(tile, 1201, [](int, int) { return 42; });
        const Position place{.lat_deg = row.input("lat_deg"), .lon_deg = row.input("lon_deg")};
        EXPECT_EQ(Elevation({tile}).at(place), 42.0);
    } else if (row.formula == "hgt_offset") {
        const int side = static_cast<int>(row.input("samples_per_side"));
        const double south = std::floor(row.input("lat_deg"));
        const double west = std::floor(row.input("lon_deg"));
        const fs::path tile = folder.path() / fmt::format("{}{:02}{}{:03}.hgt",
                                                          south < 0 ? 'S' : 'N',
                                                          std::abs(south),
                                                          west < 0 ? 'W' : 'E',
                                                          std::abs(west));
        write_hgt(tile, side, [&](int column, int line) {
            return 2.0 * (line * side + column) == row.expected ? 1234 : 7;
        });
        const auto found = Elevation({tile}).at(
            {.lat_deg = row.input("lat_deg"), .lon_deg = row.input("lon_deg")});
        EXPECT_NEAR(*found, 1234.0, 0.01);
    } else if (row.formula == "false_climb_of_noise") {
        test::Draws noise(7);
        const double sigma_m = row.input("sigma_m");
        double sum_m = 0.0;
        constexpr int draws = 200;
        for (int draw = 0; draw < draws; ++draw) {
            std::vector<double> heights_m;
            for (int i = 0; i <= static_cast<int>(row.input("steps")); ++i)
                heights_m.push_back(sigma_m * noise.normal());
            sum_m += climb(heights_m, 0.0).ascent_m;
        }
        EXPECT_NEAR(sum_m / draws, row.expected, 0.02 * row.expected); // a mean of draws
    } else {
        FAIL() << "no check for " << row.formula;
    }
}

INSTANTIATE_TEST_SUITE_P(Elevation,
                         PublishedElevation,
                         testing::ValuesIn(test::published("elevation")),
                         test::row_name);

TEST(Geoid, AgreesWithItsGrid) {
    std::ifstream in(test::root / "tests/published/egm96-checks.tsv");
    std::string line;
    int rows = 0;
    while (std::getline(in, line)) {
        std::istringstream fields(line);
        fields.imbue(std::locale::classic());
        double lon_deg = 0.0, lat_deg = 0.0, bilinear_m = 0.0, proj_m = 0.0;
        if (!(fields >> lon_deg >> lat_deg >> bilinear_m >> proj_m))
            continue; // a heading
        const auto found = geoid_height_m({.lat_deg = lat_deg, .lon_deg = lon_deg});
        if (!found)
            GTEST_SKIP() << "PROJ's grid egm96_15.gtx is not installed";
        EXPECT_NEAR(*found, bilinear_m, 1e-4) << line;
        EXPECT_NEAR(*found, proj_m, 1e-6) << line;
        ++rows;
    }
    EXPECT_EQ(rows, 20);
    EXPECT_FALSE(geoid_height_m({.lat_deg = 91.0, .lon_deg = 0.0}));
}

} // namespace
} // namespace tumpline::geo
