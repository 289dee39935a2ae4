#include "planner/recordings/new_trip.h"

#include "geo/input_error.h"
#include "geo/lines/geodesic.h"
#include "geo/tracks/gpx.h"
#include "planner/route/place_words.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace tumpline::planner {
namespace {

using std::chrono::milliseconds;

/// A line to the north with a height at every 20 m, and times if a speed is given.
geo::Track line_of(const std::vector<std::pair<double, double>>& heights_m,
                   double speed_mps = 0.0) {
    geo::Track track;
    track.name = "line";
    track.parts.emplace_back();
    const geo::Position start{61.0, 1.0};
    for (std::size_t i = 1; i < heights_m.size(); ++i) {
        const auto [from_m, low_m] = heights_m[i - 1];
        const auto [to_m, high_m] = heights_m[i];
        const int steps = static_cast<int>(std::lround((to_m - from_m) / 20.0));
        for (int k = i == 1 ? 0 : 1; k <= steps; ++k) {
            const double along_m = from_m + 20.0 * k;
            geo::TrackPoint point{.at = geo::destination(start, 0.0, along_m),
                                  .height_m = std::lerp(low_m, high_m, k / double(steps)),
                                  .time = std::nullopt};
            if (speed_mps > 0.0)
                point.time = geo::Instant(milliseconds(std::lround(along_m / speed_mps * 1000.0)));
            track.parts.back().push_back(point);
        }
    }
    return track;
}

geo::TrackFile file_of(std::vector<geo::Track> tracks, std::vector<geo::Waypoint> points = {}) {
    geo::TrackFile file;
    file.file = "made.gpx";
    file.tracks = std::move(tracks);
    file.waypoints = std::move(points);
    return file;
}

geo::Waypoint point_at(const std::string& name, double along_m, const std::string& type = {}) {
    return {.name = name,
            .type = type,
            .at = geo::destination({61.0, 1.0}, 0.0, along_m),
            .height_m = std::nullopt};
}

std::vector<Travel> ways(const FirstTrip& trip) {
    std::vector<Travel> ways;
    for (const FirstLeg& leg : trip.legs)
        ways.push_back(leg.travel);
    return ways;
}

using W = std::vector<Travel>;
constexpr Travel on_foot = Travel::walk;
constexpr Travel afloat = Travel::paddle;
constexpr Travel carrying = Travel::portage;

/// Up to a lake, over it, a carry to the next, over it, and up again.
const std::vector<std::pair<double, double>> two_lakes = {
    {0, 400}, {4000, 520}, {6000, 520}, {6800, 540}, {7400, 500}, {9400, 500}, {13000, 620}};

TEST(FirstTrip, TypesComeFirst) {
    geo::Track up = line_of({{0, 400}, {2000, 500}});
    up.name = "Lake trail";
    up.type = "hiking";
    geo::Track water = line_of({{2000, 500}, {4000, 500}});
    water.name = "second";
    water.type = "canoe";
    const FirstTrip trip = first_trip({file_of({up, water})}, nullptr);
    EXPECT_EQ(ways(trip), (W{on_foot, afloat}));
    EXPECT_EQ(trip.legs[0].track, "Lake trail");
    EXPECT_EQ(trip.legs[1].water, Water::lake);
}

TEST(FirstTrip, NamesTellWhereTheyAreClear) {
    EXPECT_EQ(travel_from_name("Upper river"), afloat);
    EXPECT_EQ(travel_from_name("Lake Ombery"), afloat);
    EXPECT_EQ(travel_from_name("Fall carry"), carrying);
    EXPECT_EQ(travel_from_name("Lake trail"), on_foot);
    EXPECT_EQ(travel_from_name("Kayaking home"), afloat);
    EXPECT_EQ(travel_from_name("to the river"), std::nullopt);
    EXPECT_EQ(travel_from_name("out of Lake Velt"), std::nullopt);
    EXPECT_EQ(travel_from_name("Seal rock"), std::nullopt);
    EXPECT_EQ(travel_from_name(""), std::nullopt);
}

TEST(FirstTrip, WaypointsTellTheirKindByTypeOrName) {
    EXPECT_EQ(kind_of({"Stone hut", "exit", {}, {}}), PlaceKind::exit);
    EXPECT_EQ(kind_of({"Put in", "", {}, {}}), PlaceKind::put_in);
    EXPECT_EQ(kind_of({"Takeout", "Flag", {}, {}}), PlaceKind::take_out);
    EXPECT_EQ(kind_of({"Shelf spring", "", {}, {}}), PlaceKind::water);
    EXPECT_EQ(kind_of({"Ledge rapid", "", {}, {}}), PlaceKind::hazard);
    EXPECT_EQ(kind_of({"Birch spit", "Campsite", {}, {}}), PlaceKind::camp);
    EXPECT_EQ(kind_of({"Wellington", "", {}, {}}), std::nullopt) << "a word within a word";
}

TEST(FirstTrip, LevelGroundIsWaterAndAShortWayBetweenTwoIsAPortage) {
    const FirstTrip trip = first_trip({file_of({line_of(two_lakes)})}, nullptr);
    ASSERT_EQ(ways(trip), (W{on_foot, afloat, carrying, afloat, on_foot}));
    const double lengths_m[] = {4000, 2000, 1400, 2000, 3600};
    for (std::size_t i = 0; i < 5; ++i)
        EXPECT_NEAR(trip.legs[i].length_m, lengths_m[i], 60.0) << i;
    for (std::size_t i = 0; i + 1 < 5; ++i)
        EXPECT_EQ(trip.legs[i].to, trip.legs[i + 1].from);
    EXPECT_TRUE(trip.legs.front().from.empty() && trip.legs.back().to.empty());
}

TEST(FirstTrip, ALongWayBetweenTwoWatersIsAWalk) {
    const FirstTrip trip = first_trip(
        {file_of({line_of({{0, 500}, {2000, 500}, {5000, 600}, {8000, 520}, {9000, 520}})})},
        nullptr);
    EXPECT_EQ(ways(trip), (W{afloat, on_foot, afloat}));
}

TEST(FirstTrip, AMeadowIsNoLake) {
    // 0.5 m of swell over 40 m: flat, but not as a water is.
    std::vector<std::pair<double, double>> ground;
    for (int i = 0; i <= 50; ++i)
        ground.emplace_back(40.0 * i, i % 2 == 0 ? 300.0 : 300.5);
    EXPECT_EQ(ways(first_trip({file_of({line_of(ground)})}, nullptr)), W{on_foot});
}

TEST(FirstTrip, HeightsThatAreAllZeroAreNoSea) {
    EXPECT_EQ(ways(first_trip({file_of({line_of({{0, 0}, {5000, 0}})})}, nullptr)), W{on_foot});
}

TEST(FirstTrip, TimesAtPaddlingSpeedAgreeAndTimesOfACarSpeakAgainstIt) {
    const FirstTrip paddled = first_trip({file_of({line_of(two_lakes, 4.5 / 3.6)})}, nullptr);
    EXPECT_EQ(ways(paddled), (W{on_foot, afloat, carrying, afloat, on_foot}));
    EXPECT_NE(paddled.legs[1].why.find("4.5 km/h"), std::string::npos) << paddled.legs[1].why;
    for (const double kmh : {8.7, 10.5, 60.0}) // a slow ride, a run, a car
        EXPECT_EQ(ways(first_trip({file_of({line_of(two_lakes, kmh / 3.6)})}, nullptr)), W{on_foot})
            << kmh;
}

TEST(FirstTrip, ALineThatFallsAtTheSpeedOfARideIsNoRiver) {
    const std::vector<std::pair<double, double>> fall = {{0, 300}, {6000, 280}};
    const FirstTrip ride = first_trip({file_of({line_of(fall, 9.0 / 3.6)})}, nullptr);
    ASSERT_EQ(ways(ride), W{on_foot});
    EXPECT_NE(ride.legs[0].why.find("a river, a run or a ride"), std::string::npos)
        << ride.legs[0].why;
    EXPECT_EQ(ways(first_trip({file_of({line_of(fall, 4.0 / 3.6)})}, nullptr)), W{on_foot});
}

TEST(FirstTrip, ARideIsTakenAsAWalkWithAWord) {
    geo::Track ride = line_of(two_lakes, 6.0 / 3.6); // slow enough for a boat
    ride.type = "cycling";
    const FirstTrip trip = first_trip({file_of({ride})}, nullptr);
    EXPECT_EQ(ways(trip), W{on_foot});
    ASSERT_EQ(trip.remarks.size(), 1U);
    EXPECT_NE(trip.remarks[0].find("is a ride by its type or name"), std::string::npos);
}

/// A walk up to a river, and the river down from there.
std::vector<geo::TrackFile> river_first(bool drawn_upwards) {
    geo::Track walk = line_of({{0, 400}, {5000, 500}});
    walk.name = "approach";
    geo::Track river = line_of({{5000, 500}, {24000, 440}});
    river.name = "long river";
    if (drawn_upwards)
        std::reverse(river.parts[0].begin(), river.parts[0].end());
    return {file_of({river}), file_of({walk})};
}

std::vector<std::string> tracks_of(const FirstTrip& trip) {
    std::vector<std::string> names;
    for (const FirstLeg& leg : trip.legs)
        names.push_back(leg.track);
    return names;
}

TEST(FirstTrip, TwoFilesInTheWrongOrderAreLaidInThatOfTheWay) {
    const FirstTrip trip = first_trip(river_first(false), nullptr);
    EXPECT_EQ(tracks_of(trip), (std::vector<std::string>{"approach", "long river"}));
    ASSERT_EQ(trip.remarks.size(), 1U);
    EXPECT_NE(trip.remarks[0].find("another order than the way"), std::string::npos);
    EXPECT_EQ(trip.places.front().along_m, 0.0);
    EXPECT_NEAR(trip.places.back().along_m, 24000.0, 1.0);
}

TEST(FirstTrip, ARiverDrawnUpwardsToAWalksEndIsTravelledDown) {
    const FirstTrip trip = first_trip(river_first(true), nullptr);
    EXPECT_EQ(tracks_of(trip), (std::vector<std::string>{"approach", "long river"}));
    ASSERT_EQ(trip.remarks.size(), 2U);
    EXPECT_NE(trip.remarks[0].find("Turned round"), std::string::npos) << trip.remarks[0];
    EXPECT_NE(trip.remarks[0].find("\"long river\""), std::string::npos) << trip.remarks[0];
}

TEST(FirstTrip, FilesWithoutNamesOfTracksAreNamedInTheOrderOfTheWay) {
    std::vector<geo::TrackFile> files = river_first(false);
    for (geo::TrackFile& file : files) {
        file.tracks[0].type = file.tracks[0].name == "approach" ? "walk" : "river";
        file.tracks[0].name.clear();
    }
    const FirstTrip trip = first_trip(files, nullptr);
    EXPECT_EQ(trip.files, (std::vector<std::size_t>{1, 0}));
    EXPECT_EQ(ways(trip), (W{on_foot, afloat}));
}

TEST(FirstTrip, ARiverDrawnUpwardsIsSaid) {
    geo::Track river = line_of({{0, 440}, {9000, 500}});
    river.name = "long river";
    const FirstTrip up = first_trip({file_of({river})}, nullptr);
    ASSERT_EQ(up.remarks.size(), 1U);
    EXPECT_NE(up.remarks[0].find("that is upstream"), std::string::npos) << up.remarks[0];
    for (geo::TrackPoint& point : river.parts[0])
        point.height_m.reset();
    const FirstTrip unknown = first_trip({file_of({river})}, nullptr);
    ASSERT_EQ(unknown.remarks.size(), 1U);
    EXPECT_NE(unknown.remarks[0].find("is not known: no heights"), std::string::npos);
}

TEST(FirstTrip, PutInsAndTakeOutsCutATrack) {
    const std::vector<std::pair<double, double>> ground = {{0, 300}, {3000, 350}, {9000, 320}};
    const FirstTrip trip = first_trip({file_of({line_of(ground)},
                                               {point_at("Alder landing", 3000, "put-in"),
                                                point_at("Take-out", 7000),
                                                point_at("Old oak", 8000)})},
                                      nullptr);
    ASSERT_EQ(ways(trip), (W{on_foot, afloat, on_foot}));
    EXPECT_EQ(trip.legs[1].from, "Alder landing");
    EXPECT_EQ(trip.legs[1].to, "Take-out");
    EXPECT_NEAR(trip.legs[1].length_m, 4000.0, 1.0);
    EXPECT_EQ(trip.legs[1].water, Water::river) << "it falls";
}

TEST(FirstTrip, PlacesAreSnappedInOrderAndKeepTheirDistance) {
    geo::Waypoint aside = point_at("Spring", 1500);
    aside.at = geo::destination(aside.at, 90.0, 80.0);
    const FirstTrip trip = first_trip(
        {file_of({line_of({{0, 300}, {3000, 350}})}, {point_at("Camp two", 2500), aside})},
        nullptr);
    ASSERT_EQ(trip.places.size(), 4U);
    EXPECT_EQ(trip.places[0].kind, PlaceKind::start);
    EXPECT_EQ(trip.places[1].name, "Spring");
    EXPECT_NEAR(trip.places[1].along_m, 1500.0, 0.5);
    EXPECT_NEAR(trip.places[1].off_m, 80.0, 0.5);
    EXPECT_EQ(trip.places[2].name, "Camp two");
    EXPECT_EQ(trip.places[3].kind, PlaceKind::finish);
}

TEST(FirstTrip, TracksWithoutNamesAreTakenInOrderAndNotCut) {
    geo::Track one = line_of(two_lakes);
    geo::Track two = line_of({{13000, 620}, {15000, 700}});
    one.name.clear();
    two.name.clear();
    const FirstTrip trip = first_trip({file_of({one, two})}, nullptr);
    ASSERT_EQ(trip.legs.size(), 2U);
    EXPECT_TRUE(trip.legs[0].track.empty() && trip.legs[0].from.empty());
    EXPECT_NE(trip.legs[0].why.find("seem to be water"), std::string::npos);
}

TEST(FirstTrip, TheZoneIsThatOfTheLongitude) {
    const auto zone = [](double lon_deg) {
        geo::Track track = line_of({{0, 300}, {100, 300}});
        track.parts[0][0].at.lon_deg = lon_deg;
        return first_trip({file_of({track})}, nullptr).time_zone;
    };
    EXPECT_EQ(zone(13.1), "Etc/GMT-1");
    EXPECT_EQ(zone(-45.2), "Etc/GMT+3");
    EXPECT_EQ(zone(0.4), "Etc/GMT");
    EXPECT_EQ(zone(179.0), "Etc/GMT-12");
}

TEST(FirstTrip, PointsAloneMakeNoTrip) {
    EXPECT_THROW(static_cast<void>(first_trip({file_of({}, {point_at("Camp", 0)})}, nullptr)),
                 geo::InputError);
}

} // namespace
} // namespace tumpline::planner
