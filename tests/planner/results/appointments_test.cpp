/// Latest departures, by hand, by planning again, and by going forward day after day.

#include "planner/conditions/calendar.h"
#include "planner/journey/schedule.h"
#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>

namespace tumpline::planner {
namespace {

using test::in_seconds;

using namespace std::chrono_literals;
using std::chrono::sys_days;

/// Three days of 20 km, 5 h 33 min 20 s each, and a bus at the end.
test::RandomTrip three_days() {
    test::RandomTrip made =
        test::level_trip({{.length_m = 20e3}, {.length_m = 20e3}, {.length_m = 20e3}},
                         {{"Start", PlaceKind::start, 0.0},
                          {"First camp", PlaceKind::camp, 20e3},
                          {"Second camp", PlaceKind::camp, 40e3},
                          {"Road", PlaceKind::finish, 60e3}});
    made.trip.days.nights = {"First camp", "Second camp"};
    made.trip.appointments = {
        {.what = "bus", .at = "Road", .day = 3, .by = 18h, .margin = 30min, .hard = false}};
    return made;
}

constexpr auto way = 20000s; // 20 km at 1 m/s

sys_seconds dusk_on(const Plan& plan, std::size_t day) {
    return plan.days[day].light.twilight.set.value();
}

TEST(Appointments, LeaveByAsWorkedOutByHand) {
    const test::RandomTrip made = three_days();
    const Plan plan = make_plan(made.trip, made.route);
    ASSERT_EQ(plan.appointments.size(), 1U);
    const std::vector<LeaveBy>& leave = plan.appointments[0].leave_by;
    ASSERT_EQ(leave.size(), 3U);
    const sys_days third{std::chrono::year{2027} / 6 / 9};
    // On its own day 17:30 less the way; the days before end at dusk, which falls earlier than
    // eleven hours before the next departure.
    EXPECT_NEAR(in_seconds(leave[2].at - (third + 17h + 30min - way)), 0.0, 1.0);
    EXPECT_EQ(leave[2].bound, LeaveBound::appointment);
    EXPECT_EQ(leave[2].bound_at, "Road");
    EXPECT_NEAR(in_seconds(leave[1].at - (dusk_on(plan, 1) - way)), 0.0, 1.0);
    EXPECT_EQ(leave[1].bound, LeaveBound::dusk);
    EXPECT_EQ(leave[1].bound_at, "Second camp");
    EXPECT_NEAR(in_seconds(leave[0].at - (dusk_on(plan, 0) - way)), 0.0, 1.0);
    EXPECT_EQ(leave[0].place, "Start");
    for (const LeaveBy& one : leave) {
        EXPECT_TRUE(one.night);
        EXPECT_EQ(one.days_later, 0);
        EXPECT_EQ(one.spare_s, in_seconds(one.at - one.planned));
    }
}

TEST(Appointments, ANightTakesElevenHoursBeforeAnEarlyDeparture) {
    test::RandomTrip made = three_days();
    made.trip.appointments[0].by = 12h; // leave Second camp by 05:56:40
    made.trip.appointments[0].margin = 30min;
    made.trip.days.set_off = 5h;
    const Plan plan = make_plan(made.trip, made.route);
    const std::vector<LeaveBy>& leave = plan.appointments[0].leave_by;
    ASSERT_EQ(leave.size(), 3U);
    EXPECT_NEAR(in_seconds(leave[1].at - (leave[2].at - 11h - way)), 0.0, 2.0);
    EXPECT_EQ(leave[1].bound, LeaveBound::night);
    EXPECT_EQ(leave[0].bound, LeaveBound::dusk);
}

TEST(Appointments, PlannedAgainWithThatDepartureAreJustMet) {
    test::RandomTrip made = three_days();
    const Plan plan = make_plan(made.trip, made.route);
    const LeaveBy& last = plan.appointments[0].leave_by.back();
    const std::chrono::seconds at =
        last.at.time_since_epoch() - sys_days{plan.days[2].date}.time_since_epoch();
    made.trip.days.set_off = at;
    made.trip.days.first_set_off = 6h;
    EXPECT_NEAR(make_plan(made.trip, made.route).appointments[0].spare_s, 0.0, 1.0);
    made.trip.days.set_off = at + 1min;
    EXPECT_LT(make_plan(made.trip, made.route).appointments[0].spare_s, 0.0);
}

bool after_dusk(const Plan& plan, int day) {
    return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&](const Caution& caution) {
        return caution.code == "after-dusk" && caution.day == day;
    });
}

