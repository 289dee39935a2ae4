#include "geo/tracks/track.h"

#include <gtest/gtest.h>

#include <vector>

namespace tumpline::geo {
namespace {

TrackPoint at(double lon_deg) {
    return {.at = {.lat_deg = 60.0, .lon_deg = lon_deg}, .height_m = {}, .time = {}};
}

TEST(Joined, WritesTheSeamOfTwoPartsOnce) {
    Track track;
    track.parts = {{at(8.0), at(8.1)}, {at(8.1), at(8.2)}, {}, {at(8.3)}};
    std::vector<double> longitudes;
    for (const TrackPoint& point : joined(track))
        longitudes.push_back(point.at.lon_deg);
    EXPECT_EQ(longitudes, (std::vector<double>{8.0, 8.1, 8.2, 8.3}));
    EXPECT_TRUE(joined(Track{}).empty());
}

TEST(Repairs, AreSummedEachForItself) {
    Repairs sum{.duplicates = 1,
                .spikes = 2,
                .invalid_points = 3,
                .missing_heights = 4,
                .void_heights = 5,
                .backward_times = 6,
                .invalid_times = 7,
                .antimeridian = 8,
                .joined_parts = 9};
    sum += {.duplicates = 10,
            .spikes = 20,
            .invalid_points = 30,
            .missing_heights = 40,
            .void_heights = 50,
            .backward_times = 60,
            .invalid_times = 70,
            .antimeridian = 80,
            .joined_parts = 90};
    EXPECT_EQ(sum,
              (Repairs{.duplicates = 11,
                       .spikes = 22,
                       .invalid_points = 33,
                       .missing_heights = 44,
                       .void_heights = 55,
                       .backward_times = 66,
                       .invalid_times = 77,
                       .antimeridian = 88,
                       .joined_parts = 99}));
}

} // namespace
} // namespace tumpline::geo
