/// Limits that contradict each other: the reasons named are the smallest, by trying every choice.
/// And contradictions that only the route shows.

#include "planner/make_plan.h"
#include "planner/plan.h"
#include "planner/route/route_build.h"
#include "planner/route/route_check.h"
#include "planner/solution/night_costs.h"
#include "planner/solution/nights.h"
#include "tests/support/level_trip.h"
#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <chrono>
#include <cstdint>
#include <fstream>
#include <set>
#include <string>

namespace tumpline::planner {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;

using Nights = std::vector<std::size_t>;

std::vector<Nights> every_choice(const NightStops& stops) {
    std::vector<Nights> all;
    const std::size_t between = stops.boundaries.size() - 2;
    for (std::uint64_t set = 0; set < (std::uint64_t{1} << between); ++set) {
        Nights nights;
        for (std::size_t k = 0; k < between; ++k)
            if ((set >> k & 1U) != 0)
                nights.push_back(stops.boundaries[k + 1]);
        all.push_back(std::move(nights));
    }
    return all;
}

/// A made-up trip with limits that often cannot be kept together.
test::RandomTrip limited_trip(std::uint64_t seed) {
    test::RandomTrip random = test::random_trip(seed);
    random.trip.days.nights.clear();
    random.trip.days.nights_auto = true;
    random.trip.days.hours_limit =
        random.trip.days.hours.value_or(8.0) * (seed % 2 == 0 ? 0.6 : 1.0);
    random.trip.days.hours = std::min(random.trip.days.hours.value_or(8.0), 4.0);
    if (seed % 3 == 0)
        random.trip.days.most_days = 2;
    if (seed % 4 != 0)
        random.trip.days.dusk_is_limit = true;
    for (std::size_t k = 0; k < random.trip.route.places.size(); ++k)
        if (random.trip.route.places[k].kind == PlaceKind::camp && (seed + k) % 3 == 0)
            random.trip.route.places[k].closed_weekdays = {1, 2, 3, 4, 5};
    return random;
}

TEST(Contradictions, NameTheFewestLimitsWithoutWhichThereAreNights) {
    int contradicted = 0, of_two = 0, several_sets = 0;
    for (std::uint64_t seed = 1; seed <= 130; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = limited_trip(seed);
        const Prepared prepared = prepare(random.trip, random.route);
        const NightStops stops = night_stops(prepared);
        if (stops.boundaries.size() > 7)
            continue;
        const NightsChosen chosen = choose_nights(prepared, 0);
        // What every choice of nights breaks at its own loads.
        std::set<NightLimits> broken;
        for (const Nights& nights : every_choice(stops))
            broken.insert(settled_at(prepared, nights).broken);
        const auto feasible_without = [&](NightLimits waived) {
            return std::any_of(broken.begin(), broken.end(), [&](NightLimits one) {
                return (one & ~waived) == 0;
            });
        };
        ASSERT_EQ(chosen.needs_without.empty(), feasible_without(0));
        if (chosen.needs_without.empty())
            continue;
        ++contradicted;
        for (const NightLimits set : chosen.needs_without) {
            EXPECT_TRUE(feasible_without(set)) << "limits " << set;
            of_two += std::popcount(set) == 2 ? 1 : 0;
            // Keeping any one of the named limits leaves none.
            for (unsigned one = 1; one <= set; one <<= 1U)
                if ((set & one) != 0) {
                    EXPECT_FALSE(feasible_without(set & ~one)) << "limits " << set;
                }
        }
        // Nor is there another set as small that is not named.
        const int size = std::popcount(chosen.needs_without.front());
        for (NightLimits other = 1; other < bit(NightLimit::most_days) << 1U; ++other)
            if (std::popcount(other) < size) {
                EXPECT_FALSE(feasible_without(other)) << "limits " << other;
            }
        several_sets += chosen.needs_without.size() > 1 ? 1 : 0;
    }
    EXPECT_GT(contradicted, 15);
    EXPECT_GT(of_two, 3);
    EXPECT_GT(several_sets, 3);
}

TEST(Contradictions, OfHoursAndDaysAreTold) {
    test::RandomTrip made = test::level_trip(
        {{.length_m = 60e3}}, {{"One", PlaceKind::camp, 20e3}, {"Two", PlaceKind::camp, 40e3}});
    made.trip.days.nights_auto = true;
    made.trip.days.hours = 6.0;
    made.trip.days.hours_limit = 6.0; // 20 km are 5 h 33 min
    made.trip.days.most_days = 2;
    const Plan plan = make_plan(made.trip, made.route);
    EXPECT_FALSE(plan.can_be_carried_out());
    const auto said = std::find_if(plan.cautions.begin(), plan.cautions.end(), [](const auto& one) {
        return one.code == "no-feasible-nights";
    });
    ASSERT_NE(said, plan.cautions.end());
    EXPECT_THAT(said->text, HasSubstr("the limit of 6 h 00 min of moving a day"));
    EXPECT_THAT(said->text, HasSubstr("or without the limit of 2 days"));
}

/// The problems of a two-day trip with `change` made to it.
template <class Change> std::vector<geo::Problem> problems_with(Change change) {
    test::RandomTrip made = test::level_trip({{.length_m = 40e3}},
                                             {{"Camp", PlaceKind::camp, 20e3},
                                              {"Hut", PlaceKind::camp, 22e3},
                                              {"Road", PlaceKind::finish, 40e3}});
    made.trip.days.nights = {"Camp"};
    made.trip.appointments = {
        {.what = "bus", .at = "Road", .day = 2, .by = 18h, .margin = 0s, .hard = false}};
    change(made);
    return problems_on_route(made.trip, made.route);
}

TEST(TripOnRoute, HasNothingAgainstAPlainTrip) {
    EXPECT_TRUE(problems_with([](test::RandomTrip&) {}).empty());
}

TEST(TripOnRoute, RefusesANightOffTheRoute) {
    const std::vector<geo::Problem> problems = problems_with([](test::RandomTrip& made) {
        made.trip.days.nights = {"Camp", "Hut"};
        made.route.places[1].off_m = 2400.0;
    });
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].place, "/days/nights/1");
    EXPECT_EQ(problems[0].found, "\"Hut\", 2.4 km off the route");
    EXPECT_EQ(problems[0].expected, "a place within 500 m of the route");
}