TEST(Appointments, PlannedAgainWithThatFirstDepartureReachTheCampJustByDusk) {
    test::RandomTrip made = three_days();
    const LeaveBy first = make_plan(made.trip, made.route).appointments[0].leave_by.front();
    const auto midnight = sys_days{made.trip.start};
    made.trip.days.first_set_off = std::chrono::seconds{first.at - midnight};
    EXPECT_FALSE(after_dusk(make_plan(made.trip, made.route), 1));
    made.trip.days.first_set_off = std::chrono::seconds{first.at - midnight} + 1min;
    EXPECT_TRUE(after_dusk(make_plan(made.trip, made.route), 1));
}

TEST(Appointments, DaysOfRestAreGivenUpForThem) {
    test::RandomTrip made = three_days();
    const Plan without = make_plan(made.trip, made.route);
    made.trip.days.rest_days_after = {1};
    made.trip.appointments[0].day = 4;
    const Plan plan = make_plan(made.trip, made.route);
    const std::vector<LeaveBy>& leave = plan.appointments[0].leave_by;
    ASSERT_EQ(leave.size(), 3U);
    EXPECT_EQ(leave[0].days_later, 1); // the rest day after day 1 is walked
    EXPECT_EQ(leave[1].days_later, 0);
    EXPECT_EQ(leave[1].day, 3);
    // A day later than without the rest day, but for the dusk of another date.
    const std::vector<LeaveBy>& then = without.appointments[0].leave_by;
    for (std::size_t k = 0; k < 3; ++k)
        EXPECT_NEAR(in_seconds(leave[k].at - then[k].at), 86400.0, 120.0);
}

TEST(Appointments, OnTheMorningAfterArrivalAreReachedTheEveningBefore) {
    test::RandomTrip made = three_days();
    made.trip.appointments = {
        {.what = "boat", .at = "Second camp", .day = 3, .by = 7h, .margin = 0s, .hard = false}};
    const Plan plan = make_plan(made.trip, made.route);
    const std::vector<LeaveBy>& leave = plan.appointments[0].leave_by;
    ASSERT_EQ(leave.size(), 2U);
    EXPECT_NEAR(in_seconds(leave[1].at - (dusk_on(plan, 1) - way)), 0.0, 1.0);
    EXPECT_EQ(leave[1].bound, LeaveBound::dusk);
    EXPECT_EQ(leave[1].bound_at, "Second camp");
}

TEST(Appointments, InTheAfternoonAfterArrivalMayBeReachedOnThatDay) {
    test::RandomTrip made = three_days();
    made.trip.appointments = {
        {.what = "boat", .at = "Second camp", .day = 3, .by = 14h, .margin = 0s, .hard = false}};
    const Plan plan = make_plan(made.trip, made.route);
    const LeaveBy& leave = plan.appointments[0].leave_by.back();
    EXPECT_EQ(leave.bound, LeaveBound::appointment);
    EXPECT_EQ(leave.days_later, 1); // a day in hand
}

TEST(Appointments, WithoutDuskTheDayEndsAtMidnight) {
    test::RandomTrip made = three_days();
    for (RouteLeg& leg : made.route.legs) { // the same way at 70 N, where June has no night
        std::vector<geo::Position> points = leg.line.points();
        for (geo::Position& point : points)
            point.lat_deg = 70.0;
        leg.line = geo::Polyline(std::move(points));
    }
    const Plan plan = make_plan(made.trip, made.route);
    const std::vector<LeaveBy>& leave = plan.appointments[0].leave_by;
    EXPECT_EQ(leave[0].bound, LeaveBound::midnight);
    EXPECT_NEAR(in_seconds(leave[0].at - (sys_days{plan.days[1].date} - way)), 0.0, 1.0);
}

