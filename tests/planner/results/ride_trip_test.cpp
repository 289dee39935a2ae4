/// Whole trips with rides in them, their times worked out by hand.

#include "geo/input_error.h"
#include "geo/light/time_zone.h"
#include "planner/defaults/defaults.h"
#include "planner/make_plan.h"
#include "planner/models/compendium.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// One who walks 1 m/s with whatever load, sets off at 08:00 and never rests.
Trip ride_trip(const std::string& legs, const std::string& more = "") {
    return read_trip_text(
        R"({"tumpline": 1, "start": "2027-06-18", "time_zone": "UTC", "route": {"legs": [)" + legs +
            R"(], "places": [
                {"name": "Station", "kind": "start", "at": [13.1, 61.5]},
                {"name": "Trailhead", "kind": "put-in", "at": [13.1, 61.6]},
                {"name": "Lodge", "kind": "camp"},)" +
            (legs.find("Far lodge") != std::string::npos
                 ? R"({"name": "Far lodge", "kind": "camp"},)"
                 : "") +
            R"(
                {"name": "Town", "kind": "finish", "at": [13.3, 61.8]}]},
               "party": [{"name": "Ada", "body": "68 kg", "level_speed": "3.6 km/h"}],
               "models": {"walking": "constant", "load_effect": "none"})" +
            (more.empty() ? R"(, "days": {"set_off": "08:00", "rest_per_hour": "0 min"})" : more) +
            "}",
        "trip.json");
}

Plan planned(const Trip& trip) {
    return make_plan(trip, build_route(trip));
}

const std::string to_trailhead =
    R"({"name": "Bus", "travel": "ride", "lasts": "50 min", "from": "Station", "to": "Trailhead"})";
const std::string in =
    R"({"name": "In", "length": "10 km", "ascent": "0 m", "descent": "0 m", "to": "Lodge"})";
const std::string over =
    R"({"name": "Truck", "travel": "ride", "lasts": "40 min", "length": "30 km", "from": "Lodge",
        "to": "Far lodge"})";
const std::string out =
    R"({"name": "Out", "length": "5 km", "ascent": "0 m", "descent": "0 m", "from": "Far lodge"})";
const std::string to_town =
    R"({"name": "Ferry", "travel": "ride", "lasts": "20 min", "to": "Town"})";
const std::string five = to_trailhead + "," + in + "," + over + "," + out + "," + to_town;

std::string clock_of(sys_seconds at) {
    return geo::rfc3339(at, "UTC").substr(11, 8);
}

