#include "planner/recordings/plan_against_recording.h"

#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/recorded_walk.h"
#include "tests/support/source_tree.h"
#include "tests/support/temp_folder.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <filesystem>

namespace tumpline::planner {
namespace {

/// A recording of the plan's legs `first` to `last` (indices), each in `factor` times its planned
/// moving time, a fix every 10 s, an hour between legs.
geo::TrackFile
recorded(const Plan& plan, const Route& route, std::size_t first, std::size_t last, double factor) {
    geo::TrackFile file;
    double clock_s = 1.8e9;
    for (std::size_t i = first; i <= last; ++i) {
        const PlanLeg& leg = plan.legs[i];
        geo::Track track;
        track.type = leg.travel == Travel::paddle ? "paddle" : "walk";
        track.parts.emplace_back();
        const double lasts_s = factor * leg.moving_s;
        for (double at_s = 0.0; at_s <= lasts_s; at_s += 10.0)
            track.parts[0].push_back(
                {.at = route.at(std::lerp(leg.from_m, leg.to_m, at_s / lasts_s)),
                 .height_m = std::nullopt,
                 .time = geo::Instant(
                     std::chrono::milliseconds(std::llround((clock_s + at_s) * 1000.0)))});
        clock_s += lasts_s + 3600.0;
        file.tracks.push_back(std::move(track));
    }
    return file;
}

TEST(AgainstPlan, FindsHowMuchLongerEachLegTook) {
    const Trip trip = read_trip(test::root / "sample-routes" / "saddle" / "trip.json");
    const Route route = build_route(trip);
    const Plan plan = make_plan(trip, route);
    const geo::TrackFile file = recorded(plan, route, 0, plan.legs.size() - 1, 1.2);
    const Against against = against_plan(recorded_motion({file}, nullptr), plan, route);
    ASSERT_EQ(against.legs.size(), plan.legs.size());
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        const PlanLeg& leg = plan.legs[i];
        if (leg.travel == Travel::portage || leg.to_m - leg.from_m < 1500.0)
            continue; // a portage is walked several times; on short legs a minute counts
        EXPECT_NEAR(against.legs[i].ratio.value(), 1.2, 0.06) << leg.name;
        EXPECT_GT(against.legs[i].covered, 0.9) << leg.name;
    }
    EXPECT_NEAR(against.on_foot.value(), 1.2, 0.05);
    EXPECT_NEAR(against.afloat.value(), 1.2, 0.05);
    EXPECT_LT(against.off_route_s, 60.0);
}

TEST(AgainstPlan, LegsThatWereNotRecordedStayEmpty) {
    const Trip trip = read_trip(test::root / "sample-routes" / "saddle" / "trip.json");
    const Route route = build_route(trip);
    const Plan plan = make_plan(trip, route);
    const geo::TrackFile file = recorded(plan, route, 1, 2, 0.9);
    const Against against = against_plan(recorded_motion({file}, nullptr), plan, route);
    EXPECT_FALSE(against.legs.front().ratio);
    EXPECT_NEAR(against.legs[1].ratio.value(), 0.9, 0.04);
    EXPECT_FALSE(against.legs.back().ratio);
}

TEST(AgainstPlan, OutAndBackOnOneLineAreKeptApart) {
    const test::TempFolder folder;
    std::string gpx = "<gpx version=\"1.1\" creator=\"test\" "
                      "xmlns=\"http://www.topografix.com/GPX/1/1\">"
                      "<wpt lat=\"61\" lon=\"1\"><name>A</name></wpt>"
                      "<wpt lat=\"61.05\" lon=\"1\"><name>B</name></wpt>"
                      "<trk><name>line</name><trkseg>";
    for (int i = 0; i <= 50; ++i)
        gpx += fmt::format("<trkpt lat=\"{}\" lon=\"1\"/>", 61.0 + 0.001 * i);
    folder.write("line.gpx", gpx + "</trkseg></trk></gpx>");
    const Trip trip = read_trip_text(
        R"({"tumpline": 1, "route": {"tracks": ["line.gpx"], "legs": [
            {"name": "out", "track": "line", "from": "A", "to": "B"},
            {"name": "back", "track": "line", "from": "B", "to": "A"}]},
            "party": [{"name": "Ada", "body": "68 kg"}]})",
        folder.path() / "trip.json");
    const Route route = build_route(trip);
    const Plan plan = make_plan(trip, route);
    ASSERT_EQ(plan.legs.size(), 2U);
    const Against back =
        against_plan(recorded_motion({recorded(plan, route, 1, 1, 1.1)}, nullptr), plan, route);
    EXPECT_FALSE(back.legs[0].ratio) << "only the way back was recorded";
    EXPECT_NEAR(back.legs[1].ratio.value(), 1.1, 0.04);
    const Against both =
        against_plan(recorded_motion({recorded(plan, route, 0, 1, 1.1)}, nullptr), plan, route);
    EXPECT_NEAR(both.legs[0].ratio.value(), 1.1, 0.04);
    EXPECT_NEAR(both.legs[1].ratio.value(), 1.1, 0.04);
}

