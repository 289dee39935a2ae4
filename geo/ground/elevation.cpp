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

struct Elevation::Rasters {
    std::vector<Raster> rasters;
    TileCache cache;
};

Elevation::Elevation(const std::vector<std::filesystem::path>& rasters,
                     const std::filesystem::path& trip_folder)
    : rasters_(std::make_unique<Rasters>()) {
    std::vector<Problem> problems;
    for (const std::filesystem::path& file : rasters) {
        try {
            const int number = static_cast<int>(rasters_->rasters.size());
            rasters_->rasters.emplace_back(
                file, RasterFolder{.number = number, .trip_folder = trip_folder});
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
