#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

/// Rules for a whole day beside the sums over its steps.
namespace tumpline::planner {
namespace {

using test::cautions_of;
using test::plain_trip;
using test::PlainTrip;
using test::thing;
using test::walk;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// 20 km and 1200 m up: 4 h and 2 h by Naismith.
PlainTrip six_hours(int fitness_min) {
    PlainTrip plain = plain_trip({walk(20'000.0, 0.06)});
    plain.trip.days.hours = 24.0;
    plain.trip.party[0].fitness = std::chrono::minutes(fitness_min);
    return plain;
}

TEST(DayRules, TrantersHoursStandBesideTheDay) {
    EXPECT_THAT(cautions_of(six_hours(25), "tranter-day"),
                ElementsAre(AllOf(HasSubstr("Ada (25 min for 300 m of climb) needs 7 h 00 min"),
                                  HasSubstr("6 h 00 min by Naismith"))));
    PlainTrip laden = six_hours(25);
    laden.trip.kit = {thing("pack", 20.0)};
    EXPECT_THAT(cautions_of(laden, "tranter-day"),
                ElementsAre(HasSubstr("20 kg and more) needs 8 h 30 min")));
    PlainTrip rough = six_hours(25);
    rough.route.legs[0].spec.terrain = Terrain::off_path;
    rough.route.legs[0].spec.night = true;
    EXPECT_THAT(cautions_of(rough, "tranter-day"),
                ElementsAre(HasSubstr("in the dark, off the path) needs 9 h 30 min")));
}

TEST(DayRules, ABlankCellIsNotToBeAttempted) {
    EXPECT_THAT(cautions_of(six_hours(50), "tranter-day"), IsEmpty());
    EXPECT_THAT(cautions_of(six_hours(50), "tranter-blank"),
                ElementsAre(AllOf(HasSubstr("6 h 00 min by Naismith"),
                                  HasSubstr("blank for Ada (50 min"),
                                  HasSubstr("not to be attempted"))));
    EXPECT_THAT(cautions_of(six_hours(40), "tranter-blank"), IsEmpty());
}

TEST(DayRules, WithoutAFitnessTranterIsSilent) {
    PlainTrip plain = six_hours(50);
    plain.trip.party[0].fitness.reset();
    EXPECT_THAT(cautions_of(plain, "tranter-blank"), IsEmpty());
    EXPECT_THAT(cautions_of(plain, "tranter-day"), IsEmpty());
}

TEST(DayRules, TheCourseConstantAgreesWithAnOrdinaryDay) {
    EXPECT_THAT(cautions_of(plain_trip({walk(12'000.0, 0.05)}), "energy-by-other-rule"), IsEmpty());
}

// 1.8 kcal a kilogram and hour, 0.3 a kilometre, 10 a kilometre up and 0.6 down: here 24 km and
// 2.4 km down, for the body's 70 kg and the mean pack.
TEST(DayRules, TheCourseConstantCountsTheDescent) {
    PlainTrip plain = plain_trip({walk(24'000.0, -0.10)});
    plain.trip.party[0].pace = 3.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(plan.legs.size(), 1U);
    const PlanLeg& leg = plan.legs[0];
    const double hours = (leg.moving_s + leg.rest_s) / 3600.0;
    const double pack_kg = 0.5 * (leg.loads[0].pack_start_kg + leg.loads[0].pack_end_kg);
    const double kcal =
        (1.8 * hours + 0.3 * 24.0 + 0.6 * 2.4) * (70.0 + pack_kg + leg.loads[0].worn_kg);
    EXPECT_THAT(cautions_of(plain, "energy-by-other-rule"),
                ElementsAre(HasSubstr(fmt::format("cost Ada {:.0f} kcal", kcal))));
}

TEST(DayRules, AnOddPaceShowsAgainstTheCourseConstant) {
    PlainTrip plain = plain_trip({walk(24'000.0, -0.10)});
    plain.trip.party[0].pace = 3.0;
    EXPECT_THAT(cautions_of(plain, "energy-by-other-rule"),
                ElementsAre(AllOf(HasSubstr("cost Ada"), HasSubstr("lcda-backpacking-2022"))));
    plain.trip.models.energy = "compendium-met";
    EXPECT_THAT(cautions_of(plain, "energy-by-other-rule"), IsEmpty());
    plain.trip.models.energy.clear();
    plain.route.legs[0].spec.terrain = Terrain::bog; // no course of good paths
    EXPECT_THAT(cautions_of(plain, "energy-by-other-rule"), IsEmpty());
}

} // namespace
} // namespace tumpline::planner
