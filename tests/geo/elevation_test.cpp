#include "geo/elevation.h"

#include "geo/input_error.h"
#include "geo/profile.h"
#include "tests/support/published_value.h"
#include "tests/support/random_draws.h"
#include "tests/support/raster_file.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <limits>
#include <map>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace tumpline::geo {
namespace {

namespace fs = std::filesystem;
using test::PublishedValue;
using test::RasterFile;
using test::TempFolder;
using test::write_hgt;
using test::write_raster;
using testing::HasSubstr;

/// A raster of 0.001 degrees a cell, its north-west corner at 61 N 12 E.
RasterFile small_raster() {
    return {.columns = 50,
            .rows = 40,
            .corner_and_cell = {12.0, 0.001, 0.0, 61.0, 0.0, -0.001},
            .crs = "EPSG:4326",
            .no_data = std::nullopt,
            .unit = ""};
}

/// Centre of a cell of `small_raster`.
Position centre(double column, double row) {
    return {.lat_deg = 61.0 - 0.001 * (row + 0.5), .lon_deg = 12.0 + 0.001 * (column + 0.5)};
}

double slope(int column, int row) {
    return 100.0 + 3.0 * column - 2.0 * row;
}

Problem problem_of(const fs::path& file) {
    try {
        Elevation elevation({file});
        (void)elevation.at({.lat_deg = 60.99, .lon_deg = 12.01});
    } catch (const InputError& error) {
        EXPECT_FALSE(error.problems().empty());
        return error.problems().front();
    }
    return {.file = "no problem", .place = {}, .found = {}, .expected = {}, .advice = {}};
}

// ---- printed rows -----------------------------------------------------------------------------

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

// ---- where cells stand ------------------------------------------------------------------------

TEST(Elevation, IsLinearBetweenCellCentresAndBeyondTheOuterOnes) {
    const TempFolder folder;
    const fs::path file = folder.path() / "slope.tif";
    write_raster(file, small_raster(), slope);
    Elevation elevation({file});
    for (double column = -0.5; column <= 49.5; column += 0.25)
        for (double row = -0.5; row <= 39.5; row += 0.25) {
            const auto found = elevation.at(centre(column * 0.999999, row * 0.999999));
            ASSERT_TRUE(found) << column << ' ' << row;
            ASSERT_NEAR(*found, 100.0 + 3.0 * column - 2.0 * row, 1e-3);
        }
    EXPECT_FALSE(elevation.at(centre(-0.6, 3.0)));
    EXPECT_FALSE(elevation.at(centre(49.6, 3.0)));
    EXPECT_FALSE(elevation.at(centre(3.0, -0.6)));
    EXPECT_FALSE(elevation.at(centre(3.0, 39.6)));
    EXPECT_FALSE(elevation.at({.lat_deg = 95.0, .lon_deg = 12.01}));
}

TEST(Elevation, TilesOfAnHgtMeetOnTheDegreeLines) {
    const TempFolder folder;
    const auto height = [](int west, int column, int row) {
        return 20 * west + column / 60 + row / 300; // whole metres on every sixtieth column
    };
    for (const int west : {10, 11})
        write_hgt(folder.path() / fmt::format("N61E0{}.hgt", west), 1201, [&](int column, int row) {
            return height(west, column, row);
        });
    Elevation elevation({folder.path() / "N61E010.hgt", folder.path() / "N61E011.hgt"});
    EXPECT_NEAR(*elevation.at({.lat_deg = 61.0, .lon_deg = 10.0}), 204.0, 1e-3);
    EXPECT_NEAR(*elevation.at({.lat_deg = 62.0, .lon_deg = 11.0}), 220.0, 1e-3);
    EXPECT_NEAR(*elevation.at({.lat_deg = 62.0, .lon_deg = 11.05}), 221.0, 1e-3);
    EXPECT_NEAR(*elevation.at({.lat_deg = 61.5, .lon_deg = 12.0}), 242.0, 1e-3);
}

TEST(Elevation, CellsThatArePointsAreNotShifted) {
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.point = true; // the first cell stands at 61 N 12 E itself
    write_raster(folder.path() / "points.tif", raster, slope);
    Elevation elevation({folder.path() / "points.tif"});
    EXPECT_NEAR(*elevation.at({.lat_deg = 61.0, .lon_deg = 12.0}), 100.0, 1e-3);
    EXPECT_NEAR(*elevation.at({.lat_deg = 60.99, .lon_deg = 12.01}), 110.0, 1e-3);
}

// The rasters hold the coordinates of their own grid: looked up at a printed place they must give
// the printed easting and northing.
TEST(Elevation, TransformsPlacesIntoTheRastersCrs) {
    const TempFolder folder;
    int rows = 0;
    for (const char* formula : {"utm_easting", "utm_northing"})
        for (const PublishedValue& row : test::published("geodesy", formula)) {
            const bool easting = row.formula == "utm_easting";
            const double middle = std::round(row.expected / 100.0) * 100.0;
            const RasterFile raster{
                .columns = 100,
                .rows = 100,
                .corner_and_cell =
                    easting
                        ? std::array{middle - 5'000.0, 100.0, 0.0, 10'000'000.0, 0.0, -100'000.0}
                        : std::array{0.0, 10'000.0, 0.0, middle + 5'000.0, 0.0, -100.0},
                .crs = fmt::format("EPSG:{}", 28300 + row.input("zone")),
                .no_data = std::nullopt,
                .unit = ""};
            const fs::path file = folder.path() / (row.id + ".tif");
            write_raster(file, raster, [&](int column, int line) {
                return easting ? 100.0 * (column - 49.5) : 100.0 * (49.5 - line);
            });
            const auto found = Elevation({file}).at(
                {.lat_deg = row.input("lat_deg"), .lon_deg = row.input("lon_deg")});
            ASSERT_TRUE(found) << row;
            EXPECT_NEAR(middle + *found, row.expected, 0.002) << row;
            ++rows;
        }
    EXPECT_GT(rows, 0);
}

TEST(Elevation, CrossesTheAntimeridian) {
    const TempFolder folder;
    const auto by_longitude = [](double west_deg, double cell_deg) {
        return [=](int column, int) {
            return 100.0 + std::remainder(west_deg + (column + 0.5) * cell_deg - 180.0, 360.0);
        };
    };
    const RasterFile east{.columns = 200,
                          .rows = 100,
                          .corner_and_cell = {179.0, 0.01, 0.0, -16.0, 0.0, -0.01},
                          .crs = "EPSG:4326",
                          .no_data = std::nullopt,
                          .unit = ""};
    RasterFile west = east;
    west.corner_and_cell[0] = -181.0;
    const RasterFile world{.columns = 720,
                           .rows = 360,
                           .corner_and_cell = {-180.0, 0.5, 0.0, 90.0, 0.0, -0.5},
                           .crs = "EPSG:4326",
                           .no_data = std::nullopt,
                           .unit = ""};
    write_raster(folder.path() / "east.tif", east, by_longitude(179.0, 0.01));
    write_raster(folder.path() / "west.tif", west, by_longitude(179.0, 0.01));
    write_raster(folder.path() / "world.tif", world, by_longitude(-180.0, 0.5));
    for (const char* name : {"east.tif", "west.tif", "world.tif"}) {
        Elevation elevation({folder.path() / name});
        for (const double lon_deg : {179.7, 179.999, 180.0, -180.0, -179.999, -179.7}) {
            const auto found = elevation.at({.lat_deg = -16.5, .lon_deg = lon_deg});
            ASSERT_TRUE(found) << name << ' ' << lon_deg;
            EXPECT_NEAR(*found, 100.0 + std::remainder(lon_deg - 180.0, 360.0), 1e-3)
                << name << ' ' << lon_deg;
        }
    }
}

TEST(Elevation, ReadsATurnedGrid) {
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.corner_and_cell = {12.0, 0.0, 0.001, 61.0, -0.001, 0.0}; // columns run southwards
    write_raster(folder.path() / "turned.tif", raster, slope);
    Elevation elevation({folder.path() / "turned.tif"});
    EXPECT_NEAR(*elevation.at({.lat_deg = 61.0 - 0.001 * 10.5, .lon_deg = 12.0 + 0.001 * 4.5}),
                slope(10, 4),
                1e-3);
}

// ---- voids ------------------------------------------------------------------------------------

TEST(Elevation, WeighsTheCellsAroundAVoidByTheirDistance) {
    const TempFolder folder;
    const fs::path tile = folder.path() / "N61E012.hgt";
    write_hgt(tile, 1201, [](int column, int row) {
        if (column == 600 && row == 600)
            return -32768;
        if (column >= 700 && column <= 710 && row >= 700 && row <= 710)
            return -32768;
        return column == 601 ? 90 : 30;
    });
    Elevation elevation({tile});
    const auto at = [&](double column, double row) {
        return elevation.at({.lat_deg = 62.0 - row / 1200.0, .lon_deg = 12.0 + column / 1200.0});
    };
    // From the middle of a square whose north-west cell is void all others are equally far.
    EXPECT_NEAR(*at(600.5, 600.5), (90.0 + 30.0 + 90.0) / 3.0, 1e-2);
    // A quarter of a cell east of the void: distances to the three others.
    const double east = 1.0 / 0.75, south = 1.0 / std::hypot(0.25, 1.0),
                 south_east = 1.0 / std::hypot(0.75, 1.0);
    EXPECT_NEAR(*at(600.25, 600.0),
                (90.0 * east + 30.0 * south + 90.0 * south_east) / (east + south + south_east),
                1e-2);
    EXPECT_FALSE(at(705.5, 705.5)); // all four void
    EXPECT_FALSE(at(705.0, 705.0));
    EXPECT_TRUE(at(710.5, 710.5)); // three void
}

TEST(Elevation, VoidsOfEveryMarkAreVoids) {
    const TempFolder folder;
    for (const double mark : {-32768.0,
                              -9999.0,
                              -3.4028234663852886e38,
                              std::numeric_limits<double>::quiet_NaN(),
                              std::numeric_limits<double>::infinity(),
                              12'345.0}) {
        const fs::path file = folder.path() / "void.tif";
        write_raster(file, small_raster(), [&](int, int) { return mark; });
        EXPECT_FALSE(Elevation({file}).at(centre(5, 5))) << mark;
    }
    RasterFile declared = small_raster();
    declared.no_data = 0.0;
    write_raster(folder.path() / "declared.tif", declared, [](int column, int) {
        return column < 20 ? 0.0 : 55.0;
    });
    Elevation elevation({folder.path() / "declared.tif"});
    EXPECT_FALSE(elevation.at(centre(5, 5)));
    EXPECT_EQ(elevation.at(centre(30, 5)), 55.0);
}

TEST(Elevation, TheFirstRasterThatKnowsAnswers) {
    const TempFolder folder;
    RasterFile holes = small_raster();
    holes.no_data = -1.0;
    write_raster(folder.path() / "holes.tif", holes, [](int column, int) {
        return column < 20 ? 10.0 : -1.0;
    });
    write_raster(folder.path() / "whole.tif", small_raster(), [](int, int) { return 70.0; });
    Elevation elevation({folder.path() / "holes.tif", folder.path() / "whole.tif"});
    EXPECT_EQ(elevation.at(centre(5, 5)), 10.0);
    EXPECT_EQ(elevation.at(centre(30, 5)), 70.0);
    EXPECT_FALSE(elevation.at({.lat_deg = 10.0, .lon_deg = 12.0}));
    EXPECT_THAT(elevation.describe(), testing::SizeIs(2));
    EXPECT_NEAR(elevation.cell_m(), std::sqrt(111.4 * 54.1), 1.0);
}

TEST(Elevation, WithoutRastersItKnowsNothing) {
    Elevation elevation({});
    EXPECT_FALSE(elevation.at({.lat_deg = 61.0, .lon_deg = 12.0}));
    EXPECT_EQ(elevation.cell_m(), 0.0);
    EXPECT_TRUE(elevation.describe().empty());
}

// ---- datum and unit ---------------------------------------------------------------------------

TEST(Elevation, TurnsHeightsAboveTheEllipsoidIntoHeightsAboveTheGeoid) {
    if (!geoid_height_m({.lat_deg = 61.0, .lon_deg = 12.0}))
        GTEST_SKIP() << "PROJ's grid egm96_15.gtx is not installed";
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.crs = "EPSG:4979"; // WGS 84 with ellipsoidal heights
    write_raster(folder.path() / "ellipsoid.tif", raster, [](int, int) { return 500.0; });
    raster.crs = "EPSG:4326+5773"; // the same with heights above EGM96
    write_raster(folder.path() / "geoid.tif", raster, [](int, int) { return 500.0; });
    Elevation ellipsoid({folder.path() / "ellipsoid.tif"});
    Elevation geoid({folder.path() / "geoid.tif"});
    const Position place = centre(5, 5);
    EXPECT_NEAR(*ellipsoid.at(place), 500.0 - *geoid_height_m(place), 1e-3);
    EXPECT_NEAR(*geoid.at(place), 500.0, 1e-3);
    EXPECT_THAT(ellipsoid.describe().front(), HasSubstr("corrected to the geoid"));
    EXPECT_THAT(geoid.describe().front(), HasSubstr("above the geoid"));
}

TEST(Elevation, TurnsFeetIntoMetres) {
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.unit = "ft";
    write_raster(folder.path() / "feet.tif", raster, [](int, int) { return 1000.0; });
    EXPECT_NEAR(*Elevation({folder.path() / "feet.tif"}).at(centre(5, 5)), 304.8, 1e-3);
}

// ---- several files in one ---------------------------------------------------------------------

std::string vrt_of(const std::string& source) {
    return fmt::format(R"(<VRTDataset rasterXSize="50" rasterYSize="40"><SRS>EPSG:4326</SRS>
<GeoTransform>12.0, 0.001, 0.0, 61.0, 0.0, -0.001</GeoTransform>
<VRTRasterBand dataType="Float64" band="1"><NoDataValue>-32768</NoDataValue><SimpleSource>
<SourceFilename relativeToVRT="{}">{}</SourceFilename><SourceBand>1</SourceBand>
<SrcRect xOff="0" yOff="0" xSize="50" ySize="40"/><DstRect xOff="0" yOff="0" xSize="50" ySize="40"/>
</SimpleSource></VRTRasterBand></VRTDataset>)",
                       source.find('/') == std::string::npos ? 1 : 0,
                       source);
}

TEST(Elevation, ReadsAVrt) {
    const TempFolder folder;
    write_raster(folder.path() / "slope.tif", small_raster(), slope);
    Elevation elevation({folder.write("all.vrt", vrt_of("slope.tif"))});
    EXPECT_NEAR(*elevation.at(centre(7, 9)), slope(7, 9), 1e-3);
}

TEST(Elevation, RefusesAVrtThatPointsToTheNetwork) {
    const TempFolder folder;
    testing::internal::CaptureStderr();
    for (const char* source : {"/vsicurl/http://192.0.2.1/dem.tif",
                               "http://192.0.2.1/dem.tif",
                               "/vsis3/bucket/dem.tif",
                               "WMTS:http://192.0.2.1/wmts"}) {
        const auto started = std::chrono::steady_clock::now();
        const Problem problem = problem_of(folder.write("net.vrt", vrt_of(source)));
        EXPECT_THAT(problem.file, HasSubstr("net.vrt")) << source;
        EXPECT_LT(std::chrono::steady_clock::now() - started, std::chrono::seconds(2)) << source;
    }
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
}

// ---- what cannot be used ----------------------------------------------------------------------

TEST(Elevation, NamesWhatIsWrongWithARaster) {
    const TempFolder folder;
    testing::internal::CaptureStderr();
    EXPECT_EQ(problem_of(folder.path() / "absent.tif").found, "no such file");
    EXPECT_EQ(problem_of("/vsicurl/http://192.0.2.1/dem.tif").found, "no such file");
    EXPECT_EQ(problem_of("http://192.0.2.1/dem.tif").found, "no such file");
    EXPECT_EQ(problem_of(folder.path()).found, "a folder");
    EXPECT_THAT(problem_of(folder.write("text.tif", "not a raster")).expected,
                HasSubstr("elevation raster"));
    EXPECT_THAT(problem_of(folder.write("empty.tif", "")).expected, HasSubstr("elevation raster"));

    RasterFile raster = small_raster();
    raster.crs = "";
    write_raster(folder.path() / "nowhere.tif", raster, slope);
    EXPECT_EQ(problem_of(folder.path() / "nowhere.tif").place, "CRS");
    raster.crs = "LOCAL_CS[\"a field\",UNIT[\"metre\",1]]";
    write_raster(folder.path() / "local.tif", raster, slope);
    EXPECT_EQ(problem_of(folder.path() / "local.tif").place, "CRS");
    raster = small_raster();
    raster.bytes = true;
    write_raster(folder.path() / "map.tif", raster, [](int, int) { return 0.0; });
    EXPECT_EQ(problem_of(folder.path() / "map.tif").place, "band 1");
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
}

TEST(Elevation, NamesEveryRasterThatCannotBeUsed) {
    const TempFolder folder;
    try {
        const Elevation elevation({folder.path() / "one.tif", folder.path() / "two.tif"});
        FAIL();
    } catch (const InputError& error) {
        ASSERT_EQ(error.problems().size(), 2U);
        EXPECT_THAT(error.problems()[1].file, HasSubstr("two.tif"));
    }
}

TEST(Elevation, SpoiltRastersAreAnsweredInTime) {
    const TempFolder folder;
    write_raster(folder.path() / "good.tif", small_raster(), slope);
    write_hgt(folder.path() / "N60E012.hgt", 1201, [](int column, int) { return column; });
    std::mt19937_64 engine(11);
    testing::internal::CaptureStderr();
    for (const char* name : {"good.tif", "N60E012.hgt"}) {
        std::ifstream in(folder.path() / name, std::ios::binary);
        const std::string good((std::istreambuf_iterator<char>(in)), {});
        for (int round = 0; round < 150; ++round) {
            std::string bad = good;
            if (round % 3 == 0)
                bad.resize(engine() % bad.size());
            else // most bits stand in cells; what leads to them stands at the ends
                for (int flip = 0; flip < 8; ++flip) {
                    const std::size_t end = std::min<std::size_t>(bad.size(), 512);
                    const std::size_t place = engine() % end;
                    bad[flip % 2 == 0 ? place : bad.size() - 1 - place] =
                        static_cast<char>(engine());
                }
            const fs::path spoilt = folder.path() / "spoilt" / name;
            fs::create_directory(spoilt.parent_path());
            std::ofstream(spoilt, std::ios::binary) << bad;
            const auto started = std::chrono::steady_clock::now();
            try {
                Elevation elevation({spoilt});
                (void)elevation.describe();
                for (int row = 0; row < 40; ++row)
                    EXPECT_TRUE(std::isfinite(elevation.at(centre(row, row)).value_or(0.0)));
            } catch (const InputError& error) {
                EXPECT_THAT(std::string(error.what()), HasSubstr(name));
            }
            EXPECT_LT(std::chrono::steady_clock::now() - started, std::chrono::seconds(2))
                << name << " round " << round;
        }
    }
    EXPECT_EQ(testing::internal::GetCapturedStderr(), "");
}

TEST(Elevation, AHugeDeclaredRasterTakesNoMemory) {
    const TempFolder folder;
    const std::string vrt =
        R"(<VRTDataset rasterXSize="2000000000" rasterYSize="2000000000"><SRS>EPSG:4326</SRS>
<GeoTransform>-180.0, 1.8e-7, 0.0, 90.0, 0.0, -9e-8</GeoTransform>
<VRTRasterBand dataType="Float64" band="1"/></VRTDataset>)";
    const fs::path file = folder.write("huge.vrt", vrt);
    Elevation elevation({file});
    for (int lon_deg = -179; lon_deg < 180; ++lon_deg)
        EXPECT_EQ(elevation.at({.lat_deg = 61.0, .lon_deg = lon_deg + 0.25}).value_or(0.0), 0.0);
}