TEST(Appointments, LandingsAreListedAndHazardsAfloatAreNot) {
    test::RandomTrip made =
        test::level_trip({{.length_m = 5e3},
                          {.travel = Travel::paddle, .length_m = 8e3, .current_mps = 1.0},
                          {.length_m = 3e3}},
                         {{"Ledge", PlaceKind::hazard, 8e3},
                          {"Spit", PlaceKind::camp, 9e3},
                          {"Road", PlaceKind::finish, 16e3}});
    made.trip.appointments = {
        {.what = "bus", .at = "Road", .day = 1, .by = 18h, .margin = 0s, .hard = false}};
    made.trip.days.nights = {};
    made.trip.days.nights_auto = true;
    const Plan plan = make_plan(made.trip, made.route);
    std::vector<std::string> places;
    for (const LeaveBy& leave : plan.appointments[0].leave_by)
        places.push_back(leave.place);
    const std::vector<std::string> wanted{"start of leg 1", "end of leg 1", "Spit", "end of leg 2"};
    EXPECT_EQ(places, wanted);
}

/// An hour on foot and 4320 m of lake at 1.2 m/s, another hour; a bus at 20:00.
test::RandomTrip over_a_lake() {
    test::RandomTrip made =
        test::level_trip({{.length_m = 3600.0}, {.travel = Travel::paddle, .length_m = 4320.0}},
                         {{"Start", PlaceKind::start, 0.0}, {"Road", PlaceKind::finish, 7920.0}});
    made.trip.appointments = {
        {.what = "bus", .at = "Road", .day = 1, .by = 20h, .margin = 0min, .hard = false}};
    return made;
}

/// Calm, and so much wind from 13:00 to 22:00.
void blow(test::RandomTrip& made, double afternoon_mps) {
    WeatherEntry all;
    all.says.wind_mps = 0.0;
    WeatherEntry afternoon;
    afternoon.hours = HoursOfDay{13.0 * 3600.0, 22.0 * 3600.0};
    afternoon.says.wind_mps = afternoon_mps;
    afternoon.says.wind_from_deg = 90.0; // ahead: the lake leads to the east
    made.trip.forecast = {all, afternoon};
    made.trip.weather.wind_mps = afternoon_mps;
    made.trip.weather.wind_from_deg = 90.0;
}

TEST(Appointments, AreLeftForBeforeTheWindRises) {
    test::RandomTrip made = over_a_lake();
    const sys_days day{std::chrono::year{2027} / 6 / 7};
    const Plan calm = make_plan(made.trip, made.route);
    // 20:00 less an hour on foot and an hour afloat.
    EXPECT_NEAR(in_seconds(calm.appointments[0].leave_by[0].at - (day + 18h)), 0.0, 2.0);
    EXPECT_FALSE(calm.appointments[0].leave_by[0].wind_rises);
    blow(made, 12.0);
    const LeaveBy leave = make_plan(made.trip, made.route).appointments[0].leave_by[0];
    // Off the lake by 13:00: the same two hours before.
    EXPECT_NEAR(in_seconds(leave.at - (day + 11h)), 0.0, 2.0);
    EXPECT_EQ(leave.bound, LeaveBound::wind);
    EXPECT_EQ(leave.bound_at, "leg 2");
    EXPECT_EQ(leave.wind_rises, day + 13h);
    EXPECT_NEAR(leave.spare_s, 5.0 * 3600.0, 2.0); // planned at 06:00
}

TEST(Appointments, AreLeftForInTheWindOfTheLaterHours) {
    test::RandomTrip made = over_a_lake();
    made.trip.models.paddling = "power-balance";
    blow(made, 3.0); // no ceiling is passed, but the boat is slower
    const Plan plan = make_plan(made.trip, made.route);
    const LeaveBy leave = plan.appointments[0].leave_by[0];
    EXPECT_EQ(leave.bound, LeaveBound::appointment);
    const double calm_s = in_seconds(plan.days[0].arrive - plan.days[0].set_off);
    const sys_days day{std::chrono::year{2027} / 6 / 7};
    EXPECT_LT(leave.at, day + 20h - std::chrono::seconds{std::llround(calm_s) + 60})
        << "the plan's own time, of the calm morning, is too short";
    // Planned again with that departure the bus is just met.
    made.trip.days.set_off = leave.at - sys_seconds{day};
    EXPECT_NEAR(make_plan(made.trip, made.route).appointments[0].spare_s, 0.0, 3.0);
}

