#include "geo/profiles/profile.h"

#include "geo/lines/geodesic.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace tumpline::geo {
namespace {

/// A straight line northwards with heights that are a function of the distance along.
struct Walk {
    Polyline line;
    PointHeights heights;
};

struct Spacing {
    double length_m;
    double point_m;
};

Walk walk_over(const Spacing& spacing, const std::function<double(double)>& height_m) {
    const Position start{.lat_deg = 61.5, .lon_deg = 12.25};
    std::vector<Position> points;
    PointHeights heights;
    const auto count = static_cast<std::size_t>(std::round(spacing.length_m / spacing.point_m));
    for (std::size_t i = 0; i <= count; ++i) {
        const double along_m =
            spacing.length_m * static_cast<double>(i) / static_cast<double>(count);
        points.push_back(destination(start, 0.0, along_m));
        heights.emplace_back(height_m(along_m));
    }
    return {.line = Polyline(std::move(points)), .heights = std::move(heights)};
}

Profile profile_of(const Walk& walk, Surface surface = Surface::land) {
    return make_profile(walk.line, walk.heights, nullptr, surface, {});
}

double hills(double along_m) {
    return 300.0 + 40.0 * std::sin(along_m / 180.0) + 15.0 * std::sin(along_m / 70.0);
}

TEST(Profile, ABareRampIsExact) {
    for (const double rise_m : {1000.0, 25.0, 3.0, 0.25, -3.0, -700.0}) {
        const Profile profile =
            profile_of(walk_over({.length_m = 5000.0, .point_m = 20.0}, [&](double along_m) {
                return 200.0 + rise_m * along_m / 5000.0;
            }));
        EXPECT_NEAR(profile.ascent_m, std::max(rise_m, 0.0), 1e-6);
        EXPECT_NEAR(profile.descent_m, std::max(-rise_m, 0.0), 1e-6);
        EXPECT_EQ(profile.source, HeightSource::track);
        EXPECT_EQ(profile.unknown, 0U);
        EXPECT_EQ(profile.threshold_m, 10.0);
    }
}

TEST(Profile, StepsAreEvenAndFittedToTheLength) {
    const Profile profile =
        profile_of(walk_over({.length_m = 1010.0, .point_m = 10.0}, [](double) { return 5.0; }));
    EXPECT_EQ(profile.heights_m.size(), 41U);
    EXPECT_NEAR(profile.step_m, 1010.0 / 40.0, 1e-6);
    EXPECT_NEAR(profile.length_m, 1010.0, 1e-6);
}

TEST(Profile, HalvingThePointSpacingHardlyChangesTheAscent) {
    const double coarse_m =
        profile_of(walk_over({.length_m = 12'000.0, .point_m = 20.0}, hills)).ascent_m;
    const double fine_m =
        profile_of(walk_over({.length_m = 12'000.0, .point_m = 10.0}, hills)).ascent_m;
    const double finer_m =
        profile_of(walk_over({.length_m = 12'000.0, .point_m = 5.0}, hills)).ascent_m;
    EXPECT_GT(coarse_m, 500.0);
    EXPECT_NEAR(fine_m, coarse_m, 0.02 * coarse_m);
    EXPECT_NEAR(finer_m, fine_m, 0.02 * fine_m);
}

TEST(Profile, HalvingTheStepHardlyChangesTheAscent) {
    const Walk walk = walk_over({.length_m = 12'000.0, .point_m = 10.0}, hills);
    const double usual_m = profile_of(walk).ascent_m;
    const double fine_m =
        make_profile(walk.line, walk.heights, nullptr, Surface::land, {.step_m = 12.5}).ascent_m;
    EXPECT_NEAR(fine_m, usual_m, 0.02 * usual_m);
}

TEST(Profile, TurningRoundSwapsAscentAndDescent) {
    const Walk walk = walk_over({.length_m = 7300.0, .point_m = 13.0},
                                [](double along_m) { return hills(along_m) + 0.02 * along_m; });
    PointHeights back = walk.heights;
    std::reverse(back.begin(), back.end());
    const Profile there = profile_of(walk);
    const Profile home = make_profile(walk.line.reversed(), back, nullptr, Surface::land, {});
    EXPECT_NEAR(there.ascent_m, home.descent_m, 1e-6);
    EXPECT_NEAR(there.descent_m, home.ascent_m, 1e-6);
}

TEST(Profile, PlainSumOfRisesIsTheAscent) {
    const Profile profile = profile_of(walk_over({.length_m = 9000.0, .point_m = 8.0}, hills));
    const Climb sum = climb(profile.heights_m, 0.0);
    EXPECT_DOUBLE_EQ(sum.ascent_m, profile.ascent_m);
    EXPECT_DOUBLE_EQ(sum.descent_m, profile.descent_m);
}

TEST(Profile, LakesAreLevelAndRiversOnlyFall) {
    const Walk walk = walk_over({.length_m = 6000.0, .point_m = 20.0}, hills);
    const Profile lake = profile_of(walk, Surface::level_water);
    EXPECT_EQ(lake.ascent_m, 0.0);
    EXPECT_EQ(lake.descent_m, 0.0);
    EXPECT_EQ(lake.threshold_m, 0.0);
    const Profile river = profile_of(walk, Surface::falling_river);
    EXPECT_EQ(river.ascent_m, 0.0);
    const Profile upstream = profile_of(walk, Surface::rising_river);
    EXPECT_EQ(upstream.descent_m, 0.0);
}

TEST(Profile, ARiverOfEvenFallIsExactBothWays) {
    const Walk walk = walk_over({.length_m = 6000.0, .point_m = 20.0},
                                [](double along_m) { return 90.0 - 0.001 * along_m; });
    EXPECT_NEAR(profile_of(walk, Surface::falling_river).descent_m, 6.0, 1e-6);
    PointHeights back = walk.heights;
    std::reverse(back.begin(), back.end());
    const Profile up = make_profile(walk.line.reversed(), back, nullptr, Surface::rising_river, {});
    EXPECT_NEAR(up.ascent_m, 6.0, 1e-6);
}

TEST(Profile, ShortVoidsAreFilledAndCounted) {
    Walk walk = walk_over({.length_m = 4000.0, .point_m = 20.0},
                          [](double along_m) { return 0.05 * along_m; });
    for (std::size_t i = 50; i <= 65; ++i) // heights are known up to 980 m and from 1320 m
        walk.heights[i].reset();
    const Profile profile = profile_of(walk);
    EXPECT_NEAR(profile.ascent_m, 200.0, 1e-6);
    EXPECT_EQ(profile.interpolated, 13U); // at 1000, 1025, ... 1300 m
    EXPECT_EQ(profile.unknown, 0U);
    ASSERT_EQ(profile.gaps.size(), 1U);
    EXPECT_FALSE(profile.gaps.front().unknown);
    EXPECT_NEAR(profile.gaps.front().from_m, 975.0, 1e-6);
    EXPECT_NEAR(profile.gaps.front().to_m, 1325.0, 1e-6);
}

TEST(Profile, ThePointsBesideAHoleKeepTheirHeights) {
    Walk walk = walk_over({.length_m = 1000.0, .point_m = 10.0},
                          [](double along_m) { return 100.0 + 0.2 * along_m; });
    walk.heights[1].reset();
    walk.heights[walk.heights.size() - 2].reset();
    const Profile profile = profile_of(walk);
    EXPECT_NEAR(profile.heights_m.front(), 100.0, 1e-6);
    EXPECT_NEAR(profile.heights_m.back(), 300.0, 1e-6);
    EXPECT_NEAR(profile.ascent_m, 200.0, 1e-6);
}

TEST(Profile, LongVoidsStayUnknownAndAreCounted) {
    Walk walk = walk_over({.length_m = 4000.0, .point_m = 20.0},
                          [](double along_m) { return 0.05 * along_m; });
    for (std::size_t i = 50; i <= 100; ++i) // known up to 980 m and from 2020 m
        walk.heights[i].reset();
    const Profile profile = profile_of(walk);
    EXPECT_EQ(profile.interpolated, 0U);
    EXPECT_EQ(profile.unknown, 41U); // at 1000, 1025, ... 2000 m
    ASSERT_EQ(profile.gaps.size(), 1U);
    EXPECT_TRUE(profile.gaps.front().unknown);
    EXPECT_NEAR(profile.ascent_m, 200.0, 1e-6); // the two sides are known: the least climb between
}

TEST(Profile, VoidsAtTheEndsAreLevel) {
    Walk walk = walk_over({.length_m = 2000.0, .point_m = 20.0},
                          [](double along_m) { return 0.1 * along_m; });
    for (std::size_t i = 0; i < 10; ++i)
        walk.heights[i].reset();
    const Profile profile = profile_of(walk);
    EXPECT_EQ(profile.interpolated, 8U); // at 0, 25, ... 175 m
    EXPECT_NEAR(profile.ascent_m, 180.0, 2.0);
}

TEST(Profile, WithoutAnyHeightsTheGroundIsUnknown) {
    Walk walk = walk_over({.length_m = 1000.0, .point_m = 20.0}, [](double) { return 1.0; });
    for (const PointHeights& heights : {PointHeights{}, PointHeights(walk.heights.size())}) {
        const Profile profile = make_profile(walk.line, heights, nullptr, Surface::land, {});
        EXPECT_TRUE(profile.heights_m.empty());
        EXPECT_EQ(profile.source, HeightSource::none);
        EXPECT_EQ(profile.unknown, 41U);
        EXPECT_EQ(profile.ascent_m, 0.0);
        EXPECT_FALSE(profile.height_at(10.0));
        EXPECT_EQ(cut(profile, 100.0, 600.0).unknown, 21U);
    }
}

TEST(Profile, ALineOfOnePointHasTwoEqualHeights) {
    const Position camp{.lat_deg = 61.5, .lon_deg = 12.25};
    for (const Polyline& line : {Polyline({camp}), Polyline({camp, camp, camp})}) {
        const Profile profile = make_profile(
            line, PointHeights(line.points().size(), 77.0), nullptr, Surface::land, {});
        EXPECT_EQ(profile.heights_m, (std::vector<double>{77.0, 77.0}));
        EXPECT_EQ(profile.step_m, 0.0);
        EXPECT_EQ(profile.height_at(5.0), 77.0);
        EXPECT_EQ(cut(profile, 0.0, 10.0).ascent_m, 0.0);
    }
}

TEST(Profile, PartsAddUpToTheWhole) {
    const Profile whole = profile_of(walk_over({.length_m = 8000.0, .point_m = 9.0}, hills));
    for (const double cut_m : {0.0, 0.1, 333.3, 1000.0, 4567.8, 7999.9, 8000.0}) {
        const Profile first = cut(whole, 0.0, cut_m);
        const Profile second = cut(whole, cut_m, whole.length_m);
        EXPECT_NEAR(first.ascent_m + second.ascent_m, whole.ascent_m, 1e-9) << cut_m;
        EXPECT_NEAR(first.descent_m + second.descent_m, whole.descent_m, 1e-9) << cut_m;
        EXPECT_NEAR(first.length_m + second.length_m, whole.length_m, 1e-9) << cut_m;
        EXPECT_GE(first.heights_m.size(), 2U);
        EXPECT_NEAR(first.heights_m.back(), second.heights_m.front(), 1e-9);
        EXPECT_NEAR(*first.height_at(0.5 * cut_m), *whole.height_at(0.5 * cut_m), 2.0);
    }
}

TEST(Profile, CutsKeepTheirGaps) {
    Walk walk = walk_over({.length_m = 4000.0, .point_m = 20.0}, hills);
    for (std::size_t i = 51; i <= 100; ++i)
        walk.heights[i].reset();
    const Profile whole = profile_of(walk);
    EXPECT_EQ(cut(whole, 0.0, 900.0).unknown, 0U);
    EXPECT_EQ(cut(whole, 3000.0, 4000.0).unknown, 0U);
    const Profile inside = cut(whole, 1500.0, 1800.0);
    EXPECT_EQ(inside.unknown, inside.heights_m.size());
}

TEST(Profile, HeightsBetweenSamplesAreLinearAndClampedToTheEnds) {
    Profile profile;
    profile.length_m = 50.0;
    profile.step_m = 25.0;
    profile.heights_m = {10.0, 20.0, 0.0};
    EXPECT_DOUBLE_EQ(*profile.height_at(-5.0), 10.0);
    EXPECT_DOUBLE_EQ(*profile.height_at(12.5), 15.0);
    EXPECT_DOUBLE_EQ(*profile.height_at(25.0), 20.0);
    EXPECT_DOUBLE_EQ(*profile.height_at(45.0), 4.0);
    EXPECT_DOUBLE_EQ(*profile.height_at(50.0), 0.0);
    EXPECT_DOUBLE_EQ(*profile.height_at(60.0), 0.0);
}

TEST(Profile, DenseNoisyPointsAreAveragedNotThinned) {
    // A point a metre, errors up and down by turns: their mean is the ground.
    int point = 0;
    const Profile profile =
        profile_of(walk_over({.length_m = 3000.0, .point_m = 1.0}, [&](double along_m) {
            return 0.01 * along_m + (++point % 2 == 0 ? 8.0 : -8.0);
        }));
    EXPECT_NEAR(profile.ascent_m, 30.0, 1.0);
}

} // namespace
} // namespace tumpline::geo
