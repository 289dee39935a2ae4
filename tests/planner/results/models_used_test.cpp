#include "planner/results/models_used.h"

#include "planner/make_plan.h"
#include "planner/models/catalogue.h"
#include "tests/support/plain_trip.h"
#include "tests/support/random_trip.h"
#include "tests/support/source_tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

/// What a plan says of its models, bands, defaults and sources.
namespace tumpline::planner {
namespace {

using test::root;
using testing::AllOf;
using testing::Contains;
using testing::Not;

std::vector<std::string> names(const Plan& plan) {
    std::vector<std::string> all;
    for (const ModelUsed& used : plan.models)
        all.push_back(used.family + "/" + used.name);
    return all;
}

/// A key of docs/references.md, a page of docs, or the word for neither.
bool is_source(const std::string& source) {
    static const std::string references = [] {
        std::ifstream in(root / "docs" / "references.md");
        return std::string(std::istreambuf_iterator<char>(in), {});
    }();
    return source == "common practice, no source" ||
           references.find("- **[" + source + "]**") != std::string::npos ||
           (source.starts_with("docs/") && std::filesystem::exists(root / source));
}

TEST(ModelUse, NamesEveryFamilyThatATripMakesUseOf) {
    test::PlainLeg dark = test::walk(4000.0);
    dark.spec.night = true;
    test::PlainLeg flowing = test::river(6000.0, 0.01);
    flowing.spec.bed = RiverBed{};
    test::PlainTrip plain = test::plain_trip({dark, test::lake(3000.0), flowing});
    plain.trip.weather.wind_mps = 3.0;
    EXPECT_THAT(names(make_plan(plain.trip, plain.route)),
                testing::UnorderedElementsAre("walking/swiss-signpost",
                                              "elevation/raster-swings",
                                              "elevation/lake-median",
                                              "elevation/river-fall",
                                              "load_effect/equal-effort",
                                              "energy/lcda-backpacking-2022",
                                              "energy_check/yamamoto-course-constant",
                                              "resting/mifflin-st-jeor-1990",
                                              "paddling/power-balance",
                                              "terrain/ground-factors",
                                              "terrain/night-factors",
                                              "compendium/compendium-2024",
                                              "river/manning",
                                              "river/jarrett-1985",
                                              "river/downstream-credit",
                                              "wind/beaufort",
                                              "wind/crossing-ceiling",
                                              "waves/fetch-limited",
                                              "drinking/effort-and-air",
                                              "food/energy-density",
                                              "stove_fuel/heat-balance"));
}

TEST(ModelUse, NamesNoFamilyThatATripHasNoUseFor) {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0)});
    plain.trip.food.ration_kg = 0.8;
    plain.trip.fuel.kg_per_litre = 0.012;
    plain.trip.water.walking_lps = 1e-4;
    plain.trip.water.paddling_lps = 1e-4;
    plain.trip.water.camp_l = 2.0;
    EXPECT_THAT(names(make_plan(plain.trip, plain.route)),
                AllOf(Contains("food/fixed-ration"),
                      Not(Contains("food/energy-density")),
                      Not(Contains("stove_fuel/heat-balance")),
                      Not(Contains("drinking/effort-and-air")),
                      Not(Contains("terrain/night-factors")),
                      Not(Contains("wind/beaufort")),
                      Not(Contains("elevation/lake-median")),
                      Not(Contains("elevation/river-fall")),
                      Not(Contains("river/downstream-credit"))));
}

TEST(ModelUse, HeightsAreNamedByWhatRecordedThem) {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0)});
    plain.route.legs[0].profile.source = geo::HeightSource::track;
    EXPECT_THAT(
        names(make_plan(plain.trip, plain.route)),
        AllOf(Contains("elevation/receiver-swings"), Not(Contains("elevation/raster-swings"))));
    plain.trip.route.recorder = HeightRecorder::barometer;
    EXPECT_THAT(
        names(make_plan(plain.trip, plain.route)),
        AllOf(Contains("elevation/barometer-swings"), Not(Contains("elevation/receiver-swings"))));
    plain.route.legs[0].profile.source = geo::HeightSource::none;
    EXPECT_THAT(names(make_plan(plain.trip, plain.route)),
                Not(Contains(testing::StartsWith("elevation/"))));
}

