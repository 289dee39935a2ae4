#include "planner/models/elevation.h"

#include <gtest/gtest.h>

#include <set>
#include <string_view>

namespace tumpline::planner {
namespace {

/// One way of reading each kind of ground is taken unless said otherwise: land, lakes, rivers.
TEST(ElevationModels, NameTheirDefaults) {
    std::set<std::string_view> names, defaults;
    for (const ModelEntry& entry : elevation_entries()) {
        EXPECT_EQ(entry.family, elevation_family);
        EXPECT_TRUE(names.insert(entry.name).second) << entry.name;
        EXPECT_FALSE(entry.source.empty()) << entry.name;
        if (entry.is_default)
            defaults.insert(entry.name);
    }
    EXPECT_EQ(defaults, (std::set<std::string_view>{raster_swings, lake_median, river_fall}));
    EXPECT_TRUE(names.contains(receiver_swings) && names.contains(barometer_swings));
}

} // namespace
} // namespace tumpline::planner
