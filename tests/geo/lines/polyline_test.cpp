#include "geo/lines/polyline.h"

#include "geo/lines/geodesic.h"
#include "tests/support/published_value.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <stdexcept>

namespace tumpline::geo {
namespace {

Polyline line_of(const std::string& lat_lon_pairs) {
    std::vector<Position> points;
    for (const auto& pair : nlohmann::json::parse(lat_lon_pairs))
        points.push_back({.lat_deg = pair[0].get<double>(), .lon_deg = pair[1].get<double>()});
    return Polyline(std::move(points));
}

/// A wandering line of `count` points about `step_m` apart.
Polyline wander(unsigned seed, std::size_t count, Position start, double step_m = 40.0) {
    std::mt19937_64 draw(seed);
    const auto share = [&] { return static_cast<double>(draw() >> 11) * 0x1p-53; };
    std::vector<Position> points{start};
    double heading_deg = 360.0 * share();
    while (points.size() < count) {
        heading_deg += 60.0 * (share() - 0.5);
        points.push_back(destination(points.back(), heading_deg, step_m * (0.2 + 1.6 * share())));
    }
    return Polyline(std::move(points));
}

/// The nearest point by trying each segment at many fractions: slow and plain.
Snap nearest_plainly(const Polyline& line, const Position& place, double from_m) {
    Snap best{from_m, distance_m(line.at(from_m), place)};
    for (std::size_t index = 1; index < line.points().size(); ++index) {
        for (int part = 0; part <= 40; ++part) {
            const double along_m =
                std::lerp(line.along_m()[index - 1], line.along_m()[index], part / 40.0);
            if (along_m < from_m)
                continue;
            if (const double off_m = distance_m(line.at(along_m), place); off_m < best.off_m)
                best = {along_m, off_m};
        }
    }
    return best;
}

const Position one_point{.lat_deg = 61.5, .lon_deg = 8.4};

TEST(Polyline, LengthsAreThoseOfTheGeodesicsBetweenItsPoints) {
    for (const test::PublishedValue& row : test::published("geodesy", "polyline_length")) {
        EXPECT_NEAR(line_of(row.text("points_lat_lon_deg")).length_m(), row.expected, row.tolerance)
            << row;
    }
}

TEST(Polyline, NeedsAPoint) {
    EXPECT_THROW(Polyline({}), std::invalid_argument);
}

TEST(Polyline, OfOnePointHasNoLengthAndNoDirection) {
    const Polyline line({one_point});
    EXPECT_EQ(line.length_m(), 0.0);
    EXPECT_EQ(line.at(5.0), one_point);
    EXPECT_EQ(line.bearing_deg(0.0), 0.0);
    EXPECT_EQ(line.cut(0.0, 10.0).points().size(), 1U);
    EXPECT_EQ(line.reversed().points().front(), one_point);
    EXPECT_NEAR(line.nearest(destination(one_point, 30.0, 25.0)).off_m, 25.0, 1e-7);
    EXPECT_EQ(line.passes(destination(one_point, 30.0, 25.0), 30.0).size(), 1U);
    EXPECT_TRUE(line.passes(destination(one_point, 30.0, 25.0), 20.0).empty());
}

TEST(Polyline, SurvivesPointsAtTheSamePlace) {
    const Polyline line({one_point,
                         one_point,
                         destination(one_point, 90.0, 100.0),
                         destination(one_point, 90.0, 100.0)});
    EXPECT_NEAR(line.length_m(), 100.0, 1e-7);
    EXPECT_NEAR(line.bearing_deg(0.0), 90.0, 1e-6);
    EXPECT_NEAR(line.bearing_deg(line.length_m()), 90.0, 0.01);
    EXPECT_NEAR(line.nearest(destination(one_point, 90.0, 40.0)).along_m, 40.0, 1e-6);
    const Polyline still({one_point, one_point, one_point});
    EXPECT_EQ(still.bearing_deg(0.0), 0.0);
    EXPECT_EQ(still.at(1.0), one_point);
    EXPECT_EQ(still.cut(0.0, 1.0).length_m(), 0.0);
}

TEST(Polyline, SplittingKeepsTheLength) {
    const Polyline line = wander(1, 400, one_point);
    for (int part = 1; part < 50; ++part) {
        const double at_m = line.length_m() * part / 50.0;
        const Polyline head = line.cut(0.0, at_m);
        const Polyline tail = line.cut(at_m, line.length_m());
        EXPECT_NEAR(head.length_m() + tail.length_m(), line.length_m(), 1e-9);
        // measured anew from the points it holds
        EXPECT_NEAR(Polyline(head.points()).length_m(), at_m, 1e-6);
        EXPECT_NEAR(Polyline(tail.points()).length_m(), line.length_m() - at_m, 1e-6);
        EXPECT_LT(distance_m(head.points().back(), tail.points().front()), 1e-8);
    }
}

TEST(Polyline, CutClampsAndKeepsOrder) {
    const Polyline line = wander(2, 20, one_point);
    EXPECT_NEAR(line.cut(-5.0, line.length_m() + 5.0).length_m(), line.length_m(), 1e-9);
    EXPECT_EQ(line.cut(30.0, 20.0).points().size(), 1U);
    EXPECT_EQ(line.cut(0.0, line.length_m()).points(), line.points());
}

TEST(Polyline, TurningRoundKeepsTheLength) {
    const Polyline line = wander(3, 300, one_point);
    const Polyline back = line.reversed();
    EXPECT_EQ(back.length_m(), line.length_m());
    EXPECT_NEAR(Polyline(back.points()).length_m(), line.length_m(), 1e-6);
    for (int part = 0; part <= 10; ++part) {
        const double at_m = line.length_m() * part / 10.0;
        EXPECT_LT(distance_m(line.at(at_m), back.at(line.length_m() - at_m)), 1e-6);
    }
}

TEST(Polyline, BearsOnwardsAcrossTheAntimeridian) {
    const Polyline line({{.lat_deg = 0.0, .lon_deg = 179.9}, {.lat_deg = 0.0, .lon_deg = -179.9}});
    EXPECT_NEAR(line.bearing_deg(line.length_m() / 2.0), 90.0, 1e-9);
    EXPECT_NEAR(line.bearing_deg(0.0), 90.0, 1e-9);
    EXPECT_NEAR(line.bearing_deg(line.length_m()), 90.0, 1e-9);
    EXPECT_NEAR(std::abs(line.at(line.length_m() / 2.0).lon_deg), 180.0, 1e-9);
}

TEST(Polyline, BearingTurnsAlongALongGeodesic) {
    const Position from{.lat_deg = 60.0, .lon_deg = 0.0};
    const Position to{.lat_deg = 60.0, .lon_deg = 60.0};
    const Polyline line({from, to});
    EXPECT_NEAR(line.bearing_deg(0.0), geodesic(from, to).start_azimuth_deg, 1e-9);
    EXPECT_NEAR(line.bearing_deg(line.length_m() / 2.0), 90.0, 1e-9);
    EXPECT_NEAR(line.bearing_deg(line.length_m()), geodesic(from, to).end_azimuth_deg, 1e-9);
}

struct Region {
    const char* name;
    Position start;
};

/// The same searches without any bound: every segment as a line of its own.
struct EverySegment {
    explicit EverySegment(const Polyline& line) : whole(line) {
        for (std::size_t k = 1; k < line.points().size(); ++k)
            segments.emplace_back(std::vector{line.points()[k - 1], line.points()[k]});
    }

