#include "planner/cautions/child_cautions.h"

#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

using test::cautions_of;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// A boy of nine and 30 kg on a day's walk, alone with so much on his back.
test::PlainTrip boy(double load_kg) {
    test::PlainTrip plain = test::plain_trip({test::walk(5000.0)});
    Member& child = plain.trip.party[0];
    child.body_kg = 30.0;
    child.age_years = 9.0;
    child.sex = Sex::male;
    child.carry_limit_kg.reset();
    plain.trip.kit = {test::thing("sack", load_kg)};
    plain.trip.food.ration_kg = 0.6;
    plain.trip.food.reserve_days = 0.0;
    plain.trip.food.first_meal = Meal::dinner;
    plain.trip.food.packaging = 0.0;
    plain.trip.fuel.boiled_l = 0.0;
    plain.trip.fuel.container_kg = 0.0;
    plain.trip.water = {.walking_lps = 0.0,
                        .paddling_lps = 0.0,
                        .camp_l = 0.0,
                        .capacity_l = 4.0,
                        .reserve_l = 0.0};
    return plain;
}

TEST(Children, AHeavyPackIsACaution) {
    // 0.2 kg of dinner: 4.0 kg are 14 % of 30 kg, 13.0 kg are 44 %.
    EXPECT_THAT(cautions_of(boy(3.8), "child-load"), IsEmpty());
    EXPECT_THAT(cautions_of(boy(5.0), "child-load"),
                ElementsAre(testing::AllOf(HasSubstr("Ada (9 years)"),
                                           testing::Not(HasSubstr("this is more")))));
    EXPECT_THAT(
        cautions_of(boy(13.0), "child-load"),
        ElementsAre(testing::AllOf(HasSubstr("44 % of the body mass"), HasSubstr("this is more"))));
    test::PlainTrip grown = boy(13.0);
    grown.trip.party[0].age_years = 30.0;
    EXPECT_THAT(cautions_of(grown, "child-load"), IsEmpty());
}

TEST(Children, TooLittleFoodIsACautionOnceForTheTrip) {
    // An ordinary day is 1972.5 kcal: 0.49 kg at 4 kcal/g is less, 0.50 kg is not.
    test::PlainTrip plain = boy(2.0);
    plain.trip.food.ration_kg = 0.50;
    EXPECT_THAT(cautions_of(plain, "child-food"), IsEmpty());
    plain.trip.food.ration_kg = 0.295; // 1180 kcal
    EXPECT_THAT(cautions_of(plain, "child-food"),
                ElementsAre(testing::AllOf(HasSubstr("about 1180 kcal"), HasSubstr("1972 on"))));
    plain.trip.food.ration_kg.reset(); // by energy, nine tenths of an active day
    EXPECT_THAT(cautions_of(plain, "child-food"), IsEmpty());
    plain.trip.food.replace = 0.5;
    EXPECT_EQ(cautions_of(plain, "child-food").size(), 1U);
}

TEST(Children, ThePaceOfAYoungChildIsAskedFor) {
    test::PlainTrip plain = boy(2.0);
    EXPECT_EQ(cautions_of(plain, "child-pace").size(), 1U);
    plain.trip.party[0].pace = 0.6;
    EXPECT_THAT(cautions_of(plain, "child-pace"), IsEmpty());
    plain.trip.party[0].pace.reset();
    plain.trip.party[0].age_years = 15.0;
    EXPECT_THAT(cautions_of(plain, "child-pace"), IsEmpty());
}

TEST(Children, AreNotMeasuredByTheDaysOfFirefighters) {
    EXPECT_THAT(cautions_of(boy(2.0), "energy-out-of-bounds"), IsEmpty());
}

} // namespace
} // namespace tumpline::planner