TEST(TripOnRoute, RefusesAnAppointmentOffTheRoute) {
    const std::vector<geo::Problem> problems =
        problems_with([](test::RandomTrip& made) { made.route.places[2].off_m = 900.0; });
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].place, "/appointments/0/at");
}

TEST(TripOnRoute, RefusesAnAppointmentBeforeTheStart) {
    const std::vector<geo::Problem> problems = problems_with([](test::RandomTrip& made) {
        made.trip.appointments[0].day = 1;
        made.trip.appointments[0].by = 5h + 30min;
    });
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].place, "/appointments/0/by");
    EXPECT_EQ(problems[0].found, "05:30 on day 1");
    EXPECT_EQ(problems[0].expected, "a time after setting off, 06:00 on day 1");
    EXPECT_TRUE(problems_with([](test::RandomTrip& made) {
                    made.trip.appointments[0].day = 1;
                    made.trip.appointments[0].by = 6h + 1min;
                }).empty());
}

TEST(TripOnRoute, AtOnePassNearEnoughIsEnough) {
    EXPECT_TRUE(problems_with([](test::RandomTrip& made) {
                    RoutePlace far = made.route.places[0];
                    far.off_m = 800.0;
                    made.route.places.insert(made.route.places.begin(), far);
                }).empty());
}

/// A trip along the equator with an appointment, read from a file of its own.
Route route_with_appointment(const std::string& at) {
    const test::TempFolder folder;
    std::ofstream(folder.path() / "way.gpx")
        << R"(<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="test">)"
           R"(<wpt lat="0.0005" lon="0.15"><name>Kiosk</name></wpt>)"
           R"(<trk><name>way</name><trkseg><trkpt lat="0" lon="0"/><trkpt lat="0" lon="0.1"/>)"
           R"(<trkpt lat="0" lon="0.2"/></trkseg></trk></gpx>)";
    Trip trip = test::level_trip({{.length_m = 20e3}}, {}).trip;
    trip.route.tracks = {folder.path() / "way.gpx"};
    trip.route.legs.clear();
    trip.appointments = {
        {.what = "boat", .at = at, .day = 1, .by = 18h, .margin = 0s, .hard = false}};
    return build_route(trip);
}

TEST(Appointments, MayBeAtAWaypointThatIsNoPlaceOfTheTrip) {
    const std::vector<RoutePlace> passes = route_with_appointment("Kiosk").passes("Kiosk");
    ASSERT_EQ(passes.size(), 1U);
    EXPECT_NEAR(passes[0].along_m, 0.15 * 111319.49, 1.0); // a degree of the equator of WGS84
    EXPECT_NEAR(passes[0].off_m, 0.0005 * 110574.3, 0.1);  // a degree of the meridian there
}

TEST(Appointments, AtAnUnknownPlaceAreRefused) {
    try {
        (void)route_with_appointment("Kisok");
        FAIL() << "nothing was thrown";
    } catch (const geo::InputError& error) {
        ASSERT_EQ(error.problems().size(), 1U);
        EXPECT_EQ(error.problems()[0].place, "/appointments/0/at");
        EXPECT_EQ(error.problems()[0].found, "\"Kisok\"");
    }
}

TEST(Leaves, AtAPlaceThatIsPassedOnceOrForTheLastTimeAreRefused) {
    test::RandomTrip made = test::level_trip({{.length_m = 10e3}}, {{"Col", PlaceKind::camp, 2e3}});
    Leave leave;
    leave.at = "Col";
    made.trip.leaves = {leave};
    std::vector<geo::Problem> problems = problems_on_route(made.trip, made.route);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].place, "/leave/0/at");
    EXPECT_EQ(problems[0].found, "\"Col\", which the route passes once only");
    RoutePlace again = made.route.places.front();
    again.along_m = 8e3;
    made.route.places.push_back(again);
    EXPECT_TRUE(problems_on_route(made.trip, made.route).empty());
    made.trip.leaves[0].pass = 2;
    problems = problems_on_route(made.trip, made.route);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].place, "/leave/0/pass");
    EXPECT_EQ(problems[0].found, "pass 2 of 2");
}

TEST(Nights, AreNotChosenAtCampsOffTheRoute) {
    test::RandomTrip made = test::level_trip(
        {{.length_m = 40e3}}, {{"Camp", PlaceKind::camp, 20e3}, {"Hut", PlaceKind::camp, 22e3}});
    made.trip.days.nights_auto = true;
    made.route.places[0].off_m = 700.0;
    const Prepared prepared = prepare(made.trip, made.route);
    const NightStops stops = night_stops(prepared);
    ASSERT_EQ(stops.boundaries.size(), 3U);
    EXPECT_NEAR(prepared.stretches.boundaries[stops.boundaries[1]].along_m, 22e3, 1.0);
}

} // namespace
} // namespace tumpline::planner