    [[nodiscard]] Snap nearest(const Position& place) const {
        Snap best{0.0, HUGE_VAL};
        for (std::size_t k = 0; k < segments.size(); ++k)
            if (const Snap snap = segments[k].nearest(place); snap.off_m < best.off_m)
                best = {whole.along_m()[k] + snap.along_m, snap.off_m};
        return best;
    }

    /// Snaps within a distance of which none within `apart_m` of line undercuts it.
    [[nodiscard]] std::vector<Snap>
    passes(const Position& place, double within_m, double apart_m) const {
        std::vector<Snap> near;
        for (std::size_t k = 0; k < segments.size(); ++k)
            if (const Snap snap = segments[k].nearest(place); snap.off_m <= within_m)
                near.push_back({whole.along_m()[k] + snap.along_m, snap.off_m});
        std::vector<Snap> kept;
        for (std::size_t one = 0; one < near.size(); ++one) {
            bool undercut = false;
            for (std::size_t other = 0; other < near.size(); ++other) {
                const double less_m = near[one].off_m - near[other].off_m;
                const bool better = other < one ? less_m > -1e-7 : less_m > 1e-7;
                undercut =
                    undercut || (other != one && better &&
                                 std::abs(near[other].along_m - near[one].along_m) < apart_m);
            }
            if (!undercut)
                kept.push_back(near[one]);
        }
        return kept;
    }

