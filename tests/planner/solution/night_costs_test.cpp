/// What a day costs, added up by hand; the weights stand in docs/nights.md.

#include "planner/solution/night_costs.h"

#include "planner/conditions/calendar.h"
#include "planner/solution/nights.h"
#include "tests/support/plain_trip.h"

#include <gtest/gtest.h>

#include <cmath>
#include <optional>

namespace tumpline::planner {
namespace {

/// Four legs of four hours each at 1 m/s, eight hours wished a day. A kilogram of food a day and no
/// fuel: what one bears for a night.
test::PlainTrip eight_hour_days() {
    test::PlainTrip plain = test::plain_trip(
        {test::walk(14'400.0), test::walk(14'400.0), test::walk(14'400.0), test::walk(14'400.0)});
    plain.trip.models.walking = "constant";
    plain.trip.models.load_effect = "none";
    plain.trip.party[0].level_speed_mps = 1.0;
    plain.trip.days.hours = 8.0;
    plain.trip.food.ration_kg = 1.0;
    plain.trip.food.packaging = 0.1;
    plain.trip.fuel.boiled_l = 0.0;
    return plain;
}

/// A camp at the end of a leg, from 1.
void add_camp(test::PlainTrip& plain, std::size_t leg, std::optional<bool> water) {
    TripPlace camp;
    camp.name = "camp " + std::to_string(leg);
    camp.kind = PlaceKind::camp;
    camp.water = water;
    const double along_m = 14'400.0 * static_cast<double>(leg);
    plain.route.places.push_back({.name = camp.name,
                                  .kind = camp.kind,
                                  .at = plain.route.at(along_m),
                                  .along_m = along_m,
                                  .off_m = 0.0,
                                  .leg = LegNumber::of_index(leg - 1),
                                  .spec = plain.trip.route.places.size()});
    plain.trip.route.places.push_back(camp);
}

/// Days at the loads of a night after the second leg.
struct Asked {
    explicit Asked(test::PlainTrip of)
        : plain(std::move(of)), prepared(prepare(plain.trip, plain.route)),
          stops(night_stops(prepared)),
          settled(solve(prepared, {.nights = std::vector<std::size_t>{2}})),
          days(prepared, stops, settled) {}

