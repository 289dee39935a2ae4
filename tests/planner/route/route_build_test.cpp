#include "planner/route/route_build.h"

#include "geo/input_error.h"
#include "planner/trip/trip.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>

namespace tumpline::planner {
namespace {

/// A way of 10 000 km along the equator: 89.8 degrees of 111.32 km.
constexpr const char* long_way =
    "<gpx version=\"1.1\"><trk><name>way</name><type>walk</type><trkseg><trkpt lat=\"0\" "
    "lon=\"0\"/><trkpt lat=\"0\" lon=\"44.9\"/><trkpt lat=\"0\" "
    "lon=\"89.8\"/></trkseg></trk></gpx>";

Trip over(const std::filesystem::path& track, int legs) {
    Trip trip;
    trip.route.tracks = {track};
    for (int leg = 0; leg < legs; ++leg) {
        TripLeg there;
        there.name = fmt::format("leg {}", leg + 1);
        there.track = "way";
        there.travel = Travel::walk;
        trip.route.legs.push_back(there);
    }
    return trip;
}

/// One file of 10 000 km is read, but legs that go over it again and again are sampled each.
TEST(Route, BoundsWhatIsSampledWhateverTheFilesAre) {
    const test::TempFolder folder;
    const Trip trip = over(folder.write("way.gpx", long_way), 7);
    try {
        static_cast<void>(build_route(trip)); // 7 x 10 000 km / 25 m = 2 800 000 samples
        FAIL() << "was built";
    } catch (const geo::InputError& error) {
        const geo::Problem& problem = error.problems().front();
        EXPECT_EQ(problem.place, "/route");
        EXPECT_NE(problem.found.find("heights every 25 m"), std::string::npos) << problem.found;
        EXPECT_EQ(problem.expected, "2500000 samples at most");
        EXPECT_NE(problem.advice.find("\"step\""), std::string::npos);
    }
}

} // namespace
} // namespace tumpline::planner
