/// The ways of doing a portage stand beside the leg that takes one of them: at the same hours.

#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <filesystem>

namespace tumpline::planner {
namespace {

/// The sample's portages, set off at an hour of a day in December.
Plan december_plan(double set_off_h) {
    Trip trip = read_trip(test::root / "sample-routes/fourteen-portages/trip.json");
    trip.start = Date{std::chrono::year{2027} / std::chrono::December / 10};
    trip.appointments.clear();
    trip.days.set_off = std::chrono::seconds{static_cast<int>(set_off_h * 3600.0)};
    return make_plan(trip, build_route(trip));
}

TEST(PortageChoices, StandAtTheHoursOfTheLeg) {
    const Plan plan = december_plan(15.0);
    int dark = 0;
    for (const PlanLeg& leg : plan.legs) {
        if (leg.travel != Travel::portage)
            continue;
        const auto chosen = std::find_if(leg.choices.begin(),
                                         leg.choices.end(),
                                         [](const CarryChoice& one) { return one.chosen; });
        ASSERT_NE(chosen, leg.choices.end());
        EXPECT_NEAR(chosen->moving_s, leg.moving_s, 1.0) << leg.leg.printed();
        dark += leg.dark_s > 0.0 ? 1 : 0;
    }
    EXPECT_GT(dark, 3); // dusk is before 17:00 there, so that most of a day's carries are after it
}

/// A portage walked wholly in the dark: each way takes as much longer as the dark makes it.
TEST(PortageChoices, AllGoSlowerInTheDark) {
    const Plan by_night = december_plan(19.0);
    const Plan by_day = december_plan(9.0);
    int compared = 0;
    for (std::size_t k = 0; k < std::min(by_night.legs.size(), by_day.legs.size()); ++k) {
        const PlanLeg& dark = by_night.legs[k];
        const PlanLeg& light = by_day.legs[k];
        if (dark.travel != Travel::portage || dark.leg != light.leg || light.dark_s > 0.0 ||
            dark.dark_s < dark.moving_s || dark.choices.size() != light.choices.size())
            continue;
        for (std::size_t c = 0; c < dark.choices.size(); ++c) {
            // The loads are those of nearly the same hour of the trip: the water differs by sips.
            EXPECT_NEAR(dark.choices[c].moving_s / light.choices[c].moving_s,
                        1.25, // on paths, four fifths of the speed [FM2118]
                        0.02);
            ++compared;
        }
    }
    EXPECT_GT(compared, 2);
}

} // namespace
} // namespace tumpline::planner