    test::PlainTrip plain; // what is prepared refers to it
    Prepared prepared;
    NightStops stops;
    Solved settled;
    NightDays days;
};

TEST(NightStops, AreTheEndsOfLegsWhereNoCampIsNamed) {
    // Boundaries stand at every kilometre too: a leg of 14.4 km has fifteen stretches.
    const Asked legs(eight_hour_days());
    EXPECT_EQ(legs.stops.boundaries, (std::vector<std::size_t>{0, 15, 30, 45, 60}));
    EXPECT_FALSE(legs.stops.camps);
    test::PlainTrip named = eight_hour_days();
    add_camp(named, 2, std::nullopt);
    const Asked camps(named);
    EXPECT_EQ(camps.stops.boundaries, (std::vector<std::size_t>{0, 30, 60}));
    EXPECT_TRUE(camps.stops.camps);
    EXPECT_EQ(camps.stops.nights({1}), (std::vector<std::size_t>{30}));
    EXPECT_EQ(camps.stops.stops({30, 45}), (std::vector<std::size_t>{1})) << "45 is no stop";
}

TEST(NightDays, CostTheHoursAwayFromTheWish) {
    Asked asked(eight_hour_days());
    // Eight hours are what is wished; 1.1 kg for the night over 28.8 km at 0.01 an hour.
    const NightDay wished = asked.days({0, 2, 1});
    EXPECT_EQ(wished.cost.over_wish, 0.0);
    EXPECT_NEAR(wished.cost.uneven, 0.0, 1e-9);
    EXPECT_NEAR(wished.cost.carried, 0.01 * 1.1 * 28.8, 1e-6);
    EXPECT_EQ(wished.cost.late, 0.0);
    EXPECT_EQ(wished.cost.dry_camp, 0.0) << "water is found everywhere";
    EXPECT_EQ(wished.broken, 0U);
    // Four hours less: 0.25 times 4 squared; 14.4 km to the camp.
    const NightDay less = asked.days({0, 1, 1});
    EXPECT_EQ(less.cost.over_wish, 0.0);
    EXPECT_NEAR(less.cost.uneven, 4.0, 1e-6);
    EXPECT_NEAR(less.cost.carried, 0.01 * 1.1 * 14.4, 1e-6);
    // Four hours more cost those four hours and the same again for being uneven.
    const NightDay more = asked.days({0, 3, 1});
    EXPECT_NEAR(more.cost.over_wish, 4.0, 1e-6);
    EXPECT_NEAR(more.cost.uneven, 4.0, 1e-6);
    EXPECT_NEAR(more.longer_costs_at_least, 8.0, 1e-6);
    // The last day ends at the finish: nothing is borne for a night after it.
    EXPECT_EQ(asked.days({2, 4, 2}).cost.carried, 0.0);
}

/// Twelve hours and eleven rests of ten minutes from 08:00: 21:50. Each hour later than an hour
/// before dusk, or than 13 hours after setting off, costs two.
TEST(NightDays, CostTheHoursTooLateForSleep) {
    Asked asked(eight_hour_days()); // in June: dusk is after 22:50
    EXPECT_NEAR(asked.days({0, 3, 1}).cost.late, 2.0 * 50.0 / 60.0, 1e-6);
}

TEST(NightDays, CostTheHoursAfterTheLightHasGone) {
    test::PlainTrip winter = eight_hour_days();
    winter.trip.start = std::chrono::year(2027) / 12 / 18;
    Asked asked(winter);
    const geo::Daylight light = geo::daylight(date_of(asked.prepared.assumed, 1),
                                              asked.prepared.route.at(43'200.0),
                                              asked.prepared.assumed.time_zone);
    const std::optional<geo::sys_seconds> dusk = evening_dusk(light);
    ASSERT_TRUE(dusk);
    const geo::sys_seconds arrive = std::chrono::sys_days{std::chrono::year(2027) / 12 / 18} +
                                    std::chrono::minutes{21 * 60 + 50};
    const double after_dusk_h = static_cast<double>((arrive - *dusk).count()) / 3600.0;
    ASSERT_GT(after_dusk_h, 1.0);
    EXPECT_NEAR(asked.days({0, 3, 1}).cost.late, 2.0 * (1.0 + after_dusk_h), 2.0 * 2.0 / 3600.0);
}

TEST(NightDays, BreakTheLimitOfHours) {
    test::PlainTrip plain = eight_hour_days();
    plain.trip.days.hours_limit = 11.0;
    Asked asked(plain);
    EXPECT_EQ(asked.days({0, 2, 1}).broken, 0U);
    const NightDay more = asked.days({0, 3, 1});
    EXPECT_EQ(more.broken, bit(NightLimit::most_hours));
    EXPECT_EQ(more.longer_costs_at_least, HUGE_VAL);
}

TEST(NightDays, CostADryCampAndTheWaterBorneThere) {
    test::PlainTrip plain = eight_hour_days();
    add_camp(plain, 1, true);
    add_camp(plain, 2, false);
    plain.trip.water.camp_l = 3.0;
    plain.trip.water.capacity_l = 30.0;
    Asked asked(plain);
    // From the water of the first camp to the dry second: 3 L over 14.4 km, and the night's food
    // from the start, 28.8 km; half an hour for the dry camp itself.
    const NightDay dry = asked.days({1, 2, 2});
    EXPECT_NEAR(dry.cost.dry_camp, 0.5, 1e-12);
    EXPECT_NEAR(dry.cost.carried, 0.01 * (1.1 * 28.8 + 3.0 * 14.4), 1e-6);
    const NightDay wet = asked.days({0, 1, 1});
    EXPECT_EQ(wet.cost.dry_camp, 0.0);
    EXPECT_NEAR(wet.cost.carried, 0.01 * 1.1 * 14.4, 1e-6);
    EXPECT_TRUE(wet.source);
}

TEST(NightDays, CostNeverLessThanTheirBound) {
    test::PlainTrip plain = eight_hour_days();
    add_camp(plain, 1, false);
    add_camp(plain, 3, true);
    Asked asked(plain);
    for (std::size_t from = 0; from + 1 < asked.stops.boundaries.size(); ++from)
        for (std::size_t to = from + 1; to < asked.stops.boundaries.size(); ++to)
            EXPECT_GE(asked.days({from, to, 1}).cost.sum(), asked.days.least(from, to) - 1e-12);
}

TEST(NightDays, TakeACampThatHoldsThePartyAndNoFewer) {
    test::PlainTrip plain = eight_hour_days();
    test::add_member(plain, "Bo", 40.0);
    test::add_member(plain, "Cleo", 40.0);
    add_camp(plain, 2, true);
    const auto limits = [&](int holds) {
        plain.trip.route.places[0].holds = holds;
        const Prepared prepared = prepare(plain.trip, plain.route);
        return camp_limits(
            prepared, prepared.stretches.boundary_at(28'800.0), {.day = 1, .rests = 0});
    };
    EXPECT_EQ(limits(1), bit(NightLimit::camp_full));
    EXPECT_EQ(limits(2), bit(NightLimit::camp_full)) << "one place too few";
    EXPECT_EQ(limits(3), 0U);
}

} // namespace
} // namespace tumpline::planner