    const Polyline& whole;
    std::vector<Polyline> segments;
};

class Snapping : public testing::TestWithParam<Region> {};

TEST_P(Snapping, FindsWhatThePlainSearchFinds) {
    for (unsigned seed = 10; seed < 18; ++seed) {
        const Polyline line = wander(seed, 150, GetParam().start);
        for (unsigned place = 0; place < 6; ++place) {
            const Position from = line.at(line.length_m() * place / 6.0);
            const Position there = destination(from, 77.0 * place, 13.0 + 400.0 * place);
            const double from_m = place % 2 == 0 ? 0.0 : line.length_m() / 3.0;
            const Snap found = line.nearest(there, from_m);
            const Snap plain = nearest_plainly(line, there, from_m);
            EXPECT_LE(found.off_m, plain.off_m + 1e-6) << "seed " << seed << " place " << place;
            EXPECT_GT(found.off_m, plain.off_m - 2.0) << "seed " << seed << " place " << place;
            EXPECT_GE(found.along_m, from_m);
            EXPECT_NEAR(distance_m(line.at(found.along_m), there), found.off_m, 1e-6);
        }
    }
}

TEST_P(Snapping, LeavesOutNothingByItsBounds) {
    int passed = 0, none = 0;
    for (unsigned seed = 30; seed < 38; ++seed) {
        // From a few metres to a hundred kilometres between points: 300 of them are ten blocks.
        const double step_m = 4.0 * std::pow(10.0, seed % 4);
        const Polyline line = wander(seed, 300, GetParam().start, step_m);
        const EverySegment every(line);
        for (unsigned place = 0; place < 8; ++place) {
            SCOPED_TRACE(testing::Message() << "seed " << seed << " place " << place);
            const Position beside = line.at(line.length_m() * place / 8.0);
            const Position there =
                destination(beside, 29.0 * place, step_m * (place % 4 == 3 ? 300.0 : 0.7 * place));
            const Snap nearest = line.nearest(there);
            const Snap plain = every.nearest(there);
            EXPECT_NEAR(nearest.off_m, plain.off_m, 1e-6);
            EXPECT_NEAR(nearest.along_m, plain.along_m, 1e-3 + 1e-5 * step_m);
            EXPECT_LE(line.no_nearer_m(there), plain.off_m);
            const double within_m = plain.off_m + (place % 3 == 0 ? -1e-3 : 2.0 * step_m);
            const std::vector<Snap> passes = line.passes(there, within_m, 10.0 * step_m);
            const std::vector<Snap> expected = every.passes(there, within_m, 10.0 * step_m);
            ASSERT_EQ(passes.size(), expected.size());
            for (std::size_t k = 0; k < passes.size(); ++k) {
                EXPECT_NEAR(passes[k].off_m, expected[k].off_m, 1e-6);
                EXPECT_NEAR(passes[k].along_m, expected[k].along_m, 1e-3 + 1e-5 * step_m);
            }
            passed += passes.empty() ? 0 : 1;
            none += passes.empty() ? 1 : 0;
        }
    }
    EXPECT_GT(passed, 26);
    EXPECT_GT(none, 13);
}

INSTANTIATE_TEST_SUITE_P(
    Everywhere,
    Snapping,
    testing::Values(Region{"Inland", {.lat_deg = 61.5, .lon_deg = 8.4}},
                    Region{"Antimeridian", {.lat_deg = -16.8, .lon_deg = 179.999}},
                    Region{"NorthPole", {.lat_deg = 89.995, .lon_deg = 20.0}},
                    Region{"SouthPole", {.lat_deg = -89.999, .lon_deg = -120.0}}),
    [](const auto& region) { return region.param.name; });

TEST(Snapping, BoundsALineByTheStraightWayThroughTheEarth) {
    // A point on the equator and the pole: on the ellipsoid of half axes a = 6378137 and
    // b = 6356752.3142 m the straight way is sqrt(a^2 + b^2) = 9004939.3 m.
    const Polyline line({{.lat_deg = 0.0, .lon_deg = 179.9}});
    EXPECT_NEAR(line.no_nearer_m({.lat_deg = 90.0, .lon_deg = 0.0}), 9004939.3, 0.1);
    EXPECT_NEAR(line.no_nearer_m({.lat_deg = 0.0, .lon_deg = 179.9}), 0.0, 1e-5);
    EXPECT_GT(line.no_nearer_m({.lat_deg = 0.0, .lon_deg = -179.9}), 22'000.0);
    EXPECT_LT(line.no_nearer_m({.lat_deg = 0.0, .lon_deg = -179.9}), 22'264.0); // 0.2 degrees
}

TEST(Snapping, IsExactOnALongSegment) {
    const Position from{.lat_deg = 60.0, .lon_deg = 0.0};
    const Position to{.lat_deg = 60.0, .lon_deg = 60.0};
    const Polyline line({from, to});
    const double along_m = line.length_m() / 3.0;
    const Position foot = line.at(along_m);
    const Position place = destination(foot, line.bearing_deg(along_m) + 90.0, 200000.0);
    const Snap found = line.nearest(place);
    EXPECT_NEAR(found.along_m, along_m, 0.01); // a right angle is where the distance is least
    EXPECT_NEAR(found.off_m, 200000.0, 1e-6);
}

TEST(Snapping, LooksOnlyBeyondWhereItIsTold) {
    const Position far = destination(one_point, 90.0, 1000.0);
    const Polyline there_and_back({one_point, far, one_point});
    const Position place = destination(one_point, 90.0, 300.0);
    EXPECT_NEAR(there_and_back.nearest(place).along_m, 300.0, 1e-5);
    EXPECT_NEAR(there_and_back.nearest(place, 400.0).along_m, 1700.0, 1e-5);
    EXPECT_NEAR(there_and_back.nearest(place, 9000.0).along_m, 2000.0, 1e-5);
}

TEST(Passes, AreFoundOnTheWayOutAndBack) {
    const Position far = destination(one_point, 90.0, 5000.0);
    const Polyline line({one_point, far, one_point});
    const Position place = destination(destination(one_point, 90.0, 1500.0), 0.0, 80.0);
    const std::vector<Snap> passes = line.passes(place, 100.0);
    ASSERT_EQ(passes.size(), 2U);
    EXPECT_NEAR(passes[0].along_m, 1500.0, 0.1);
    EXPECT_NEAR(passes[1].along_m, 8500.0, 0.1);
    EXPECT_NEAR(passes[0].off_m, 80.0, 0.01);
    EXPECT_TRUE(line.passes(place, 70.0).empty());
}

TEST(Passes, CloseTogetherAreOne) {
    const Position far = destination(one_point, 90.0, 5000.0);
    const Polyline line({one_point, far, one_point});
    EXPECT_EQ(line.passes(destination(one_point, 90.0, 4900.0), 50.0).size(), 1U);
    EXPECT_EQ(line.passes(destination(one_point, 90.0, 4900.0), 50.0, 100.0).size(), 2U);
}

TEST(Passes, DoNotMultiplyOnAWanderingLine) {
    const Polyline line = wander(4, 3000, one_point, 5.0);
    const Position place = line.at(line.length_m() / 2.0);
    const std::vector<Snap> passes = line.passes(place, 2000.0, 500.0);
    ASSERT_FALSE(passes.empty());
    for (std::size_t index = 1; index < passes.size(); ++index)
        EXPECT_GE(passes[index].along_m - passes[index - 1].along_m, 500.0);
    for (const Snap& pass : passes) { // nothing nearer within 500 m of line
        const double from_m = std::max(0.0, pass.along_m - 499.0);
        const Polyline around = line.cut(from_m, pass.along_m + 499.0);
        EXPECT_NEAR(around.nearest(place).off_m, pass.off_m, 1e-5);
    }
}

} // namespace
} // namespace tumpline::geo