/// Goes forward from a departure as late as asked: each day's way as the plan has it, each evening
/// before dusk or midnight, each night as long as it must be, days of rest left out.
class Forward {
  public:
    Forward(const Plan& plan, const PlanAppointment& meet) : plan_(plan), meet_(meet) {}

    [[nodiscard]] bool meets(const LeaveBy& from, sys_seconds leave) const {
        const PlanDay* day = &plan_.days[static_cast<std::size_t>(from.day) - 1];
        sys_seconds planned = from.planned;
        for (;;) {
            const bool last = day->arrive >= meet_.arrive;
            const sys_seconds end = last ? meet_.arrive : day->arrive;
            const sys_seconds arrive = leave + (end - planned);
            if (last)
                return arrive <= meet_.by - std::chrono::seconds{std::llround(meet_.margin_s)};
            const Date date = local_date(leave);
            if (arrive > evening(date, day->camp))
                return false;
            const PlanDay* next = day + 1;
            while (next->rest_day)
                ++next;
            const auto night = std::min<std::chrono::seconds>(11h, next->set_off - day->arrive);
            const sys_seconds usual = next->set_off + (std::chrono::local_days{date} + 24h -
                                                       std::chrono::local_days{next->date});
            leave = std::max(arrive + night, usual);
            planned = next->set_off;
            day = next;
        }
    }

  private:
    [[nodiscard]] Date local_date(sys_seconds at) const {
        return Date{std::chrono::floor<std::chrono::days>(geo::to_local(at, plan_.trip.time_zone))};
    }

    [[nodiscard]] sys_seconds evening(Date date, const geo::Position& at) const {
        const auto midnight =
            geo::to_instant(std::chrono::local_days{date} + 24h, plan_.trip.time_zone);
        return std::min(
            midnight,
            evening_dusk(geo::daylight(date, at, plan_.trip.time_zone)).value_or(midnight));
    }

    const Plan& plan_;
    const PlanAppointment& meet_;
};

TEST(Appointments, OfRandomTripsAreMetGoingForwardAndMissedAMinuteLater) {
    int nights = 0, landings = 0, earlier_days = 0, given_up = 0;
    for (std::uint64_t seed = 1; seed <= 400; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        test::RandomTrip random = test::random_trip(seed);
        if (random.trip.days.nights.empty() || random.trip.time_zone.empty() ||
            random.route.places.empty())
            continue;
        // An evening appointment at the end, so that most are met.
        random.trip.days.first_set_off.reset();
        random.trip.days.set_off = 7h;
        random.trip.appointments = {
            {.what = "bus",
             .at = random.route.places.back().name,
             .day = static_cast<int>(random.trip.days.nights.size() + 1 +
                                     random.trip.days.rest_days_after.size()),
             .by = 20h,
             .margin = 30min,
             .hard = false}};
        const Plan plan = make_plan(random.trip, random.route);
        const PlanAppointment& meet = plan.appointments[0];
        const bool late = std::any_of(plan.days.begin(), plan.days.end(), [&](const PlanDay& day) {
            const auto dusk = evening_dusk(day.light);
            const auto midnight =
                geo::to_instant(std::chrono::local_days{day.date} + 24h, plan.trip.time_zone);
            return day.arrive > dusk.value_or(midnight);
        });
        if (meet.spare_s < 0.0 || late)
            continue; // latest departures lie before the planned ones: nothing to go forward from
        const Forward forward(plan, meet);
        for (const LeaveBy& leave : meet.leave_by) {
            EXPECT_TRUE(forward.meets(leave, leave.at - 3s)) << leave.place;
            EXPECT_FALSE(forward.meets(leave, leave.at + 1min)) << leave.place;
            ++(leave.night ? nights : landings);
            earlier_days += leave.day < meet.leave_by.back().day ? 1 : 0;
            given_up += leave.days_later > 0 ? 1 : 0;
        }
    }
    EXPECT_GT(nights, 50);
    EXPECT_GT(landings, 50);
    EXPECT_GT(earlier_days, 50);
    EXPECT_GT(given_up, 5);
}

} // namespace
} // namespace tumpline::planner
