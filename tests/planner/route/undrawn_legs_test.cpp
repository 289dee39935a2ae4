#include "planner/route/undrawn_legs.h"

#include "geo/input_error.h"
#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

Trip trip_of(const std::string& route, const std::string& more = "") {
    return read_trip_text(
        R"({"tumpline": 1, "start": "2027-06-18", "time_zone": "UTC", "route": )" + route +
            R"(, "party": [{"name": "Ada", "body": "68 kg",
                              "level_speed": "3.6 km/h"}],
                              "models": {"walking": "constant", "load_effect": "none"})" +
            more + "}",
        "trip.json");
}

/// What is wrong, "PLACE: FOUND".
std::vector<std::string> wrong_with(const std::string& route) {
    std::vector<std::string> all;
    try {
        static_cast<void>(build_route(trip_of(route)));
    } catch (const geo::InputError& error) {
        for (const geo::Problem& problem : error.problems())
            all.push_back(problem.place + ": " + problem.found);
    }
    return all;
}

const std::string sheet = R"({
    "legs": [
        {"name": "Up the valley", "length": "11 km", "ascent": "620 m", "descent": "80 m",
         "from": "Road end", "to": "Hut"},
        {"name": "Over the pass", "length": "9 km", "ascent": "400 m", "descent": "900 m",
         "from": "Hut", "to": "Bridge"}],
    "places": [
        {"name": "Road end", "kind": "start", "at": [13.1, 61.5]},
        {"name": "Hut", "kind": "camp"},
        {"name": "Spring", "kind": "water", "at": "km 12.5"},
        {"name": "Shelf", "kind": "camp", "at": "km 2 before the end of Over the pass"},
        {"name": "Bridge", "kind": "finish"}]})";

