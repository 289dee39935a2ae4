#include "geo/ground/elevation.h"

#include "geo/ground/raster.h"
#include "geo/input_error.h"

#include <algorithm>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

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

struct Elevation::Rasters {
    std::vector<Raster> rasters;
    TileCache cache;
};

Elevation::Elevation(const std::vector<std::filesystem::path>& rasters)
    : rasters_(std::make_unique<Rasters>()) {
    std::vector<Problem> problems;
    for (const std::filesystem::path& file : rasters) {
        try {
            rasters_->rasters.emplace_back(file, static_cast<int>(rasters_->rasters.size()));
        } catch (const InputError& error) { // so that one run shows what is wrong with all of them
            problems.insert(problems.end(), error.problems().begin(), error.problems().end());
        }
    }
    if (!problems.empty())
        throw InputError(std::move(problems));
}

Elevation::~Elevation() = default;
Elevation::Elevation(Elevation&&) noexcept = default;
Elevation& Elevation::operator=(Elevation&&) noexcept = default;

std::optional<double> Elevation::at(const Position& position) {
    if (!is_valid(position))
        return std::nullopt;
    for (Raster& raster : rasters_->rasters)
        if (const std::optional<double> height_m = raster.at(position, rasters_->cache))
            return height_m;
    return std::nullopt;
}

double Elevation::cell_m() const {
    double finest_m = 0.0;
    for (const Raster& raster : rasters_->rasters)
        if (raster.cell_m() > 0.0)
            finest_m = finest_m > 0.0 ? std::min(finest_m, raster.cell_m()) : raster.cell_m();
    return finest_m;
}

std::vector<std::string> Elevation::describe() const {
    std::vector<std::string> lines;
    for (const Raster& raster : rasters_->rasters)
        lines.push_back(raster.describe());
    return lines;
}

} // namespace tumpline::geo