// ---- along a line -----------------------------------------------------------------------------

TEST(Elevation, AProfileTakesItsHeightsFromTheRaster) {
    const TempFolder folder;
    write_raster(
        folder.path() / "ramp.tif", small_raster(), [](int, int row) { return 2.0 * row; });
    Elevation elevation({folder.path() / "ramp.tif"});
    const Polyline line({centre(20, 35), centre(20, 5)}); // northwards and downhill: 30 rows of 2 m
    const Profile profile = make_profile(line, {}, &elevation, Surface::land, {});
    EXPECT_EQ(profile.source, HeightSource::raster);
    EXPECT_NEAR(profile.ascent_m, 0.0, 1e-9);
    EXPECT_NEAR(profile.descent_m, 60.0, 1e-3);
    EXPECT_EQ(profile.threshold_m, 5.0);
}

TEST(Elevation, HolesOfTheRasterAreFilledFromTheTrackWithoutASeam) {
    const TempFolder folder;
    RasterFile raster = small_raster();
    raster.no_data = -1.0;
    write_raster(folder.path() / "hole.tif", raster, [](int, int row) {
        return row >= 15 && row <= 25 ? -1.0 : 300.0; // 1.2 km of hole
    });
    Elevation elevation({folder.path() / "hole.tif"});
    const Polyline line({centre(20, 38), centre(20, 20), centre(20, 1)});
    // The receiver reads 40 m too high throughout, and knows of a hill in the hole.
    const PointHeights recorded{340.0, 400.0, 340.0};
    const Profile profile = make_profile(line, recorded, &elevation, Surface::land, {});
    EXPECT_EQ(profile.source, HeightSource::raster);
    EXPECT_EQ(profile.interpolated + profile.unknown, 0U);
    EXPECT_NEAR(profile.ascent_m, profile.descent_m, 1.0);
    EXPECT_GT(profile.ascent_m, 15.0);
    EXPECT_LT(profile.ascent_m, 60.0);
}

TEST(Elevation, TheTrackAnswersWhereTheRasterCoversTheLesserPart) {
    const TempFolder folder;
    write_raster(folder.path() / "part.tif", small_raster(), [](int, int) { return 900.0; });
    Elevation elevation({folder.path() / "part.tif"});
    const Polyline line({centre(20, 38), centre(20, 120)});
    const Profile profile = make_profile(line, {100.0, 200.0}, &elevation, Surface::land, {});
    EXPECT_EQ(profile.source, HeightSource::track);
    EXPECT_NEAR(profile.ascent_m, 100.0, 1e-3);
}

} // namespace
} // namespace tumpline::geo
