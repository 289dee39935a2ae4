/// Texts in both systems of units.

#include "planner/quantities/unit_text.h"

#include "planner/make_plan.h"
#include "planner/plan.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace tumpline::planner {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(UnitText, FillsFiguresInBothSystemsAndWordsAsTheyAre) {
    const UnitText text = format_both("{} carries {} over {} in {} of wind; \"{}\".",
                                      "Ada",
                                      in_both(show_mass, 23.7), // 52.25 lb
                                      in_both(show_distance, 1609.344 * 3.0),
                                      wind_words(10.0), // 36 km/h, 22.4 mph
                                      std::string("{}"));
    EXPECT_EQ(text.metric, "Ada carries 23.7 kg over 4.8 km in 36 km/h of wind; \"{}\".");
    EXPECT_EQ(text.imperial, "Ada carries 52.2 lb over 3.0 mi in 22 mph of wind; \"{}\".");
    const UnitText nested = format_both("{} Stop.", text);
    EXPECT_EQ(nested.imperial, text.imperial + " Stop.");
    EXPECT_EQ(UnitText("plain").imperial, "plain");
}

TEST(UnitText, OfAPackOverItsLimitIsInPoundsToo) {
    test::PlainTrip plain = test::plain_trip({test::walk(3000.0)});
    plain.trip.party[0].carry_limit_kg = 10.0;
    plain.trip.kit = {test::thing("stone", 20.0)};
    const Plan plan = make_plan(plain.trip, plain.route);
    const auto over = std::find_if(plan.cautions.begin(), plan.cautions.end(), [](const auto& one) {
        return one.code == "pack-over-limit";
    });
    ASSERT_NE(over, plan.cautions.end());
    EXPECT_THAT(over->text, HasSubstr("over the limit of 10.0 kg"));
    EXPECT_THAT(over->imperial, HasSubstr("over the limit of 22.0 lb"));
    EXPECT_THAT(over->imperial, Not(HasSubstr("kg")));
}

} // namespace
} // namespace tumpline::planner