TEST(UndrawnLegs, ASheetFromAGuidebookPlans) {
    const Trip trip = trip_of(sheet, R"(, "days": {"nights": ["Hut", "Shelf"]})");
    const Route route = build_route(trip);
    EXPECT_DOUBLE_EQ(route.length_m, 20'000.0);
    ASSERT_EQ(route.passes("Hut").size(), 1U);
    EXPECT_DOUBLE_EQ(route.passes("Hut").front().along_m, 11'000.0);
    EXPECT_DOUBLE_EQ(route.passes("Spring").front().along_m, 12'500.0);
    EXPECT_DOUBLE_EQ(route.passes("Shelf").front().along_m, 18'000.0);
    EXPECT_DOUBLE_EQ(route.passes("Bridge").front().along_m, 20'000.0);
    EXPECT_TRUE(route.passes("Road end").front().located);
    EXPECT_FALSE(route.passes("Shelf").front().located);
    EXPECT_FALSE(route.located(5'000.0));
    const Plan plan = make_plan(trip, route);
    ASSERT_EQ(plan.days.size(), 3U);
    EXPECT_NEAR(plan.days[0].moving_s, 11'000.0, 1e-6); // 1 m/s
    EXPECT_NEAR(plan.days[1].moving_s, 7'000.0, 1e-6);
    EXPECT_NEAR(plan.totals.ascent_m, 1020.0, 1e-6);
    EXPECT_NEAR(plan.days[1].descent_m, 700.0, 1e-6); // 7 of 9 km of 900 m
    EXPECT_FALSE(plan.days[0].camp_located);
    EXPECT_EQ(std::count_if(plan.cautions.begin(),
                            plan.cautions.end(),
                            [](const Caution& one) { return one.code == "undrawn-leg"; }),
              2);
    EXPECT_TRUE(std::none_of(plan.cautions.begin(), plan.cautions.end(), [](const Caution& one) {
        return one.code == "no-elevation" || one.code == "route-gap";
    }));
}

TEST(UndrawnLegs, ClimbEvenlyAndAsSteepUpAsDown) {
    const Trip trip = trip_of(sheet);
    const Route route = build_route(trip);
    const Assumed assumed = assume(trip);
    const Stretches stretches = make_stretches(trip, route, assumed, 0.0);
    const Stretch& first = stretches.stretches.front(); // 11 km, 620 m up, 80 m down
    ASSERT_EQ(first.steps.size(), 2U);
    EXPECT_NEAR(first.steps[0].length_m, 11'000.0 * 620.0 / 700.0, 1e-6); // 9742.9 m up
    EXPECT_NEAR(first.steps[0].slope, 700.0 / 11'000.0, 1e-12);           // 6.4 %
    EXPECT_NEAR(first.steps[1].length_m, 11'000.0 * 80.0 / 700.0, 1e-6);
    EXPECT_NEAR(first.steps[1].slope, -700.0 / 11'000.0, 1e-12);
}

TEST(UndrawnLegs, NeedOnePositionForTheSun) {
    EXPECT_EQ(wrong_with(R"({"legs": [{"name": "A", "length": "3 km"}]})"),
              std::vector<std::string>{"/route/legs: no track and no place with a position"});
}

TEST(UndrawnLegs, PlacesStandOnTheRouteOrAreRefused) {
    const std::vector<std::string> wrong = wrong_with(
        R"({"legs": [{"name": "A", "length": "3 km", "from": "X"}], "places": [
            {"name": "X", "kind": "start", "at": [13.1, 61.5]},
            {"name": "Y", "kind": "camp", "at": "km 3.5"},
            {"name": "Z", "kind": "camp", "at": "km 3.1 before the end of A"}]})");
    EXPECT_EQ(wrong,
              (std::vector<std::string>{"/route/places/1/at: km 3.5",
                                        "/route/places/2/at: km 3.1 before the end of A"}));
}

TEST(UndrawnLegs, AreAsLongAsTheWayBetweenTheLinesAtLeast) {
    const test::TempFolder folder;
    // Two lines along a meridian with 0.02 degrees, 2.2 km, between them.
    const auto gpx = [](const std::string& name, const std::string& from, const std::string& to) {
        return "<trk><name>" + name + "</name><trkseg><trkpt lat=\"" + from +
               "\" lon=\"13\"/><trkpt lat=\"" + to + "\" lon=\"13\"/></trkseg></trk>";
    };
    const std::string file =
        folder
            .write("way.gpx",
                   "<gpx version=\"1.1\" creator=\"test\" "
                   "xmlns=\"http://www.topografix.com/GPX/1/1\">" +
                       gpx("a", "61.00", "61.01") + gpx("b", "61.03", "61.04") + "</gpx>")
            .string();
    const auto route = [&](const std::string& length) {
        return R"({"tracks": [")" + file +
               R"("], "legs": [{"name": "one"}, {"name": "gap", "length": ")" + length +
               R"("}, {"name": "two"}]})";
    };
    EXPECT_EQ(wrong_with(route("2.1 km")),
              std::vector<std::string>{
                  "/route/legs: 2.1 km of legs without a track between \"one\" and \"two\""});
    const Route built = build_route(trip_of(route("3 km")));
    ASSERT_EQ(built.legs.size(), 3U);
    EXPECT_NEAR(built.legs[2].from_m, built.legs[0].to_m + 3'000.0, 1e-6);
    EXPECT_NEAR(built.legs[2].line.points().front().lat_deg, 61.03, 1e-9); // the second track
    EXPECT_TRUE(built.located(built.legs[1].from_m));
    EXPECT_NEAR(built.at(built.legs[1].from_m).lat_deg, 61.01, 1e-9);
}

TEST(UndrawnLegs, SayHalfOfTheirClimbAreRefused) {
    const std::string where = R"("places": [{"name": "X", "kind": "start", "at": [13.1, 61.5]}]})";
    const auto first_wrong = [&](const std::string& leg) {
        try {
            static_cast<void>(trip_of(R"({"legs": [)" + leg + "], " + where));
        } catch (const geo::InputError& error) {
            return error.problems().front().place;
        }
        return std::string();
    };
    EXPECT_EQ(first_wrong(R"({"name": "A", "length": "3 km", "ascent": "90 m"})"),
              "/route/legs/0/ascent");
    EXPECT_EQ(first_wrong(R"({"name": "A", "length": "3 km", "track": "a"})"),
              "/route/legs/0/length");
    EXPECT_EQ(first_wrong(R"({"name": "A", "travel": "paddle", "length": "3 km",
                              "ascent": "9 m", "descent": "9 m"})"),
              "/route/legs/0/ascent");
    EXPECT_EQ(
        first_wrong(R"({"name": "A", "length": "3 km", "ascent": "4 km", "descent": "3 km"})"),
        "/route/legs/0/ascent");
    EXPECT_EQ(first_wrong(R"({"name": "A"})"), "/route");
}

TEST(UndrawnLegs, HaveTheWindFromAhead) {
    const std::string route = R"({"legs": [{"name": "A", "travel": "paddle", "length": "3 km",
        "from": "X"}], "places": [{"name": "X", "kind": "start", "at": [13.1, 61.5]}]})";
    const std::string boat =
        R"(, "craft": [{"name": "red boat", "mass": "3 kg", "crew": ["Ada"]}], "weather": {)";
    const auto head = [&](const std::string& wind) {
        const Trip trip = trip_of(route, boat + wind + "}");
        return make_plan(trip, build_route(trip)).legs.front().wind_head_mps;
    };
    // Nobody said which way the leg goes: a wind from anywhere counts in full.
    EXPECT_NEAR(head(R"("wind": "4 m/s", "wind_from": 90)"), 4.0, 1e-9);
    EXPECT_NEAR(head(R"("wind": "4 m/s", "wind_from": 250)"), 4.0, 1e-9);
}

} // namespace
} // namespace tumpline::planner
