#include "geo/ground/tile_cache.h"

#include <gtest/gtest.h>

namespace tumpline::geo {
namespace {

TileCache::Cells filled_with(float value) {
    return TileCache::Cells(TileCache::stride * TileCache::stride, value);
}

TEST(TileCache, HoldsTilesByRasterColumnAndRow) {
    TileCache cache;
    EXPECT_EQ(cache.find({.raster = 0, .column = 1, .row = 2}), nullptr);
    cache.put({.raster = 0, .column = 1, .row = 2}, filled_with(12.0F));
    cache.put({.raster = 0, .column = 2, .row = 1}, filled_with(21.0F));
    cache.put({.raster = 1, .column = 1, .row = 2}, filled_with(112.0F));
    EXPECT_EQ(cache.find({.raster = 0, .column = 1, .row = 2})->front(), 12.0F);
    EXPECT_EQ(cache.find({.raster = 0, .column = 2, .row = 1})->front(), 21.0F);
    EXPECT_EQ(cache.find({.raster = 1, .column = 1, .row = 2})->front(), 112.0F);
    EXPECT_EQ(cache.find({.raster = 1, .column = 2, .row = 1}), nullptr);
}

TEST(TileCache, DropsTheOneThatWasUsedLongestAgo) {
    TileCache cache;
    const int most = static_cast<int>(TileCache::most_tiles);
    for (int tile = 0; tile < most; ++tile)
        cache.put({.raster = 0, .column = tile, .row = 0}, filled_with(static_cast<float>(tile)));
    ASSERT_NE(cache.find({.raster = 0, .column = 0, .row = 0}), nullptr); // used again
    cache.put({.raster = 0, .column = most, .row = 0}, filled_with(0.5F));
    EXPECT_NE(cache.find({.raster = 0, .column = 0, .row = 0}), nullptr);
    EXPECT_EQ(cache.find({.raster = 0, .column = 1, .row = 0}), nullptr); // the next oldest
    EXPECT_EQ(cache.find({.raster = 0, .column = most, .row = 0})->front(), 0.5F);
}

} // namespace
} // namespace tumpline::geo
