#include "planner/journey/schedule.h"

#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

constexpr double clock_hour_s = 3600.0;

/// One day of some hours of moving each, set off at 08:00, ten minutes of rest in the hour.
Timeline on_the_clock(const std::vector<double>& hours, const Darkness& darkness = {}) {
    Assumed assumed{};
    assumed.times.set_off_s = assumed.times.first_set_off_s = 8.0 * clock_hour_s;
    assumed.times.rest_per_hour_s = 600.0;
    Stretches route;
    Timeline timeline;
    for (const double moving_h : hours) {
        Stretch stretch{};
        stretch.dark_factor = 1.25;
        route.stretches.push_back(stretch);
        StretchTime time;
        time.by_day_s = moving_h * clock_hour_s;
        timeline.stretches.push_back(time);
    }
    timeline.days = {{1, false, 0, hours.size()}};
    run_clock(timeline, route, {darkness}, assumed);
    return timeline;
}

TEST(Schedule, ARestFollowsEachFullHourAcrossStretches) {
    // 1.5 h and 2 h: hours end at 1 on the first and at 2 and 3 on the second.
    const Timeline day = on_the_clock({1.5, 2.0});
    EXPECT_EQ(day.stretches[0].rests, 1);
    EXPECT_EQ(day.stretches[1].rests, 2);
    EXPECT_NEAR(day.arrive_s[0], (8.0 + 3.5 + 0.5) * clock_hour_s, 1e-6);
    EXPECT_NEAR(day.stretches[1].start_s, (8.0 + 1.5) * clock_hour_s + 600.0, 1e-6);
}

TEST(Schedule, NobodyRestsAtTheDoorOfTheCamp) {
    EXPECT_EQ(on_the_clock({3.0}).stretches[0].rests, 2);
    EXPECT_EQ(on_the_clock({3.1}).stretches[0].rests, 3);
}

TEST(Schedule, TheClockDecidesWhatIsWalkedInTheDark) {
    // Dusk at 10:00; 2 h and 1 h: the second hour ends at 10:10 with its rest.
    const Timeline day = on_the_clock({1.0, 1.0}, {.dawn_s = 0.0, .dusk_s = 9.5 * clock_hour_s});
    // From 08:00 to 09:00, a rest to 09:10, 20 minutes by light, 40 minutes left at 1.25.
    EXPECT_EQ(day.stretches[0].dark_s, 0.0);
    EXPECT_NEAR(day.stretches[1].dark_s, 3000.0, 1e-6);
    EXPECT_NEAR(day.stretches[1].moving_s, 4200.0, 1e-6);
}

TEST(Schedule, RestDaysFollowTheirDay) {
    const std::vector<DaySpan> days = days_at({2, 3}, 5, {1, 2, 4});
    // Day 1 travels, 2 and 3 rest (after 1 and after 2), 4 travels, 5 rests, 6 travels.
    ASSERT_EQ(days.size(), 6U);
    const bool rests[] = {false, true, true, false, true, false};
    for (std::size_t d = 0; d < days.size(); ++d) {
        EXPECT_EQ(days[d].day, static_cast<int>(d) + 1);
        EXPECT_EQ(days[d].rest_day, rests[d]) << d;
    }
    EXPECT_EQ(days[3].first, 2U);
    EXPECT_EQ(days[5].last, 5U);
}

/// Where nights of a level walk fall, by boundary; ten pieces of 4 km, a camp at 12 km.
std::vector<std::size_t> nights(double hours, bool dark) {
    const test::RandomTrip made = test::level_trip(
        std::vector<test::LevelLeg>(10, {.length_m = 4000.0}), {{"Camp", PlaceKind::camp, 12e3}});
    const Assumed assumed = assume(made.trip);
    const Stretches stretches = make_stretches(made.trip, made.route, assumed, 0.0);
    const std::vector<int> no_rest;
    return nights_by_hours(made.route,
                           stretches,
                           std::vector<double>(10, 4000.0),
                           {hours * clock_hour_s, no_rest, [&](int, std::size_t) { return dark; }});
}

TEST(Schedule, NightsByHoursGoAsFarAsWishedAndToACampInTheLaterHalf) {
    // 5 h are 18000 s: four pieces of 4000 s, but the camp lies at the third; then four, then the
    // last three.
    EXPECT_EQ(nights(5.0, false), (std::vector<std::size_t>{3, 7}));
    // 7 h are 25200 s: six pieces; the camp at 12000 s lies in the first half.
    EXPECT_EQ(nights(7.0, false), (std::vector<std::size_t>{6}));
}

TEST(Schedule, NightsByHoursKnowThePolarNight) {
    // A piece takes 5000 s: five in 7 h, and five more.
    EXPECT_EQ(nights(7.0, true), (std::vector<std::size_t>{3, 8}));
}

TEST(Schedule, ChangesStandWhereBootsAndBoatsMeet) {
    const test::RandomTrip made = test::level_trip({{.length_m = 5e3},
                                                    {.travel = Travel::paddle, .length_m = 5e3},
                                                    {.travel = Travel::portage, .length_m = 500.0},
                                                    {.travel = Travel::paddle, .length_m = 5e3},
                                                    {.length_m = 5e3}},
                                                   {});
    Assumed assumed = assume(made.trip);
    assumed.times.boots_to_boat_s = 1.0;
    assumed.times.boat_to_boots_s = 10.0;
    assumed.times.landing_s = 100.0;
    const Stretches route = make_stretches(made.trip, made.route, assumed, 0.0);
    std::vector<StretchTime> times(5);
    const std::vector<DaySpan> days{{1, false, 0, 5}};
    std::vector<BoatState> boats(5, BoatState::none);
    const auto changes = [&](BoatState over) {
        boats[2] = over;
        set_changes(times, route, days, boats, assumed);
        std::vector<double> sums;
        for (const StretchTime& time : times)
            sums.push_back(time.change_s());
        return sums;
    };
    // Whole: inflate, land, land, stow. Rolled: stow and inflate at the portage.
    EXPECT_EQ(changes(BoatState::whole), (std::vector<double>{0.0, 1.0, 200.0, 10.0, 0.0}));
    EXPECT_EQ(changes(BoatState::rolled), (std::vector<double>{0.0, 1.0, 11.0, 10.0, 0.0}));
}

} // namespace
} // namespace tumpline::planner
