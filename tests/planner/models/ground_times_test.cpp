#include "planner/make_plan.h"
#include "planner/models/terrain.h"
#include "planner/models/walking_speed.h"
#include "planner/plan.h"
#include "planner/results/models_used.h"
#include "tests/support/plain_trip.h"
#include "tests/support/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>
#include <string>

/// What ground, snow, the dark and the model's own footing do to the time of a leg.
namespace tumpline::planner {
namespace {

using test::PlainLeg;
using test::walk;

/// Moving time of a kilometre without a load worth speaking of.
double time_s(const PlainLeg& leg, const char* model = "swiss-signpost") {
    test::PlainTrip plain = test::plain_trip({leg});
    plain.trip.models.walking = model;
    plain.trip.models.load_effect = "none";
    return make_plan(plain.trip, plain.route).legs[0].moving_s;
}

PlainLeg on(Terrain terrain) {
    PlainLeg leg = walk(1000.0, 0.02);
    leg.spec.terrain = terrain;
    return leg;
}

TEST(GroundTimes, TheDarkIsSlowerOffThePathThanOnIt) {
    const auto by_night = [](Terrain terrain) {
        PlainLeg leg = on(terrain);
        leg.spec.night = true;
        return time_s(leg) / time_s(on(terrain));
    };
    EXPECT_NEAR(by_night(Terrain::path), 4.0 / 3.2, 1e-9); // [FM2118]
    EXPECT_NEAR(by_night(Terrain::rough_path), 4.0 / 3.2, 1e-9);
    EXPECT_NEAR(by_night(Terrain::off_path), 2.5 / 1.6, 1e-9);
    EXPECT_NEAR(by_night(Terrain::brush), 2.5 / 1.6, 1e-9);
}

TEST(GroundTimes, DeeperSnowIsSlowerAsWellAsHarder) {
    double before_s = time_s(on(Terrain::path));
    for (const double footprint_m : {0.0, 0.05, 0.15, 0.30, 0.45}) {
        PlainLeg snow = on(Terrain::snow);
        snow.spec.footprint_m = footprint_m;
        EXPECT_GT(time_s(snow), before_s) << footprint_m;
        EXPECT_NEAR(time_s(snow) / time_s(on(Terrain::path)),
                    equal_effort_time_factor(snow_eta(footprint_m)),
                    1e-9);
        before_s = time_s(snow);
    }
    PlainLeg usual = on(Terrain::snow);
    usual.spec.footprint_m = 0.15;
    EXPECT_NEAR(time_s(usual) / time_s(on(Terrain::snow)), 1.0, 0.05);
}

TEST(GroundTimes, AModelThatKnowsOtherGroundWalksItByItsOwnCurve) {
    const double off_mps = irmischer_clarke_2018_mps(0.02, Footing::off_path);
    for (const Terrain terrain : {Terrain::forest, Terrain::off_path})
        EXPECT_NEAR(time_s(on(terrain), "irmischer-clarke"), 1000.0 / off_mps, 1e-6);
    const double on_mps = irmischer_clarke_2018_mps(0.02, Footing::on_path);
    EXPECT_NEAR(time_s(on(Terrain::path), "irmischer-clarke"), 1000.0 / on_mps, 1e-6);
    EXPECT_NEAR(time_s(on(Terrain::brush), "irmischer-clarke"),
                1000.0 / on_mps * ground("brush").time_factor,
                1e-6);
}

TEST(GroundTimes, PercentilesAndPacesOfOneStudyAreWalkedInTheirOrder) {
    double before_s = time_s(walk(1000.0), "campbell-2019");
    for (const char* const faster : {"campbell-2019-p10",
                                     "campbell-2019-p20",
                                     "campbell-2019-p30",
                                     "campbell-2019-p40",
                                     "campbell-2019-p50",
                                     "campbell-2019-p60",
                                     "campbell-2019-p70",
                                     "campbell-2019-p80",
                                     "campbell-2019-p90"}) {
        EXPECT_LT(time_s(walk(1000.0), faster), before_s) << faster;
        before_s = time_s(walk(1000.0), faster);
    }
    EXPECT_LT(time_s(walk(1000.0), "sullivan-2020-moderate"),
              time_s(walk(1000.0), "sullivan-2020"));
    EXPECT_LT(time_s(walk(1000.0), "sullivan-2020-high"),
              time_s(walk(1000.0), "sullivan-2020-moderate"));
}

// 10 km and 450 m up: 2 h 30 min and an hour [Langmuir1984].
TEST(GroundTimes, TheRuleForPartiesIsKeptStepByStep) {
    EXPECT_NEAR(time_s(walk(10'000.0, 0.045), "langmuir-party"), 3.5 * 3600.0, 1e-6);
    EXPECT_NEAR(time_s(walk(10'000.0, -0.045), "langmuir-party"), 2.5 * 3600.0, 1e-6);
}

/// Minutes for a kilometre on the map.
double minutes(WalkingModel model, double slope, double factor = 1.0) {
    return 1000.0 / 60.0 * factor / walking_speed_mps(model, slope);
}

TEST(GroundTimes, OfThePageOnChoosingAreThoseOfTheModels) {
    std::istringstream page(test::text_of(test::root / "docs/models/choosing.md"));
    int rows = 0;
    bool here = false;
    for (std::string line; std::getline(page, line);) {
        if (line.starts_with("## "))
            here = line == "## On several kinds of ground";
        if (!here || !line.starts_with("| `"))
            continue;
        std::istringstream row(line.substr(2));
        std::string name;
        std::getline(row, name, '|');
        const auto model = walking_model(name.substr(1, name.size() - 3));
        ASSERT_TRUE(model) << line;
        const double off_path =
            walking_model_knows_footing(*model)
                ? 1000.0 / 60.0 / walking_speed_mps(*model, 0.0, Footing::off_path)
                : minutes(*model, 0.0, ground("off-path").time_factor);
        for (const double wanted : {minutes(*model, 0.0),
                                    minutes(*model, 0.1),
                                    minutes(*model, -0.1),
                                    minutes(*model, 0.2),
                                    minutes(*model, -0.2),
                                    minutes(*model, 0.0, ground("rough-path").time_factor),
                                    off_path}) {
            double shown = 0.0;
            char bar = ' ';
            row >> shown >> bar;
            EXPECT_NEAR(shown, wanted, 0.0501) << line;
        }
        ++rows;
    }
    EXPECT_EQ(rows, 9);
}

} // namespace
} // namespace tumpline::planner