TEST(ModelUse, EveryModelUsedIsInTheCatalogueWithItsSource) {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        const test::RandomTrip random = test::random_trip(seed);
        for (const ModelUsed& used : make_plan(random.trip, random.route).models) {
            const std::vector<ModelEntry> all = model_catalogue();
            EXPECT_TRUE(std::any_of(all.begin(),
                                    all.end(),
                                    [&](const ModelEntry& entry) {
                                        return entry.family == used.family &&
                                               entry.name == used.name &&
                                               entry.source == used.source;
                                    }))
                << used.family << "/" << used.name;
        }
    }
}

TEST(ModelUse, TimesHaveTheirBandAndItsBasis) {
    test::PlainTrip plain = test::plain_trip({test::walk(4000.0), test::lake(3000.0)});
    plain.trip.models.walking = "sullivan-2020-moderate";
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_EQ(plan.bands.size(), 2U);
    EXPECT_EQ(plan.bands[0].family, "walking");
    EXPECT_EQ(plan.bands[1].family, "paddling");
    for (std::size_t i = 0; i < 2; ++i) {
        EXPECT_FALSE(plan.bands[i].basis.empty());
        EXPECT_NEAR(plan.legs[i].moving_low_s, plan.bands[i].low * plan.legs[i].moving_s, 1e-9);
        EXPECT_NEAR(plan.legs[i].moving_high_s, plan.bands[i].high * plan.legs[i].moving_s, 1e-9);
    }
    EXPECT_NE(plan.bands[0].basis.find("[Sullivan2020]"), std::string::npos);
}

TEST(ModelUse, SourcesOfDefaultsAndCautionsAreReferences) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        const test::RandomTrip random = test::random_trip(seed);
        const Plan plan = make_plan(random.trip, random.route);
        for (const DefaultUsed& used : plan.defaults)
            EXPECT_TRUE(is_source(used.source)) << used.key << ": " << used.source;
        for (const Caution& caution : plan.cautions)
            EXPECT_TRUE(is_source(caution.source)) << caution.code << ": " << caution.source;
    }
}

TEST(ModelUse, EstimatesWithoutATestBehindThemSaySo) {
    const auto notes = [](const test::PlainTrip& plain) {
        std::vector<std::string> texts;
        for (const Caution& caution : make_plan(plain.trip, plain.route).cautions)
            if (caution.code == "paddling-estimate")
                texts.push_back(caution.text);
        return texts;
    };
    test::PlainTrip plain = test::plain_trip({test::lake(3000.0)});
    EXPECT_TRUE(notes(plain).empty()) << "its own calm speed in calm air is no estimate";
    plain.trip.weather.wind_mps = 3.0;
    ASSERT_EQ(notes(plain).size(), 1U);
    EXPECT_NE(notes(plain)[0].find("under wind are an estimate (boat)"), std::string::npos);
    plain.trip.models.paddling = "constant";
    EXPECT_TRUE(notes(plain).empty());
    plain.trip.craft[0].calm_speed_mps.reset();
    ASSERT_EQ(notes(plain).size(), 1U);
    EXPECT_NE(notes(plain)[0].find("calm speed is an estimate (boat)"), std::string::npos);
    plain.trip.models.paddling.clear();
    EXPECT_NE(notes(plain)[0].find("So is the calm speed (boat)"), std::string::npos);
    plain.trip.craft[0].kind = CraftKind::kayak; // tested, and paddled by clubs
    EXPECT_TRUE(notes(plain).empty());
}

} // namespace
} // namespace tumpline::planner
