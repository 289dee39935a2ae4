#include "geo/ground/elevation.h"
#include "geo/lines/geodesic.h"
#include "planner/trip/trip_file.h"
#include "sample-routes/make/lay_out.h"
#include "sample-routes/make/samples.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <cctype>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <iterator>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

namespace fs = std::filesystem;
using test::text_of;

fs::path sample_routes() {
    return test::root / "sample-routes";
}

/// Where two texts differ, numbers within `tolerance` being the same; empty if they do not.
std::string difference(const std::string& a, const std::string& b, double tolerance) {
    const char* p = a.data();
    const char* q = b.data();
    const char* const p_end = p + a.size();
    const char* const q_end = q + b.size();
    while (p != p_end && q != q_end) {
        if (std::isdigit(static_cast<unsigned char>(*p)) != 0) {
            double x = 0.0, y = 0.0;
            const auto past_x = std::from_chars(p, p_end, x);
            const auto past_y = std::from_chars(q, q_end, y);
            if (past_y.ec != std::errc{} || std::abs(x - y) > tolerance)
                return std::string(p, std::min(p + 60, p_end));
            p = past_x.ptr;
            q = past_y.ptr;
        } else if (*p++ != *q++)
            return std::string(p - 1, std::min(p + 60, p_end));
    }
    return p == p_end && q == q_end ? "" : "one is longer";
}

TEST(SampleRoutes, MakingThemAnewGivesTheSameTracks) {
    const test::TempFolder folder;
    samples::make_samples(folder.path());
    std::size_t compared = 0;
    for (const fs::directory_entry& made : fs::recursive_directory_iterator(folder.path())) {
        const std::string extension = made.path().extension();
        if (extension != ".gpx" && extension != ".geojson")
            continue;
        const fs::path kept = sample_routes() / fs::relative(made.path(), folder.path());
        EXPECT_EQ(difference(text_of(kept), text_of(made.path()), 2e-6), "") << kept;
        ++compared;
    }
    EXPECT_EQ(compared, 16U); // nine of tracks, one of ground for each of seven trips

    geo::Elevation kept({sample_routes() / "saddle" / "saddle-dem.tif"});
    geo::Elevation made({folder.path() / "saddle" / "saddle-dem.tif"});
    for (int row = 0; row < 20; ++row)
        for (int column = 0; column < 20; ++column) {
            const geo::Position at{63.34 + 0.008 * row, 1.30 + 0.02 * column};
            ASSERT_TRUE(kept.at(at)) << at.lat_deg << " " << at.lon_deg;
            EXPECT_NEAR(*kept.at(at), made.at(at).value_or(-1e9), 1.0);
        }
}

TEST(SampleRoutes, EveryTripFileReads) {
    std::size_t read = 0;
    for (const fs::directory_entry& folder : fs::directory_iterator(sample_routes())) {
        const fs::path file = folder.path() / "trip.json";
        if (!fs::exists(file))
            continue;
        EXPECT_FALSE(read_trip(file).name.empty()) << file;
        EXPECT_TRUE(fs::exists(folder.path() / "README.md")) << file;
        EXPECT_NE(text_of(folder.path() / "README.md").find("This place does not exist."),
                  std::string::npos);
        ++read;
    }
    EXPECT_EQ(read, 7U);
}

/// The wanted height of `leg` at a share of its length, laid out as make_samples does.
samples::RoutePlan two_legs() {
    samples::RoutePlan plan{.lat_deg = 63.4, .lon_deg = 179.99, .legs = {}, .places = {}};
    plan.legs = {{.name = "up",
                  .type = "walk",
                  .length_m = 5000.0,
                  .bearing_deg = 80.0,
                  .bend_deg = 30.0,
                  .wiggle_deg = 40.0,
                  .step_m = 90.0,
                  .heights = {{0.0, 100.0}, {5000.0, 600.0}}},
                 {.name = "lake",
                  .type = "paddle",
                  .length_m = 3000.0,
                  .bearing_deg = 110.0,
                  .bend_deg = 0.0,
                  .wiggle_deg = 10.0,
                  .step_m = 200.0,
                  .heights = {{0.0, 600.0}, {3000.0, 600.0}}}};
    return plan;
}

TEST(SampleRoutes, LegsAreAsLongAsWantedAndMeet) {
    const samples::Layout layout = samples::lay_out(two_legs());
    ASSERT_EQ(layout.lines.size(), 2U);
    const double wanted_m[] = {5000.0, 3000.0};
    for (std::size_t i = 0; i < 2; ++i) {
        const std::vector<samples::Point>& points = layout.lines[i].points;
        double length_m = 0.0;
        for (std::size_t j = 1; j < points.size(); ++j)
            length_m += geo::distance_m({points[j - 1].lat_deg, points[j - 1].lon_deg},
                                        {points[j].lat_deg, points[j].lon_deg});
        EXPECT_NEAR(length_m, wanted_m[i], 0.5);
    }
    EXPECT_EQ(layout.lines[0].points.back().lat_deg, layout.lines[1].points.front().lat_deg);
    EXPECT_EQ(layout.lines[0].points.back().ground_m, 600.0);
}

TEST(SampleRoutes, ThePassOfTheSaddleIsHighestAlongAndLowestAcross) {
    geo::Elevation ground({sample_routes() / "saddle" / "saddle-dem.tif"});
    // The made way passes its highest point 3 100 m into the second track; found here by looking.
    const std::string gpx = text_of(sample_routes() / "saddle" / "saddle.gpx");
    std::size_t at = gpx.find("<name>saddle</name>");
    geo::Position summit{0.0, 0.0};
    geo::Position before{0.0, 0.0};
    for (int point = 0; point <= 31; ++point) {
        before = summit;
        at = gpx.find("<trkpt lat=\"", at) + 12;
        std::from_chars(gpx.data() + at, gpx.data() + at + 12, summit.lat_deg);
        at = gpx.find("lon=\"", at) + 5;
        std::from_chars(gpx.data() + at, gpx.data() + at + 12, summit.lon_deg);
    }
    const double along_deg = geo::geodesic(before, summit).end_azimuth_deg;
    const double top_m = ground.at(summit).value();
    EXPECT_NEAR(top_m, 1184.0, 4.0);
    for (const double away_m : {400.0, 800.0}) {
        EXPECT_LT(ground.at(geo::destination(summit, along_deg, away_m)).value(), top_m);
        EXPECT_LT(ground.at(geo::destination(summit, along_deg + 180.0, away_m)).value(), top_m);
        EXPECT_GT(ground.at(geo::destination(summit, along_deg + 90.0, away_m)).value(), top_m);
        EXPECT_GT(ground.at(geo::destination(summit, along_deg - 90.0, away_m)).value(), top_m);
    }
}

} // namespace
} // namespace tumpline::planner
