/// Our figures beside those of general-purpose programs, where these are installed.

#include "geo/light/sun.h"
#include "geo/lines/geodesic.h"
#include "tests/support/random_draws.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <fstream>
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
    test::Draws draws(20'270'618);
    std::vector<Pair> all;
    for (int i = 0; i < 500; ++i) {
        const Position from{.lat_deg = draws.between(-89.9, 89.9),
                            .lon_deg = draws.between(-180.0, 180.0)};
        if (i % 2 == 0)
            all.push_back({from, {draws.between(-89.9, 89.9), draws.between(-180.0, 180.0)}});
        else // a step of a track
            all.push_back({from,
                           {std::clamp(from.lat_deg + draws.between(-1e-3, 1e-3), -89.99, 89.99),
                            std::remainder(from.lon_deg + draws.between(-1e-3, 1e-3), 360.0)}});
    }
    return all;
}

/// What a command prints for the lines that it is given, `columns` numbers to a line; empty if the
/// shell command `there` fails, because the program is not installed.
struct Asked {
    std::string there;
    std::string command;
    std::string lines;
    std::size_t columns;
};

std::vector<std::vector<double>> answers(const Asked& asked) {
    const test::TempFolder folder;
    if (std::system( // NOLINT: a command of our own
            fmt::format("{} >/dev/null 2>&1", asked.there).c_str()) != 0)
        return {};
    const auto in = folder.write("asked.txt", asked.lines);
    const auto out = folder.path() / "answers.txt";
    const std::string command =
        fmt::format("{} <'{}' >'{}'", asked.command, in.string(), out.string());
    EXPECT_EQ(std::system(command.c_str()), 0) << command; // NOLINT: a command of our own
    std::vector<double> numbers;
    std::ifstream printed(out);
    for (double number = 0.0; printed >> number;)
        numbers.push_back(number);
    std::vector<std::vector<double>> rows;
    for (auto at = numbers.begin(); numbers.end() - at >= static_cast<long>(asked.columns);
         at += static_cast<long>(asked.columns))
        rows.emplace_back(at, at + static_cast<long>(asked.columns));
    return rows;
}

/// Azimuths and length of every pair by a program that takes them one to a line.
std::vector<std::vector<double>> geodesics_by(const std::string& program,
                                              const std::string& arguments) {
    std::string lines;
    for (const Pair& pair : pairs())
        lines += fmt::format("{:.12f} {:.12f} {:.12f} {:.12f}\n",
                             pair.from.lat_deg,
                             pair.from.lon_deg,
                             pair.to.lat_deg,
                             pair.to.lon_deg);
    return answers({"command -v " + program, program + " " + arguments, lines, 3});
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
    const auto rows = geodesics_by("geod", "+ellps=WGS84 -I -f %.10f");
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
    const auto rows = geodesics_by("GeodSolve", "-i -p 6");
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

/// An almanac with a sun of its own (VSOP87), asked for the centre at -50 arc minutes without
/// refraction: rise and set in seconds after 0h UT of lines "2024/3/20 LATITUDE LONGITUDE".
constexpr const char* almanac = R"(
import ephem, sys
for line in sys.stdin:
    date, lat, lon = line.split()
    there = ephem.Observer()
    there.lat, there.lon, there.pressure, there.horizon = lat, lon, 0, "-0:50"
    for event in (there.next_rising, there.next_setting):
        there.date = date
        print("%.3f" % ((event(ephem.Sun(), use_center=True) - ephem.Date(date)) * 86400))
)";

TEST(CrossCheck, SunriseAndSunsetAreThoseOfAnAlmanac) {
    struct Question {
        std::chrono::year_month_day date;
        Position place;
    };

    test::Draws draws(1'975);
    std::vector<Question> asked;
    std::string lines;
    for (int i = 0; i < 300; ++i) { // where the sun rises and sets within a day of UT
        using namespace std::chrono;
        const Question one{sys_days{year{1990} / 1 / 1} + days{draws.whole(0, 55 * 365)},
                           {draws.between(-55.0, 55.0), draws.between(-25.0, 25.0)}};
        lines += fmt::format("{}/{}/{} {:.6f} {:.6f}\n",
                             static_cast<int>(one.date.year()),
                             static_cast<unsigned>(one.date.month()),
                             static_cast<unsigned>(one.date.day()),
                             one.place.lat_deg,
                             one.place.lon_deg);
        asked.push_back(one);
    }
    const test::TempFolder folder;
    const auto script = folder.write("almanac.py", almanac);
    const auto rows = answers({"/usr/bin/python3 -c 'import ephem'",
                               fmt::format("/usr/bin/python3 '{}'", script.string()),
                               lines,
                               2});
    if (rows.empty())
        GTEST_SKIP() << "python3-ephem is not installed: nothing is compared";
    ASSERT_EQ(rows.size(), asked.size());
    for (std::size_t i = 0; i < asked.size(); ++i) {
        const SunCrossings ours =
            sun_crossings({asked[i].date, "UTC"}, asked[i].place, -50.0 / 60.0);
        ASSERT_TRUE(ours.rise && ours.set) << i;
        const auto after = [&](sys_seconds moment) {
            return static_cast<double>((moment - std::chrono::sys_days(asked[i].date)).count());
        };
        EXPECT_NEAR(after(*ours.rise), rows[i][0], 10.0) << i;
        EXPECT_NEAR(after(*ours.set), rows[i][1], 10.0) << i;
    }
}

} // namespace
} // namespace tumpline::geo
