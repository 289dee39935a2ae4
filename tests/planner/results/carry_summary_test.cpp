/// The portages of a whole trip in one sentence, and what it says against the portages themselves.

#include "planner/make_plan.h"
#include "planner/plan.h"
#include "planner/route/route.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/random_trip.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <string>

namespace tumpline::planner {
namespace {

Plan sample_plan(const char* name) {
    const Trip trip = read_trip(test::root / "sample-routes" / name / "trip.json");
    return make_plan(trip, build_route(trip));
}

TEST(CarrySummary, OfFourteenPortagesIsTheUsefulAnswer) {
    const Plan plan = sample_plan("fourteen-portages");
    EXPECT_EQ(plan.carrying.sentence,
              "One and a half carries to day 5, a single carry from day 6; Emrik always takes the "
              "canoe.");
    EXPECT_EQ(plan.carrying.portages, 14);
    // The sheet: 1 122 rods one way; by two carries 9 h 41 min and 16.9 km walked, by one and a
    // half 8 h 07 min and 11.3 km, by one 6 h 55 min (docs/worked-scenarios.md).
    EXPECT_NEAR(plan.carrying.length_m, 1122 * 5.0292, 1.0);
    const std::map<double, std::pair<double, double>> sheet{
        {1.0, {6 * 60 + 55, 5640.0}}, {1.5, {8 * 60 + 7, 11300.0}}, {2.0, {9 * 60 + 41, 16900.0}}};
    double planned_m = 0.0;
    for (const PlanLeg& leg : plan.legs)
        planned_m += leg.travel == Travel::portage ? leg.on_foot_m : 0.0;
    std::size_t compared = 0;
    for (const CarryWay& way : plan.carrying.ways) {
        if (!way.carries || !sheet.contains(*way.carries))
            continue;
        const auto& [minutes, walked_m] = sheet.at(*way.carries);
        EXPECT_NEAR((way.moving_s + way.changeover_s) / 60.0, minutes, 0.05 * minutes);
        EXPECT_NEAR(way.walked_m, walked_m, 0.01 * walked_m);
        EXPECT_NEAR(way.more_walked_m, way.walked_m - planned_m, 1e-6);
        ++compared;
    }
    EXPECT_EQ(compared, 3U);
}

/// Chosen ways and all ways, summed over the legs of the plan.
TEST(CarrySummary, AddsUpThePortagesOfRandomTrips) {
    int several = 0, boats = 0;
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        SCOPED_TRACE(testing::Message() << "seed " << seed);
        const test::RandomTrip random = test::random_trip(seed);
        const Plan plan = make_plan(random.trip, random.route);
        const CarrySummary& carrying = plan.carrying;
        std::vector<const PlanLeg*> portages;
        for (const PlanLeg& leg : plan.legs)
            if (leg.travel == Travel::portage)
                portages.push_back(&leg);
        ASSERT_EQ(carrying.portages, static_cast<int>(portages.size()));
        if (portages.empty()) {
            EXPECT_TRUE(carrying.sentence.empty());
            continue;
        }
        EXPECT_EQ(carrying.sentence.back(), '.');
        double moving_s = 0.0, changeover_s = 0.0, walked_m = 0.0;
        for (const PlanLeg* leg : portages) {
            moving_s += leg->moving_s;
            changeover_s += leg->changeover_s;
            walked_m += leg->on_foot_m;
        }
        const CarryWay& planned = carrying.ways.at(0);
        EXPECT_FALSE(planned.carries);
        // Where two answers took turns, the last two rounds differ by so much.
        EXPECT_NEAR(planned.moving_s,
                    moving_s,
                    plan.converged.settled ? 1.0 : 1.0 + plan.converged.largest_change_s);
        EXPECT_NEAR(planned.changeover_s, changeover_s, 1.0);
        EXPECT_NEAR(planned.walked_m, walked_m, 1e-6 * walked_m);
        EXPECT_EQ(planned.more_s, 0.0);
        for (std::size_t w = 1; w < carrying.ways.size(); ++w) {
            const CarryWay& way = carrying.ways[w];
            double sum_s = 0.0;
            int over = 0;
            for (const PlanLeg* leg : portages) {
                const auto choice =
                    std::find_if(leg->choices.begin(), leg->choices.end(), [&](const auto& one) {
                        return one.carries == way.carries && one.rolled == way.rolled;
                    });
                ASSERT_NE(choice, leg->choices.end());
                sum_s += choice->moving_s + choice->changeover_s;
                over += choice->within_limits ? 0 : 1;
            }
            EXPECT_NEAR(way.moving_s + way.changeover_s, sum_s, 1e-6 * sum_s);
            EXPECT_NEAR(
                way.more_s, sum_s - planned.moving_s - planned.changeover_s, 1e-6 * (1.0 + sum_s));
            EXPECT_EQ(way.over_limit, over);
            EXPECT_EQ(way.most_over_kg > 0.0, over > 0);
        }
        // The spans cover the portages one after the other.
        int in_spans = 0;
        for (const CarrySpan& span : carrying.spans)
            for (int k = 0; k < span.portages; ++k) {
                const PlanLeg& leg = *portages.at(static_cast<std::size_t>(in_spans++));
                EXPECT_EQ(leg.lengths, 2.0 * span.carries - 1.0);
                EXPECT_GE(leg.day, span.first_day);
                EXPECT_LE(leg.day, span.last_day);
            }
        EXPECT_EQ(in_spans, carrying.portages);
        // Who is said to take a boat has it among the pieces of a carry.
        std::map<std::string, int> done;
        for (const BoatSpan& span : carrying.boats)
            for (int k = 0; k < span.portages; ++k) {
                const PlanLeg& leg = *portages.at(static_cast<std::size_t>(done[span.craft]++));
                for (const MemberLoad& load : leg.loads) {
                    const bool takes =
                        std::any_of(load.carries.begin(), load.carries.end(), [&](const auto& one) {
                            return std::any_of(
                                one.pieces.begin(), one.pieces.end(), [&](const auto& thing) {
                                    return thing.what == span.craft;
                                });
                        });
                    const bool told =
                        std::find(span.members.begin(), span.members.end(), load.member) !=
                        span.members.end();
                    EXPECT_EQ(takes, told) << span.craft << " " << load.member;
                }
                ++boats;
            }
        several += carrying.spans.size() > 1 ? 1 : 0;
    }
    EXPECT_GT(several, 5);
    EXPECT_GT(boats, 50);
}

TEST(CarrySummary, TellsAChangeWithinADayByPortage) {
    // Stronger people: the single carry becomes possible in the middle of a day.
    Trip trip = read_trip(test::root / "sample-routes/fourteen-portages/trip.json");
    const Route route = build_route(trip);
    bool found = false;
    for (double limit_kg = 29.0; limit_kg < 33.0 && !found; limit_kg += 0.05) {
        trip.party[0].portage_limit_kg = limit_kg;
        const CarrySummary carrying = make_plan(trip, route).carrying;
        if (carrying.spans.size() != 2 || carrying.spans[0].last_day != carrying.spans[1].first_day)
            continue;
        found = true;
        const int before = carrying.spans[0].portages;
        const int day = carrying.spans[0].last_day;
        EXPECT_NE(
            carrying.sentence.find("portage (day " + std::to_string(day) + "), a single carry"),
            std::string::npos)
            << carrying.sentence;
        EXPECT_NE(carrying.sentence.find("to the " + std::to_string(before)), std::string::npos);
        EXPECT_NE(carrying.sentence.find("from the " + std::to_string(before + 1)),
                  std::string::npos);
    }
    EXPECT_TRUE(found);
}

} // namespace
} // namespace tumpline::planner
