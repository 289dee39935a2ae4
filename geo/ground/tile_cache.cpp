#include "geo/ground/tile_cache.h"

#include <cstdint>
#include <utility>

namespace tumpline::geo {

std::size_t TileCache::Hash::operator()(const Key& key) const noexcept {
    const auto mix = [](std::uint64_t seed, int number) { // by the golden ratio
        return (seed ^ static_cast<std::uint32_t>(number)) * 0x9E3779B97F4A7C15ULL;
    };
    return static_cast<std::size_t>(mix(mix(mix(0, key.raster), key.column), key.row) >> 20);
}

const TileCache::Cells* TileCache::find(const Key& key) {
    if (!tiles_.empty() && tiles_.front().key == key)
        return &tiles_.front().cells;
    const auto place = places_.find(key);
    if (place == places_.end())
        return nullptr;
    tiles_.splice(tiles_.begin(), tiles_, place->second);
    return &tiles_.front().cells;
}

const TileCache::Cells* TileCache::put(const Key& key, Cells cells) {
    if (tiles_.size() >= most_tiles) {
        places_.erase(tiles_.back().key);
        tiles_.pop_back();
    }
    tiles_.push_front({.key = key, .cells = std::move(cells)});
    places_[key] = tiles_.begin();
    return &tiles_.front().cells;
}

} // namespace tumpline::geo