TEST(RideTrip, AtTheStartInTheMiddleAndAtTheEndTakesTheTimeGiven) {
    const Plan plan = planned(ride_trip(five));
    ASSERT_EQ(plan.legs.size(), 5U);
    std::vector<std::string> ends;
    for (const PlanLeg& leg : plan.legs)
        ends.push_back(clock_of(leg.end));
    // 50 min; 10 000 s = 2 h 46 min 40 s; 40 min; 5 000 s = 1 h 23 min 20 s; 20 min
    EXPECT_THAT(ends, ElementsAre("08:50:00", "11:36:40", "12:16:40", "13:40:00", "14:00:00"));
    EXPECT_EQ(clock_of(plan.days.at(0).arrive), "14:00:00");
    EXPECT_EQ(clock_of(plan.days.at(0).arrive_early).substr(0, 2), "13"); // the walks alone vary
    EXPECT_DOUBLE_EQ(plan.legs[2].moving_low_s, 2'400.0);
    EXPECT_DOUBLE_EQ(plan.legs[2].moving_high_s, 2'400.0);
}

TEST(RideTrip, CountsItsDistanceApartFromWalks) {
    const Plan plan = planned(ride_trip(five));
    EXPECT_NEAR(plan.totals.ride_m, 30'000.0, 1e-6);
    EXPECT_NEAR(plan.totals.walk_m, 15'000.0, 1e-6);
    EXPECT_NEAR(plan.totals.on_foot_m, 15'000.0, 1e-6);
    EXPECT_NEAR(plan.totals.distance_m, 45'000.0, 0.01);
    EXPECT_NEAR(plan.totals.moving_s, 15'000.0 + 6'600.0, 1e-6); // 50 + 40 + 20 min
    EXPECT_NEAR(plan.days.at(0).ride_m, 30'000.0, 1e-6);
    EXPECT_NEAR(plan.days.at(0).ride_s, 6'600.0, 1e-6);
    EXPECT_DOUBLE_EQ(plan.legs[0].length_m(), 0.0);
    EXPECT_FALSE(plan.legs[0].speed_mps);                    // no length is known
    EXPECT_NEAR(plan.legs[2].speed_mps.value(), 12.5, 1e-9); // 30 km in 40 min
    EXPECT_DOUBLE_EQ(plan.legs[2].on_foot_m, 0.0);
    EXPECT_TRUE(plan.totals.heights_known);
}

TEST(RideTrip, RestsTheBody) {
    const std::string day = R"(, "days": {"set_off": "08:00", "rest_per_hour": "0 min"})";
    const auto with = [&](const std::string& lasts) {
        return planned(ride_trip(in + R"(, {"name": "Bus", "travel": "ride", "lasts": ")" + lasts +
                                     "\"}",
                                 day))
            .days.at(0)
            .members.at(0)
            .energy_j;
    };
    const double body_kg = assume(ride_trip(five)).members.at(0).met_body_kg;
    // An hour more seated in place of an hour on one's feet about the place; but for the water of
    // that hour, borne on the walk before.
    EXPECT_NEAR(with("2 h") - with("1 h"),
                met_energy_j({.met = met_sitting, .body_kg = body_kg, .duration_s = 3600.0}) -
                    met_energy_j({.met = met_standing, .body_kg = body_kg, .duration_s = 3600.0}),
                500.0);
}

TEST(RideTrip, NobodyBearsAPackOnIt) {
    Trip trip = ride_trip(to_trailhead + "," + in);
    KitItem sack;
    sack.name = "sack";
    sack.mass_kg = 40.0;
    sack.owner = "Ada";
    trip.kit.push_back(sack);
    trip.party[0].carry_limit_kg = 20.0;
    const Plan plan = planned(trip);
    EXPECT_FALSE(has_limit(plan.legs.at(0), plan.legs.at(0).loads.at(0)));
    EXPECT_TRUE(over_limit(plan.legs.at(1), plan.legs.at(1).loads.at(0)));
    EXPECT_EQ(plan.days.at(0).members.at(0).heaviest_leg, PlanLegNumber{2});
    for (const Caution& caution : plan.cautions)
        EXPECT_NE(caution.leg, LegNumber{1}) << caution.text;
}

TEST(RideTrip, ANightCutsNoneAndItsTimeIsNoneOfTheHours) {
    // Three hours on foot a day: 10 km and the ride, and 800 m more; the last boundary in reach is
    // where the ride ends.
    const Plan plan = planned(
        ride_trip(in + "," + over + "," + out,
                  R"(, "days": {"set_off": "08:00", "rest_per_hour": "0 min", "hours": 3})"));
    ASSERT_EQ(plan.days.size(), 2U);
    EXPECT_NEAR(plan.days[0].to_m, 40'000.0, 0.01);
    EXPECT_EQ(plan.days[0].to, "Far lodge");
    EXPECT_TRUE(std::none_of(plan.cautions.begin(), plan.cautions.end(), [](const Caution& one) {
        return one.code == "longer-than-asked";
    }));
}

TEST(RideTrip, ANightStandsBeforeOrBehindOneWithoutALength) {
    const std::string shuttle =
        R"({"name": "Shuttle", "travel": "ride", "lasts": "1 h", "from": "Lodge",
            "to": "Far lodge"})";
    const std::string three = in + "," + shuttle + "," + out;
    const auto last_of_day_1 = [&](const std::string& night) {
        const Plan plan = planned(
            ride_trip(three,
                      R"(, "days": {"set_off": "08:00", "rest_per_hour": "0 min", "nights": [")" +
                          night + "\"]}"));
        const auto last = std::find_if(
            plan.legs.rbegin(), plan.legs.rend(), [](const auto& leg) { return leg.day == 1; });
        return last->name + " until " + clock_of(last->end);
    };
    EXPECT_EQ(last_of_day_1("Lodge"), "In until 10:46:40");
    EXPECT_EQ(last_of_day_1("Far lodge"), "Shuttle until 11:46:40");
}

TEST(RideTrip, EndsAreWaysOutAndNobodyTurnsRoundOnIt) {
    const Plan plan = planned(ride_trip(in + "," + over + "," + out));
    for (const ExitPoint& point : plan.exits)
        EXPECT_FALSE(point.along_m > 10'000.0 && point.along_m < 40'000.0) << point.along_m;
    const auto at_42 = std::find_if(plan.exits.begin(), plan.exits.end(), [](const auto& point) {
        return point.along_m == 42'000.0;
    });
    ASSERT_NE(at_42, plan.exits.end());
    EXPECT_EQ(at_42->back, "the end of Truck");
    EXPECT_NEAR(at_42->back_s.value(), 2'000.0, 1e-6); // 2 km at 1 m/s
    EXPECT_NEAR(at_42->forward_s.value(), 3'000.0, 1e-6);
    std::vector<double> no_return_m;
    for (const ExitPoint& point : plan.exits)
        if (point.no_return)
            no_return_m.push_back(point.along_m);
    // The first kilometre past the middle of 0 to 10 km, and of 40 to 45 km.
    EXPECT_THAT(no_return_m, ElementsAre(6'000.0, 43'000.0));
    ASSERT_EQ(plan.turn_rounds.size(), 2U);
    EXPECT_EQ(plan.turn_rounds[0].back_to_m, 0.0);
    EXPECT_NEAR(plan.turn_rounds[0].along_m, 10'000.0, 1e-6); // where the ride begins
    EXPECT_FALSE(plan.turn_rounds[0].whole_day);
    EXPECT_EQ(plan.turn_rounds[1].back_to, "Far lodge");
    EXPECT_TRUE(plan.turn_rounds[1].whole_day);
}

TEST(RideTrip, AnAppointmentBehindItMeetsItsTime) {
    const Plan plan = planned(
        ride_trip(in + "," + to_town,
                  R"(, "days": {"set_off": "08:00", "rest_per_hour": "0 min"}, "appointments": [
            {"what": "train", "at": "Town", "day": 1, "by": "12:00", "margin": "0 min"}])"));
    ASSERT_EQ(plan.appointments.size(), 1U);
    // 08:00 + 2 h 46 min 40 s + 20 min
    EXPECT_EQ(clock_of(plan.appointments[0].arrive), "11:06:40");
    EXPECT_DOUBLE_EQ(plan.appointments[0].spare_s, 3'200.0);
    EXPECT_EQ(clock_of(plan.appointments[0].leave_by.at(0).at), "08:53:20");
}

TEST(RideTrip, NeitherRestsNorTheHeatOfMiddayFallOnIt) {
    // Moving from 08:00: 3600 s, a rest of 10 min, and so on; the ride from 10:56:40 until 15:56:40
    // brings no rest and waits for no halt.
    const Plan plan =
        planned(ride_trip(in + R"(, {"name": "Bus", "travel": "ride", "lasts": "5 h"})",
                          R"(, "days": {"set_off": "08:00", "rest_per_hour": "10 min",
                      "halt": {"from": "12:00", "to": "14:00"}})"));
    EXPECT_EQ(clock_of(plan.legs.at(0).end), "11:06:40"); // two rests on 2 h 46 min 40 s
    EXPECT_EQ(clock_of(plan.legs.at(1).end), "16:06:40");
    EXPECT_DOUBLE_EQ(plan.legs.at(1).rest_s, 0.0);
}

TEST(RideTrip, ABoatIsStowedBeforeAndRiggedBehindOne) {
    Trip trip = ride_trip(
        R"({"name": "Down", "travel": "paddle", "water": "river", "current": "3.6 km/h",
            "length": "5 km", "to": "Lodge"},)" +
            to_trailhead +
            R"(, {"name": "Again", "travel": "paddle", "water": "river", "current": "3.6 km/h",
                  "length": "5 km"})",
        R"(, "days": {"set_off": "08:00", "rest_per_hour": "0 min"},
           "craft": [{"name": "red boat", "kind": "packraft", "mass": "3 kg", "crew": ["Ada"]}],
           "changeovers": {"boots_to_boat": "30 min", "boat_to_boots": "45 min",
                           "landing": "7 min"})");
    const Plan plan = planned(trip);
    EXPECT_DOUBLE_EQ(plan.legs.at(0).changeover_s, 4'500.0); // rigged, and rolled up for the bus
    EXPECT_DOUBLE_EQ(plan.legs.at(1).changeover_s, 0.0);
    EXPECT_DOUBLE_EQ(plan.legs.at(2).changeover_s, 4'500.0);
    EXPECT_THAT(plan.legs.at(1).craft, IsEmpty());
}

TEST(RideTrip, NoPlaceStandsOnItsWay) {
    try {
        Trip trip = ride_trip(in + "," + over);
        trip.route.places[2].along =
            RouteDistance{.distance_m = 25'000.0, .leg = {}, .before_end = false};
        static_cast<void>(build_route(trip));
        FAIL();
    } catch (const geo::InputError& error) {
        EXPECT_EQ(error.problems().at(0).place, "/route/places/2/at");
        EXPECT_EQ(error.problems().at(0).found, "km 25.0, a point of the ride \"Truck\"");
    }
}

} // namespace
} // namespace tumpline::planner
