#include "planner/cautions/flow_cautions.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

/// Six kilometres of a river, 1 m/s at 10 m3/s and 2 m/s at 30, runnable from 8 to 40.
test::PlainTrip on_a_river() {
    test::PlainTrip plain = test::plain_trip({test::lake(6000.0)});
    TripLeg& leg = plain.route.legs[0].spec;
    leg.water = Water::river;
    RiverFlow& flow = leg.flow.emplace();
    flow.leg_class = 1;
    flow.columns[1] =
        FlowColumn{.current_mps = 1.0, .reading = GaugeReading{10.0, false}, .river_class = {}};
    flow.columns[2] =
        FlowColumn{.current_mps = 2.0, .reading = GaugeReading{30.0, false}, .river_class = {}};
    flow.runnable = std::array{GaugeReading{8.0, false}, GaugeReading{40.0, false}};
    set_flow(leg);
    return plain;
}

void carries(test::PlainTrip& plain, double value_m3ps) {
    TripLeg& leg = plain.route.legs[0].spec;
    leg.flow->now = {.column = {}, .reading = GaugeReading{value_m3ps, false}};
    set_flow(leg);
}

std::vector<std::string> said(const test::PlainTrip& plain, const std::string& code) {
    return test::cautions_of(plain, code);
}

TEST(FlowCautions, ARiverOutsideItsRangeIsAStop) {
    test::PlainTrip plain = on_a_river();
    EXPECT_THAT(said(plain, "flow-not-runnable"), testing::IsEmpty());
    carries(plain, 7.0);
    ASSERT_THAT(said(plain, "flow-not-runnable"), testing::SizeIs(1));
    EXPECT_THAT(said(plain, "flow-not-runnable")[0], testing::HasSubstr("too little"));
    carries(plain, 41.0);
    ASSERT_THAT(said(plain, "flow-not-runnable"), testing::SizeIs(1));
    EXPECT_THAT(said(plain, "flow-not-runnable")[0], testing::HasSubstr("too much"));
    EXPECT_FALSE(make_plan(plain.trip, plain.route).can_be_carried_out());
}

TEST(FlowCautions, EstimatesAreSaidToBeSome) {
    test::PlainTrip plain = on_a_river();
    EXPECT_THAT(said(plain, "flow-beyond"), testing::IsEmpty());
    carries(plain, 35.0);
    EXPECT_THAT(said(plain, "flow-beyond"), testing::SizeIs(1));
    carries(plain, 10.0);
    plain.route.legs[0].spec.flow->columns[2]->current_mps.reset();
    EXPECT_THAT(said(plain, "flow-estimated"), testing::IsEmpty());
    carries(plain, 30.0);
    EXPECT_THAT(said(plain, "flow-estimated"), testing::SizeIs(1));
}

TEST(FlowCautions, ALevelWithoutAReadingIsNotTakenAsRunnable) {
    test::PlainTrip plain = on_a_river();
    plain.route.legs[0].spec.flow->columns[1]->reading.reset();
    EXPECT_THAT(said(plain, "flow-unread"), testing::SizeIs(1));
}

TEST(FlowCautions, AReleaseIsMetAtItsHours) {
    test::PlainTrip plain = on_a_river();
    plain.trip.days.set_off = seconds{8 * 3600};
    const double usual_s = make_plan(plain.trip, plain.route).legs[0].moving_s;
    TripLeg& leg = plain.route.legs[0].spec;
    // a flood that is over before anybody sets off
    leg.flow->times = {{.hours = HoursOfDay{3600.0, 4.0 * 3600.0},
                        .now = {.column = {}, .reading = GaugeReading{50.0, false}}}};
    EXPECT_THAT(said(plain, "flow-not-runnable"), testing::IsEmpty());
    EXPECT_NEAR(make_plan(plain.trip, plain.route).legs[0].moving_s, usual_s, 0.5);
    leg.flow->times[0] = {.hours = HoursOfDay{7.0 * 3600.0, 20.0 * 3600.0},
                          .now = {.column = FlowLevel::high, .reading = {}}};
    const Plan plan = make_plan(plain.trip, plain.route);
    EXPECT_LT(plan.legs[0].moving_s, 0.8 * usual_s);
    EXPECT_NEAR(plan.legs[0].current_mps, 2.0, 1e-9);
    leg.flow->times[0].now = {.column = {}, .reading = GaugeReading{50.0, false}};
    EXPECT_THAT(said(plain, "flow-not-runnable"), testing::SizeIs(1));
}

} // namespace
} // namespace tumpline::planner
