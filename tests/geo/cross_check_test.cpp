/// Our figures beside those of general-purpose programs, where these are installed.

#include "geo/geodesic.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <random>
#include <string>
#include <vector>

namespace tumpline::geo {
namespace {

struct Pair {
    Position from;
    Position to;
};

/// Pairs near and far, around the poles and across the antimeridian; the same on every machine.
std::vector<Pair> pairs() {
    std::mt19937_64 bits(20'270'618);
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(bits() >> 11) * 0x1p-53;
    };
    std::vector<Pair> all;
    for (int i = 0; i < 500; ++i) {
        const Position from{.lat_deg = between(-89.9, 89.9), .lon_deg = between(-180.0, 180.0)};
        if (i % 2 == 0)
            all.push_back({from, {between(-89.9, 89.9), between(-180.0, 180.0)}});
        else // a step of a track
            all.push_back({from,
                           {std::clamp(from.lat_deg + between(-1e-3, 1e-3), -89.99, 89.99),
                            std::remainder(from.lon_deg + between(-1e-3, 1e-3), 360.0)}});
    }
    return all;
}

/// What a program prints of pairs, one line with three numbers each; empty if it is not there.
std::vector<std::vector<double>> answers(const std::string& program, const std::string& arguments) {
    const test::TempFolder folder;
    if (std::system( // NOLINT: a fixed command
            fmt::format("command -v {} >/dev/null 2>&1", program).c_str()) != 0)
        return {};
    std::string asked;
    for (const Pair& pair : pairs())
        asked += fmt::format("{:.12f} {:.12f} {:.12f} {:.12f}\n",
                             pair.from.lat_deg,
                             pair.from.lon_deg,
                             pair.to.lat_deg,
                             pair.to.lon_deg);
    const auto in = folder.write("pairs.txt", asked);
    const auto out = folder.path() / "answers.txt";
    const std::string command =
        fmt::format("{} {} <'{}' >'{}'", program, arguments, in.string(), out.string());
    EXPECT_EQ(std::system(command.c_str()), 0) << command; // NOLINT: a command of our own
    std::vector<std::vector<double>> rows;
    std::ifstream lines(out);
    for (std::vector<double> row(3); lines >> row[0] >> row[1] >> row[2];)
        rows.push_back(row);
    return rows;
}

void expect_lengths_and_azimuths(const std::vector<std::vector<double>>& rows) {
    const std::vector<Pair> asked = pairs();
    ASSERT_EQ(rows.size(), asked.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Geodesic ours = geodesic(asked[i].from, asked[i].to);
        EXPECT_NEAR(ours.length_m, rows[i][2], 1e-3) << i;
        EXPECT_NEAR(std::remainder(ours.start_azimuth_deg - rows[i][0], 360.0), 0.0, 1e-6) << i;
    }
}

TEST(CrossCheck, GeodesicsAreThoseOfPROJ) {
    const auto rows = answers("geod", "+ellps=WGS84 -I -f %.10f");
    if (rows.empty())
        GTEST_SKIP() << "geod is not installed (proj-bin): nothing is compared";
    expect_lengths_and_azimuths(rows);
    const std::vector<Pair> asked = pairs();
    for (std::size_t i = 0; i < rows.size(); ++i) // its second azimuth points back
        EXPECT_NEAR(std::remainder(geodesic(asked[i].from, asked[i].to).end_azimuth_deg + 180.0 -
                                       rows[i][1],
                                   360.0),
                    0.0,
                    1e-6);
}

TEST(CrossCheck, GeodesicsAreThoseOfGeodSolve) {
    const auto rows = answers("GeodSolve", "-i -p 6");
    if (rows.empty())
        GTEST_SKIP() << "GeodSolve is not installed (geographiclib-tools): nothing is compared";
    expect_lengths_and_azimuths(rows);
    const std::vector<Pair> asked = pairs();
    for (std::size_t i = 0; i < rows.size(); ++i)
        EXPECT_NEAR(std::remainder(
                        geodesic(asked[i].from, asked[i].to).end_azimuth_deg - rows[i][1], 360.0),
                    0.0,
                    1e-6);
}

} // namespace
} // namespace tumpline::geo
