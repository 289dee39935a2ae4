#include "planner/cautions/model_range_cautions.h"

#include "planner/make_plan.h"
#include "planner/models/drinking.h"
#include "tests/support/plain_trip.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

/// Every model that is used outside its range says so once, with the value and the range.
namespace tumpline::planner {
namespace {

using test::cautions_of;
using test::lake;
using test::plain_trip;
using test::PlainTrip;
using test::river;
using test::thing;
using test::walk;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::string> outside(const PlainTrip& plain) {
    return cautions_of(plain, "outside-model-range");
}

TEST(ModelRanges, ATripWithinAllOfThemSaysNothing) {
    PlainTrip plain = plain_trip({walk(8000.0, 0.05), lake(4000.0), river(6000.0, 0.002)});
    plain.trip.route.legs[2].current_mps = 0.5;
    plain.route.legs[2].spec.current_mps = 0.5;
    EXPECT_THAT(outside(plain), IsEmpty());
    EXPECT_THAT(cautions_of(plain, "gradient-short"), IsEmpty());
    EXPECT_THAT(cautions_of(plain, "drinking-over-limit"), IsEmpty());
}

TEST(ModelRanges, ASlopeBeyondTheWalkingModelIsToldWithItsLength) {
    PlainTrip plain = plain_trip({walk(300.0, 0.47)});
    plain.trip.models.energy = "pandolf-santee"; // holds uphill whatever the slope
    EXPECT_THAT(outside(plain),
                ElementsAre("Outside the range of swiss-signpost: slope +47.0 % over 300 m (covers "
                            "-40.0 to +40.0 %)."));
    plain.trip.models.walking = "naismith-langmuir"; // holds to 58 %
    EXPECT_THAT(outside(plain), IsEmpty());
    plain.trip.models.walking = "constant"; // does not ask for the slope
    EXPECT_THAT(outside(plain), IsEmpty());
}

TEST(ModelRanges, AreToldInBothSystemsOfUnits) {
    PlainTrip plain = plain_trip({walk(3000.0, 0.7)});
    plain.trip.models.walking = "sullivan-2020";
    plain.trip.models.energy = "pandolf-santee";
    const Plan plan = make_plan(plain.trip, plain.route);
    const auto said = std::find_if(plan.cautions.begin(), plan.cautions.end(), [](const auto& one) {
        return one.text.find("sullivan-2020: slope") != std::string::npos;
    });
    ASSERT_NE(said, plan.cautions.end());
    EXPECT_THAT(said->text, AllOf(HasSubstr("over 3.0 km"), HasSubstr("(covers 18.0 to 39.0 kg)")));
    EXPECT_THAT(said->imperial,
                AllOf(HasSubstr("slope +70.0 % over 1.9 mi"), // 3 / 1.609344
                      HasSubstr("(covers 40 to 86 lb)")));    // 18 and 39 / 0.45359237
}

TEST(ModelRanges, ALegIsToldOnceHoweverManyDaysAndPiecesItHas) {
    PlainTrip plain = plain_trip({walk(60'000.0, -0.45), walk(500.0, -0.45)});
    plain.trip.models.energy = "compendium-met";
    plain.trip.days.hours = 5.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    ASSERT_GT(plan.days.size(), 2U);
    int first_leg = 0, second_leg = 0;
    for (const Caution& caution : plan.cautions)
        if (caution.code == "outside-model-range" &&
            caution.text.find("swiss-signpost") != std::string::npos)
            ++(caution.leg == LegNumber{1} ? first_leg : second_leg);
    EXPECT_EQ(first_leg, 1);
    EXPECT_EQ(second_leg, 1);
}

TEST(ModelRanges, ALoadBeyondTheStudyOfItsEffectIsTold) {
    PlainTrip plain = plain_trip({walk(3000.0)});
    plain.trip.kit = {thing("stone", 50.0)};
    plain.trip.models.energy = "pandolf-santee"; // to 70 kg
    EXPECT_THAT(outside(plain),
                ElementsAre(AllOf(HasSubstr("equal-effort: load 0.7"),
                                  HasSubstr("of body mass (covers up to 0.66 of body mass)"))));
    plain.trip.models.load_effect = "none";
    EXPECT_THAT(outside(plain), IsEmpty());
}

TEST(ModelRanges, EachEnergyModelTellsWhatItDoesNotCover) {
    PlainTrip plain = plain_trip({walk(1000.0, -0.20)});
    plain.trip.food.reserve_days = 0.0; // nearly nothing is carried
    const auto with = [&](const char* model) {
        plain.trip.models.energy = model;
        return outside(plain);
    };
    EXPECT_THAT(with("lcda-backpacking-2022"), IsEmpty());
    EXPECT_THAT(with("pandolf-santee"),
                ElementsAre("Outside the range of pandolf-santee: slope -20.0 % (covers from "
                            "-12.0 %)."));
    EXPECT_THAT(with("ludlow-weyand-2017"),
                ElementsAre(AllOf(HasSubstr("ludlow-weyand-2017"),
                                  HasSubstr("slope -20.0 % (covers -10.5 to +15.8 %)"))));
    plain.trip.party[0].pace = 0.6;
    EXPECT_THAT(with("lcda-backpacking-2022"), IsEmpty());
    EXPECT_THAT(with("compendium-met"),
                ElementsAre(AllOf(HasSubstr("compendium-met: speed 0.5"),
                                  HasSubstr("(covers from 0.9 m/s)"))));
    plain.trip.party[0].pace = 0.3;
    EXPECT_THAT(with("lcda-backpacking-2022"),
                ElementsAre(AllOf(HasSubstr("lcda-backpacking-2022: speed 0.2"),
                                  HasSubstr("(covers 0.45 to 1.97 m/s)"))));
}

TEST(ModelRanges, SandIsNoTreadmill) {
    test::PlainLeg dunes = walk(1000.0);
    dunes.spec.terrain = Terrain::sand;
    PlainTrip plain = plain_trip({dunes});
    plain.trip.models.energy = "ludlow-weyand-2017";
    EXPECT_THAT(outside(plain),
                ElementsAre("Outside the range of ludlow-weyand-2017: ground 2.1 (covers up to "
                            "1.1)."));
}

TEST(ModelRanges, CrewsUnderPacksSayNothingOfLightLoads) {
    PlainTrip plain = plain_trip({walk(3000.0)});
    for (const char* const pace : {"sullivan-2020", "sullivan-2020-moderate"}) {
        plain.trip.models.walking = pace;
        plain.trip.kit = {thing("pack", 25.0)};
        EXPECT_THAT(outside(plain), IsEmpty()) << pace;
        plain.trip.kit.clear();
        EXPECT_THAT(outside(plain),
                    ElementsAre(AllOf(HasSubstr(std::string(pace) + ": load "),
                                      HasSubstr("(covers 18.0 to 39.0 kg)"))));
    }
}

TEST(ModelRanges, FootprintsDeeperThanWadingAreTold) {
    test::PlainLeg drift = walk(1000.0);
    drift.spec.terrain = Terrain::snow;
    drift.spec.footprint_m = 0.6;
    PlainTrip plain = plain_trip({drift});
    plain.trip.models.energy = "pandolf-santee";
    EXPECT_THAT(outside(plain),
                ElementsAre("Outside the range of ground-factors: footprints 0.60 m (covers up to "
                            "0.45 m)."));
    plain.route.legs[0].spec.footprint_m = 0.45;
    EXPECT_THAT(outside(plain), IsEmpty());
}

TEST(ModelRanges, AgesThatTheDefaultDoesNotCoverHaveAModelOfTheirOwn) {
    PlainTrip plain = plain_trip({walk(3000.0), walk(3000.0)});
    const auto resting = [&] {
        std::vector<std::string> names;
        for (const ModelUsed& used : make_plan(plain.trip, plain.route).models)
            if (used.family == "resting")
                names.push_back(used.name);
        return names;
    };
    EXPECT_THAT(resting(), ElementsAre("mifflin-st-jeor-1990"));
    for (const double age_years : {15.0, 85.0}) {
        plain.trip.party[0].age_years = age_years;
        EXPECT_THAT(outside(plain), IsEmpty());
        EXPECT_THAT(resting(), ElementsAre("mifflin-st-jeor-1990", "schofield-1985"));
    }
}

TEST(ModelRanges, WindBeyondTheBalanceIsTold) {
    PlainTrip plain = plain_trip({lake(3000.0)});
    plain.trip.weather.wind_mps = 17.0;
    plain.trip.weather.wind_from_deg = 0.0; // the leg goes north
    EXPECT_THAT(outside(plain),
                ElementsAre(AllOf(HasSubstr("power-balance: head wind 17 m/s over 3.0 km"),
                                  HasSubstr("(covers -20 to 15 m/s)"))));
    plain.trip.weather.wind_from_deg = 90.0; // across
    EXPECT_THAT(outside(plain), IsEmpty());
    plain.route.legs[0].spec.shelter = 0.5;
    plain.trip.weather.wind_from_deg = 0.0;
    EXPECT_THAT(outside(plain), IsEmpty());
}

TEST(ModelRanges, AModelWithoutWindIsForLightWinds) {
    PlainTrip plain = plain_trip({lake(3000.0)});
    plain.trip.models.paddling = "constant";
    plain.trip.weather.wind_mps = 5.0;
    EXPECT_THAT(outside(plain),
                ElementsAre("Outside the range of constant: wind 5 m/s over 3.0 km (covers up to 3 "
                            "m/s)."));
    plain.trip.weather.wind_mps = 3.0;
    EXPECT_THAT(outside(plain), IsEmpty());
}

TEST(ModelRanges, ACalmSpeedAboveTheBowWaveIsTold) {
    PlainTrip plain = plain_trip({lake(3000.0)});
    plain.trip.craft[0].calm_speed_mps = 2.2;
    EXPECT_THAT(outside(plain),
                ElementsAre(AllOf(HasSubstr("calm speed of boat, 2.2 m/s (covers up to 1.85 m/s)"),
                                  HasSubstr("Froude number 0.40"))));
    plain.trip.craft[0].kind = CraftKind::kayak;
    EXPECT_THAT(outside(plain), IsEmpty());
}

TEST(ModelRanges, ATorrentIsNoRiverToEstimate) {
    test::PlainLeg torrent = river(3000.0, 0.12);
    torrent.spec.bed = RiverBed{"mountain-cobble-large-boulders", 0.8, std::nullopt};
    EXPECT_THAT(outside(plain_trip({torrent})),
                ElementsAre("Outside the range of jarrett-1985: slope +12.0 % (covers up to +9.0 "
                            "%)."));
    torrent.slope = -0.05;
    torrent.spec.bed->depth_m = 3.0;
    EXPECT_THAT(outside(plain_trip({torrent})),
                ElementsAre(HasSubstr("depth 3.00 m (covers 0.15 to 2.13 m)")));
    torrent.spec.bed->depth_m = 1.0;
    EXPECT_THAT(outside(plain_trip({torrent})), IsEmpty());
    torrent.slope = -0.004; // so gentle that his figure would be the smoother one
    torrent.spec.bed->depth_m = 3.0;
    EXPECT_THAT(outside(plain_trip({torrent})), IsEmpty());
}

TEST(ModelRanges, AShortRiverHasNoGradientToSpeakOf) {
    EXPECT_THAT(
        cautions_of(plain_trip({river(1500.0, 0.003)}), "gradient-short"),
        ElementsAre(AllOf(HasSubstr("3.0 m/km"), HasSubstr("1.5 km"), HasSubstr("2.0 km"))));
    EXPECT_THAT(cautions_of(plain_trip({river(2500.0, 0.003)}), "gradient-short"), IsEmpty());
    EXPECT_THAT(cautions_of(plain_trip({river(2500.0, 0.0005)}), "gradient-short"),
                ElementsAre(HasSubstr("5 km")));
}

TEST(ModelRanges, FoodThatNobodyLivesOnIsTold) {
    PlainTrip plain = plain_trip({walk(3000.0)});
    plain.trip.food.energy_density_j_per_kg = 7.0e3 * 4184.0;
    EXPECT_THAT(outside(plain),
                ElementsAre("Outside the range of energy-density: density 7.0 kcal/g (covers 1.5 "
                            "to 6.0 kcal/g)."));
    plain.trip.food.ration_kg = 0.4;
    EXPECT_THAT(outside(plain),
                ElementsAre("Outside the range of fixed-ration: ration 0.40 kg a day (covers 0.68 "
                            "to 1.13 kg a day)."));
    for (const double end_kg : {0.68, 2.5 * 0.45359237}) { // as it is printed, and as it is
        plain.trip.food.ration_kg = end_kg;
        EXPECT_THAT(outside(plain), IsEmpty()) << end_kg;
    }
    plain.trip.food.ration_kg = 0.9;
    EXPECT_THAT(outside(plain), IsEmpty());
}

TEST(ModelRanges, HeatBeyondTheLineIsToldUnlessTheRatesAreGiven) {
    PlainTrip plain = plain_trip({walk(3000.0)});
    plain.trip.weather.high_c = 48.0;
    EXPECT_THAT(outside(plain),
                ElementsAre("Outside the range of effort-and-air: air 48 C (covers -30 to 45 C)."));
    plain.trip.water.walking_lps = 0.5 / 3600.0;
    plain.trip.water.paddling_lps = 0.5 / 3600.0;
    plain.trip.water.camp_l = 2.0;
    EXPECT_THAT(outside(plain), IsEmpty());
}

TEST(ModelRanges, DrinkingMoreThanABodyShouldIsACaution) {
    PlainTrip plain = plain_trip({walk(3000.0), walk(3000.0)});
    plain.trip.water.walking_lps = 1.6 / 3600.0;
    const Plan plan = make_plan(plain.trip, plain.route);
    std::vector<std::string> texts;
    for (const Caution& caution : plan.cautions)
        if (caution.code == "drinking-over-limit") {
            EXPECT_EQ(caution.level, Level::caution);
            EXPECT_EQ(caution.source, "TBMED507");
            texts.push_back(caution.text);
        }
    EXPECT_THAT(texts, ElementsAre(HasSubstr("1.60 L an hour are planned, more than the 1.42 L")));

    PlainTrip long_day = plain_trip({walk(36'000.0)});
    long_day.trip.days.hours = 12.0;
    long_day.trip.water.walking_lps = 1.4 / 3600.0;
    const Plan drunk = make_plan(long_day.trip, long_day.route);
    ASSERT_GT(drunk.days[0].members[0].water_l, most_drunk_per_day_l);
    EXPECT_THAT(cautions_of(long_day, "drinking-over-limit"),
                ElementsAre(AllOf(HasSubstr("Ada would drink 1"), HasSubstr("11.4 L"))));
}

} // namespace
} // namespace tumpline::planner