/// A trip of one leg over the line of a recording.
Trip trip_over(const test::TempFolder& folder, const geo::Track& track) {
    std::string gpx = "<gpx version=\"1.1\" creator=\"test\" "
                      "xmlns=\"http://www.topografix.com/GPX/1/1\">"
                      "<trk><name>line</name><trkseg>";
    for (const geo::TrackPoint& point : track.parts[0])
        gpx += fmt::format("<trkpt lat=\"{:.7f}\" lon=\"{:.7f}\"><ele>{:.1f}</ele></trkpt>",
                           point.at.lat_deg,
                           point.at.lon_deg,
                           point.height_m.value_or(0.0));
    folder.write("line.gpx", gpx + "</trkseg></trk></gpx>");
    return read_trip_text(
        R"({"tumpline": 1, "route": {"tracks": ["line.gpx"], "legs": [
            {"name": "out", "track": "line", "travel": "walk"}]},
            "party": [{"name": "Ada", "body": "68 kg"}]})",
        folder.path() / "trip.json");
}

TEST(AgainstPlan, ARecordingIsWhollyOnThePlanMadeFromItself) {
    // The raw line of a receiver is half as long again as the smoothed one, and a third of it lies
    // at the halt: the share that was recorded is all of it all the same.
    const geo::Track track = test::recorded(
        {.seconds = 7200.0, .noise_m = 0.7, .drift_m = 6.0, .halts = {{3000.0, 1200.0}}},
        test::level,
        test::steadily(1.2));
    const test::TempFolder folder;
    const Trip trip = trip_over(folder, track);
    const Route route = build_route(trip);
    EXPECT_GT(route.length_m, 1.4 * 7200.0) << "6000 s at 1.2 m/s";
    const Plan plan = make_plan(trip, route);
    geo::TrackFile file;
    file.tracks = {track};
    const Against against = against_plan(recorded_motion({file}, nullptr), plan, route);
    EXPECT_GT(against.legs[0].covered, 0.97);
    EXPECT_NEAR(against.on_foot.value() * plan.legs[0].moving_s, 6000.0, 200.0);
}

TEST(AgainstPlan, WhoGoesTheOtherWayIsLeftOutAndSaid) {
    geo::Track track =
        test::recorded({.every_s = 5.0, .noise_m = 1.0}, test::level, test::steadily(1.2));
    const test::TempFolder folder;
    const Trip trip = trip_over(folder, track);
    const Route route = build_route(trip);
    const Plan plan = make_plan(trip, route);
    auto& points = track.parts[0];
    for (std::size_t i = 0; i < points.size() / 2; ++i)
        std::swap(points[i].at, points[points.size() - 1 - i].at);
    geo::TrackFile file;
    file.tracks = {track};
    const Against against = against_plan(recorded_motion({file}, nullptr), plan, route);
    EXPECT_FALSE(against.on_foot);
    EXPECT_NEAR(against.other_way_s, 3600.0, 150.0);
}

TEST(AgainstPlan, WhatLiesElsewhereIsOffTheRoute) {
    const Trip trip = read_trip(test::root / "sample-routes" / "saddle" / "trip.json");
    const Route route = build_route(trip);
    const Plan plan = make_plan(trip, route);
    geo::TrackFile file = recorded(plan, route, 0, 0, 1.0);
    for (geo::TrackPoint& point : file.tracks[0].parts[0])
        point.at.lat_deg += 1.0;
    const Against against = against_plan(recorded_motion({file}, nullptr), plan, route);
    EXPECT_FALSE(against.on_foot);
    EXPECT_NEAR(against.off_route_s, plan.legs[0].moving_s, 120.0);
}

/// Half a leg, and its second quarter once more: half of it is covered.
TEST(AgainstPlan, WhatIsTravelledTwiceIsCoveredOnce) {
    const Trip trip = read_trip(test::root / "sample-routes" / "saddle" / "trip.json");
    const Route route = build_route(trip);
    const Plan plan = make_plan(trip, route);
    const PlanLeg& leg = plan.legs[0];
    ASSERT_EQ(leg.travel, Travel::walk);
    geo::TrackFile file;
    double clock_s = 1.8e9;
    for (const double from : {0.0, 0.25}) {
        geo::Track track;
        track.type = "walk";
        track.parts.emplace_back();
        const double lasts_s = (0.5 - from) * leg.moving_s;
        for (double at_s = 0.0; at_s <= lasts_s; at_s += 10.0)
            track.parts[0].push_back(
                {.at = route.at(
                     std::lerp(leg.from_m, leg.to_m, from + (0.5 - from) * at_s / lasts_s)),
                 .height_m = std::nullopt,
                 .time = geo::Instant(
                     std::chrono::milliseconds(std::llround((clock_s + at_s) * 1000.0)))});
        clock_s += lasts_s + 3600.0;
        file.tracks.push_back(std::move(track));
    }
    const Against against = against_plan(recorded_motion({file}, nullptr), plan, route);
    EXPECT_NEAR(against.legs[0].covered, 0.5, 0.05);
}

} // namespace
} // namespace tumpline::planner
