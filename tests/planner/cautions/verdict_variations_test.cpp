/// Sample trips, each spoilt in one way, against the verdict that a careful leader would give.

#include "planner/cautions/verdict.h"
#include "planner/make_plan.h"
#include "planner/route/route_build.h"
#include "planner/trip/trip_file.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>
#include <string>
#include <vector>

namespace tumpline::planner {
namespace {

constexpr VerdictLevel cannot = VerdictLevel::cannot;
constexpr VerdictLevel breaks = VerdictLevel::breaks;
constexpr VerdictLevel clear = VerdictLevel::clear;

struct Variation {
    std::string what;
    std::string sample;
    std::vector<Setting> settings;
    VerdictLevel level;
    std::string code; ///< under the verdict; empty: none is asked for
};

void PrintTo(const Variation& one, std::ostream* out) {
    *out << one.what;
}

const std::vector<Variation> variations{
    // as they are
    {"saddle as it is", "saddle", {}, clear, ""},
    {"three days over the pass as they are", "three-day-pass", {}, clear, "exposed-crossing"},
    {"the desert river as it is", "desert-river", {}, clear, "near-miss"},
    {"the lake chain as it is", "lake-chain", {}, clear, "cool-water-suit"},
    {"class III for people of class I", "five-over-two-passes", {}, cannot, "class-over-party"},
    // too heavy
    {"one limit of 15 kg",
     "saddle",
     {{"/party/0/carry_limit", "15 kg"}},
     breaks,
     "pack-over-limit"},
    {"one limit of 18 kg",
     "saddle",
     {{"/party/1/carry_limit", "18 kg"}},
     breaks,
     "pack-over-limit"},
    {"ten kilograms more", "saddle", {{"/kit/14/mass", "12 kg"}}, breaks, "pack-over-limit"},
    {"a thing of 60 kg", "saddle", {{"/kit/14/mass", "60 kg"}}, cannot, "item-over-limits"},
    {"a thing over a limit that is assumed",
     "saddle",
     {{"/party/0", R"({"name": "Ada", "body": "68 kg"})"},
      {"/kit/14/mass", "21 kg"},
      {"/water/capacity", "8 L"}},
     breaks,
     "item-over-limits"},
    {"a boat over its payload",
     "saddle",
     {{"/craft/0/payload", "60 kg"}},
     cannot,
     "craft-over-payload"},
    {"little freeboard",
     "saddle",
     {{"/craft/0/waterplane", "1 m2"}, {"/craft/0/freeboard", "16 cm"}},
     breaks,
     "low-freeboard"},
    {"no freeboard",
     "saddle",
     {{"/craft/0/waterplane", "0.5 m2"}, {"/craft/0/freeboard", "2 cm"}},
     cannot,
     "low-freeboard"},
    {"a thing larger than the bags",
     "saddle",
     {{"/kit/14/volume", "200 L"}},
     breaks,
     "bags-too-small"},
    {"a limit of 12 kg in the desert",
     "desert-river",
     {{"/party/0/carry_limit", "12 kg"}},
     breaks,
     "pack-over-limit"},
    // too late
    {"the bus missed by hours",
     "saddle",
     {{"/appointments/0/by", "09:00"}},
     breaks,
     "appointment-missed"},
    {"a bus that must not be missed",
     "saddle",
     {{"/appointments/0/by", "09:00"}, {"/appointments/0/hard", "true"}},
     cannot,
     "appointment-missed"},
    {"a margin that is not kept",
     "saddle",
     {{"/appointments/0/margin", "12 h"}},
     breaks,
     "appointment-missed"},
    {"the bus of the three days at noon",
     "three-day-pass",
     {{"/appointments/0/by", "10:00"}},
     breaks,
     "appointment-missed"},
    {"days of three hours", "saddle", {{"/days/hours", "3"}}, breaks, "longer-than-asked"},
    {"a limit of three hours",
     "saddle",
     {{"/days/hours", "3"}, {"/days/hours_limit", "3"}},
     cannot,
     "hours-over-limit"},
    {"setting off in the afternoon of October",
     "saddle",
     {{"/start", "2027-10-18"}, {"/days/set_off", "15:00"}},
     breaks,
     "after-dusk"},
    {"the same where dusk is a limit",
     "saddle",
     {{"/start", "2027-10-18"}, {"/days/set_off", "15:00"}, {"/days/dusk_is_limit", "true"}},
     cannot,
     "after-dusk"},
    {"setting off in the dark",
     "saddle",
     {{"/start", "2027-10-18"}, {"/days/set_off", "05:00"}},
     clear,
     "before-dawn"},
    {"a day of rest that no night follows",
     "saddle",
     {{"/days/rest_days_after", "[9]"}},
     clear,
     "rest-day-unused"},
    // too hard
    {"class V for an unknown crew",
     "saddle",
     {{"/route/legs/5/class", "V"}},
     breaks,
     "class-unjudged"},
    {"class III for an unknown crew",
     "saddle",
     {{"/route/legs/5/class", "III"}},
     breaks,
     "class-unjudged"},
    {"class III for one of class II",
     "saddle",
     {{"/route/legs/5/class", "III"}, {"/party/0/class", "II"}},
     cannot,
     "class-over-party"},
    {"class III for a boat of class II",
     "saddle",
     {{"/route/legs/5/class", "III"}, {"/craft/0/class", "II"}},
     cannot,
     "class-over-craft"},
    {"class III for those who paddle it",
     "saddle",
     {{"/route/legs/5/class", "III"}, {"/party/0/class", "III"}, {"/party/1/class", "III"}},
     clear,
     "class-hard"},
    {"a river of no known class",
     "saddle",
     {{"/route/legs/6",
       R"({"name": "Lower river", "travel": "paddle", "track": "lower river", "water": "river", "current": "3.5 km/h"})"}},
     clear,
     "class-unknown"},
    // wind and current
    {"an open crossing at force 7",
     "saddle",
     {{"/route/legs/2/open_crossing", "true"}, {"/weather/wind", "15 m/s"}},
     cannot,
     "exposed-crossing"},
    {"the crossing of the three days at force 7",
     "three-day-pass",
     {{"/weather/wind", "15 m/s"}},
     cannot,
     "exposed-crossing"},
    {"a lake above the boats' ceiling",
     "saddle",
     {{"/craft/0/wind_ceiling", "2 m/s"}},
     breaks,
     "wind-over-ceiling"},
    {"a crossing above the boats' ceiling",
     "saddle",
     {{"/craft/0/wind_ceiling", "2 m/s"}, {"/route/legs/2/open_crossing", "true"}},
     cannot,
     "exposed-crossing"},
    {"a lake chain above the canoe's ceiling",
     "lake-chain",
     {{"/craft/0/wind_ceiling", "1 m/s"}},
     breaks,
     "wind-over-ceiling"},
    {"against a current",
     "saddle",
     {{"/route/legs/5/current", "-9 km/h"}},
     cannot,
     "current-stops-boat"},
    // boats and camps
    {"no boat", "saddle", {{"/craft", "[]"}}, cannot, "no-craft"},
    {"no seat for one", "saddle", {{"/craft/1/crew", "[]"}}, cannot, "no-craft"},
    {"a camp that is closed",
     "saddle",
     {{"/route/places/3/closed", R"(["2027-06-18"])"}},
     cannot,
     "camp-closed"},
    {"a camp for one", "saddle", {{"/route/places/3/holds", "1"}}, cannot, "camp-too-small"},
    // left at home
    {"a life jacket left at home", "saddle", {{"/kit/7/bring", "false"}}, breaks, "left-at-home"},
    {"a life jacket left at home on the lakes",
     "fourteen-portages",
     {{"/kit/13/bring", "false"}},
     breaks,
     "left-at-home"},
    {"a life jacket in a bag", "saddle", {{"/kit/7/afloat", "packed"}}, breaks, "jacket-stowed"},
    {"a dry suit left, water at 9 C",
     "saddle",
     {{"/kit/9/bring", "false"}},
     breaks,
     "left-at-home"},
    {"a dry suit for less than 8 C, water at 9 C",
     "saddle",
     {{"/kit/9/when", R"({"water_below": "8 C"})"}},
     breaks,
     "left-at-home"},
    {"a throw bag left at class II", "saddle", {{"/kit/4/bring", "false"}}, breaks, "left-at-home"},
    {"a helmet left at class II", "saddle", {{"/kit/8/bring", "false"}}, clear, ""},
    {"a helmet left at class III",
     "saddle",
     {{"/kit/8/bring", "false"}, {"/route/legs/5/class", "III"}, {"/party/0/class", "III"}},
     breaks,
     "left-at-home"},
    {"first aid left at home", "saddle", {{"/kit/2/bring", "false"}}, breaks, "left-at-home"},
    {"the tent left at home", "saddle", {{"/kit/0/bring", "false"}}, breaks, "left-at-home"},
    // food, water, air
    {"vessels of two litres in the desert",
     "desert-river",
     {{"/water/capacity", "2 L"}},
     cannot,
     "water-over-capacity"},
    {"little to drink", "saddle", {{"/water/walking", "0.1 L/h"}}, clear, "drinking-too-little"},
    {"a ration of 300 g", "saddle", {{"/food/ration", "300 g"}}, clear, "ration-low"},
    {"half of what is spent", "saddle", {{"/food/replace", "0.5"}}, clear, "ration-low"},
    {"frost", "saddle", {{"/weather/low", "-5 C"}}, clear, "ice-on-water"},
    {"heat",
     "desert-river",
     {{"/weather/0/high", "38 C"}, {"/party/0/carry_limit", "40 kg"}, {"/water/capacity", "30 L"}},
     clear,
     "heat"},
    {"no wind and no water temperature known",
     "saddle",
     {{"/weather", R"({"high": "16 C", "rain": true})"}},
     clear,
     "wind-unknown"},
    {"a boat of no known payload",
     "saddle",
     {{"/craft/0",
       R"({"name": "red boat", "mass": "3.3 kg", "crew": ["Ada"], "calm_speed": "4.5 km/h"})"}},
     clear,
     "payload-unknown"},
};

Plan plan_of(const Variation& one) {
    const Trip trip =
        read_trip(test::root / "sample-routes" / one.sample / "trip.json", one.settings);
    return make_plan(trip, build_route(trip));
}

bool names(const std::vector<VerdictReason>& reasons, const std::string& code) {
    return std::any_of(reasons.begin(), reasons.end(), [&](const VerdictReason& one) {
        return one.code == code && !one.title.empty() && one.count > 0 &&
               one.line.metric.find(one.title) == 0;
    });
}

class VerdictVariations : public testing::TestWithParam<Variation> {};

TEST_P(VerdictVariations, HasItsLevelAndItsReason) {
    const Plan plan = plan_of(GetParam());
    const Verdict& verdict = plan.verdict;
    std::string told;
    for (const VerdictReason& one : verdict.reasons)
        told += one.line.metric + "\n";
    for (const VerdictReason& one : verdict.also)
        told += "also: " + one.line.metric + "\n";
    EXPECT_EQ(verdict_word(verdict.level), verdict_word(GetParam().level)) << told;
    EXPECT_EQ(plan.can_be_carried_out(), verdict.level != cannot);
    if (!GetParam().code.empty()) {
        EXPECT_TRUE(names(verdict.level == clear ? verdict.also : verdict.reasons, GetParam().code))
            << told;
    }
}

INSTANTIATE_TEST_SUITE_P(SpoiltTrips, VerdictVariations, testing::ValuesIn(variations));

} // namespace
} // namespace tumpline::planner
