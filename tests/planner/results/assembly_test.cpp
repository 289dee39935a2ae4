#include "planner/results/assembly.h"

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <chrono>

namespace tumpline::planner {
namespace {

using std::chrono::sys_days;

TEST(Assembly, PutsTheHoursOfADayOnTheClockAndNamesBoundaries) {
    test::PlainTrip plain = test::plain_trip({test::walk(5'000.0), test::walk(3'000.0)});
    test::add_place(plain, PlaceKind::camp, "Birch spit", 5'000.0);
    const Prepared prepared = prepare(plain.trip, plain.route);
    const Solved settled = settle_trip(prepared);
    const Assembly draft{prepared, settled};
    EXPECT_EQ(date_of(draft, 3), std::chrono::year(2027) / 6 / 20); // day 1 is the 18th
    EXPECT_EQ(instant(draft, 2, 9.5 * 3600.0),
              sys_days{std::chrono::year(2027) / 6 / 19} + std::chrono::minutes{570});
    EXPECT_EQ(boundary_name(draft, prepared.stretches.boundary_at(5'000.0)), "Birch spit");
}

} // namespace
} // namespace tumpline::planner
