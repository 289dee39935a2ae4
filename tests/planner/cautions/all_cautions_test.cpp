/// What is said of days, appointments and the trip as a whole.

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::planner {
namespace {

const Caution* find(const Plan& plan, const std::string& code) {
    const auto found = std::find_if(
        plan.cautions.begin(), plan.cautions.end(), [&](const auto& c) { return c.code == code; });
    return found == plan.cautions.end() ? nullptr : &*found;
}

TEST(AllCautions, EachHasItsTitle) {
    test::PlainTrip plain = test::plain_trip({test::walk(20000.0), test::lake(9000.0)});
    plain.trip.days.hours = 2.0;
    plain.trip.weather.water_c = 8.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_GE(plan.cautions.size(), 5U);
    for (const Caution& caution : plan.cautions)
        EXPECT_NE(caution.title, "") << caution.code;
}

/// 45 degrees north, 18 June, hours of UTC at 40 degrees west: the sun is highest at 14:40 and dusk
/// comes after 23:00. Setting off at 22:00 for two hours and more is late.
TEST(AllCautions, ArrivalAfterDuskSaysByHowMuch) {
    test::PlainTrip plain = test::plain_trip({test::walk(12000.0)});
    plain.trip.days.set_off = std::chrono::hours(22);
    const Plan plan = make_plan(plain.trip, plain.route);
    const Caution* late = find(plan, "after-dusk");
    ASSERT_NE(late, nullptr);
    const PlanDay& day = plan.days.front();
    EXPECT_DOUBLE_EQ(late->excess,
                     static_cast<double>((day.arrive - *day.light.twilight.set).count()));
    EXPECT_EQ(late->figure, show_duration(late->excess) + " late");
}

/// The late end of the day's band decides: by it the light is gone, by the plan and by the early
/// end it is not.
TEST(AllCautions, DuskWithinTheBandIsThatOfASlowDay) {
    // 47 N, 11 E, 7 June: dusk by about 19:50 UTC. 45 km at 1 m/s from 06:00 arrive at 18:30; the
    // late end of a known pace, 1.14 times 12.5 h, at about 20:15.
    test::RandomTrip made = test::level_trip({{.length_m = 45e3}}, {});
    made.trip.days.hours = 24.0;
    const Plan slow = make_plan(made.trip, made.route);
    ASSERT_EQ(slow.days.size(), 1U);
    ASSERT_GT(slow.days[0].before_dusk_s.value(), 0.0);
    EXPECT_NE(find(slow, "dusk-within-band"), nullptr);
    // 36 km arrive at 16:00, the late end at about 17:25.
    made = test::level_trip({{.length_m = 36e3}}, {});
    made.trip.days.hours = 24.0;
    EXPECT_EQ(find(make_plan(made.trip, made.route), "dusk-within-band"), nullptr);
}

TEST(AllCautions, AnAppointmentIsItsOwnSubject) {
    test::PlainTrip plain = test::plain_trip({test::walk(12000.0)});
    plain.trip.days.set_off = std::chrono::hours(12);
    TripPlace stop;
    stop.name = "Stop";
    stop.kind = PlaceKind::finish;
    plain.route.places.push_back({.name = stop.name,
                                  .kind = stop.kind,
                                  .at = plain.route.legs[0].line.points().back(),
                                  .along_m = 12000.0,
                                  .off_m = 0.0,
                                  .leg = 1,
                                  .spec = 0});
    plain.trip.route.places.push_back(stop);
    Appointment bus;
    bus.what = "bus";
    bus.at = "Stop";
    bus.by = std::chrono::hours(13);
    plain.trip.appointments = {bus};
    const Plan plan = make_plan(plain.trip, plain.route);
    const Caution* missed = find(plan, "appointment-missed");
    ASSERT_NE(missed, nullptr);
    EXPECT_EQ(missed->subject, "bus at Stop");
    EXPECT_EQ(missed->figure, "missed by " + show_duration(-plan.appointments[0].spare_s));
    EXPECT_EQ(plan.verdict.level, VerdictLevel::breaks);
}

} // namespace
} // namespace tumpline::planner
