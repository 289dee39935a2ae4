/// What is said of camps.

#include "planner/make_plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::planner {
namespace {

/// A night at a camp half way.
test::PlainTrip with_camp() {
    test::PlainTrip plain = test::plain_trip({test::walk(15000.0), test::walk(15000.0)});
    TripPlace camp;
    camp.name = "Flat";
    camp.kind = PlaceKind::camp;
    plain.route.places.push_back({.name = camp.name,
                                  .kind = camp.kind,
                                  .at = plain.route.legs[0].line.points().back(),
                                  .along_m = 15000.0,
                                  .off_m = 0.0,
                                  .leg = 1,
                                  .spec = 0});
    plain.trip.route.places.push_back(camp);
    plain.trip.days.nights = {"Flat"};
    return plain;
}

Level level_of(const test::PlainTrip& plain, const std::string& code) {
    for (const Caution& caution : make_plan(plain.trip, plain.route).cautions)
        if (caution.code == code)
            return caution.level;
    return Level::note;
}

TEST(CampCautions, ACampThatIsClosedOnTheNightStopsThePlan) {
    test::PlainTrip plain = with_camp();
    plain.trip.route.places[0].closed = {plain.trip.start};
    EXPECT_EQ(level_of(plain, "camp-closed"), Level::stop);
    plain.trip.route.places[0].closed = {std::chrono::year(2027) / 6 / 19};
    EXPECT_EQ(level_of(plain, "camp-closed"), Level::note) << "that is the next night";
}

TEST(CampCautions, ACampHoldsThePartyOrStopsThePlan) {
    test::PlainTrip plain = with_camp();
    plain.trip.route.places[0].holds = 1;
    EXPECT_EQ(level_of(plain, "camp-too-small"), Level::note);
    Member bo = plain.trip.party[0];
    bo.name = "Bo";
    plain.trip.party.push_back(bo);
    EXPECT_EQ(level_of(plain, "camp-too-small"), Level::stop);
}

} // namespace
} // namespace tumpline::planner
