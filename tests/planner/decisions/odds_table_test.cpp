#include "planner/decisions/odds_table.h"

#include "planner/make_plan.h"
#include "tests/support/level_trip.h"

#include <gtest/gtest.h>

namespace tumpline::planner {
namespace {

/// Two days of 18 and 9 km on foot at 1 m/s, with an appointment at the end.
test::RandomTrip walk() {
    test::RandomTrip made = test::level_trip(
        {{.length_m = 27e3}},
        {{"Half way", PlaceKind::camp, 18e3}, {"Bridge", PlaceKind::finish, 27e3}});
    made.trip.days.nights = {"Half way"};
    made.trip.water.walking_lps = 1e-4;
    Appointment bus;
    bus.what = "bus";
    bus.at = "Bridge";
    bus.day = 2;
    bus.by = std::chrono::hours{12};
    made.trip.appointments = {bus};
    return made;
}

class OddsColumnsDrawn : public testing::Test {
  protected:
    OddsColumnsDrawn()
        : made_(walk()), prepared_(prepare(made_.trip, made_.route)),
          settled_(settle_trip(prepared_)), columns_({prepared_, settled_}, 2) {}

    OddsTable drawn(const AssumedSpread& spread) const {
        return *draw_all({.draft = {prepared_, settled_},
                          .columns = columns_,
                          .spread = spread,
                          .seed = 5,
                          .draws = 40,
                          .threads = 2});
    }

    test::RandomTrip made_;
    Prepared prepared_;
    Solved settled_;
    OddsColumns columns_;
};

const AssumedSpread nothing{.on_foot = {0.0, 0.0},
                            .afloat = {0.0, 0.0},
                            .day_form = 0.0,
                            .wind = 0.0,
                            .current = 0.0,
                            .changeovers = 0.0,
                            .drinking = 0.0,
                            .eating = 0.0,
                            .defaults = {}};

TEST_F(OddsColumnsDrawn, ColumnsStandSideBySide) {
    EXPECT_EQ(columns_.days, 2U);
    EXPECT_EQ(columns_.members, 1U);
    EXPECT_EQ(columns_.appointments, 1U);
    EXPECT_EQ(columns_.arrive, 0U);
    EXPECT_EQ(columns_.held_up, 2U);
    EXPECT_EQ(columns_.factor, 4U);
    EXPECT_EQ(columns_.day_factor, 4U + all_assumptions.size());
    EXPECT_EQ(columns_.pack, columns_.day_factor + 4U); // two a day
    EXPECT_EQ(columns_.food, columns_.pack + 2U);       // two plan legs, one member
    EXPECT_EQ(columns_.count, columns_.drunk + 1U);
}

TEST_F(OddsColumnsDrawn, WithoutSpreadEveryDrawIsThePlan) {
    const OddsTable table = drawn(nothing);
    for (std::size_t draw = 0; draw < 40; ++draw) {
        // From 06:00: 18 km are 5 h, 9 km 2 h 30 min.
        EXPECT_NEAR(table.column(columns_.arrive)[draw], 11.0 * 3600.0, 1.0);
        EXPECT_NEAR(table.column(columns_.arrive + 1)[draw], 8.5 * 3600.0, 1.0);
        EXPECT_NEAR(table.column(columns_.under_way)[draw], 7.5 * 3600.0, 1.0);
        EXPECT_EQ(table.column(columns_.held_up)[draw], 0.0);
        EXPECT_NEAR(table.column(columns_.reached)[draw], 0.0, 1.0);
        // No source is named: water is everywhere, and a litre at most is carried. Of the 1.8 L of
        // day 1 that is 1 L, of day 2 all 0.9 L.
        EXPECT_NEAR(table.column(columns_.drunk)[draw], 1.9, 0.01);
        EXPECT_NEAR(table.column(columns_.food_left)[draw], 0.0, 1e-5);
    }
}

TEST_F(OddsColumnsDrawn, APaceIsInverseToTheTimeUnderWay) {
    AssumedSpread spread = nothing;
    spread.on_foot = {0.2, 0.2};
    const OddsTable table = drawn(spread);
    std::size_t pace = 0;
    while (all_assumptions[pace] != Assumption::pace_on_foot)
        ++pace;
    double least = 1e9;
    double most = 0.0;
    for (std::size_t draw = 0; draw < 40; ++draw) {
        const double factor = table.column(columns_.factor + pace)[draw];
        const double under_way_s = table.column(columns_.under_way)[draw];
        const bool slower = factor < 1.0;
        EXPECT_EQ(slower, under_way_s > 27'000.0) << factor << " " << under_way_s;
        EXPECT_NEAR(factor * under_way_s, 27'000.0, 60.0);
        least = std::min(least, under_way_s);
        most = std::max(most, under_way_s);
    }
    EXPECT_LT(least, 24'000.0); // exp(-0.2) of it would be 22 100 s
    EXPECT_GT(most, 30'000.0);
}

TEST_F(OddsColumnsDrawn, AnAppointmentIsReachedAsMuchLaterAsTheDay) {
    AssumedSpread spread = nothing;
    spread.on_foot = {0.2, 0.2};
    const OddsTable table = drawn(spread);
    for (std::size_t draw = 0; draw < 40; ++draw)
        EXPECT_NEAR(table.column(columns_.reached)[draw],
                    table.column(columns_.arrive + 1)[draw] - 8.5 * 3600.0,
                    1.0);
}

TEST_F(OddsColumnsDrawn, AWatchHearsOfEveryDrawAndStopsThem) {
    std::vector<std::size_t> heard;
    const auto drawn_until = [&](std::size_t last) {
        heard.clear();
        return draw_all({.draft = {prepared_, settled_},
                         .columns = columns_,
                         .spread = nothing,
                         .seed = 5,
                         .draws = 40,
                         .threads = 2,
                         .watch = [&](std::size_t done) {
                             heard.push_back(done);
                             return done < last;
                         }});
    };
    EXPECT_TRUE(drawn_until(41).has_value());
    ASSERT_EQ(heard.size(), 40U);
    EXPECT_EQ(heard.front(), 1U);
    EXPECT_EQ(heard.back(), 40U);
    EXPECT_FALSE(drawn_until(7).has_value());
    EXPECT_EQ(heard.back(), 7U); // told once that it is to end, it asks no more
}

} // namespace
} // namespace tumpline::planner
