#include "geo/ground/contours.h"

#include "geo/gate/quiet_gdal.h"

#include <gdal_alg.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace tumpline::geo {

namespace {

struct Collected {
    const GridFrame& frame;
    std::vector<ContourLine> lines;
};

// NOLINTNEXTLINE(readability-non-const-parameter): the library asks for this signature
CPLErr collect(double level, int count, double* x, double* y, void* into) {
    auto& collected = *static_cast<Collected*>(into);
    ContourLine& line = collected.lines.emplace_back();
    line.height_m = level;
    line.points.reserve(static_cast<std::size_t>(count));
    const GridFrame& frame = collected.frame;
    for (int i = 0; i < count; ++i)
        line.points.push_back({frame.north_west.east_m + x[i] * frame.cell_m,
                               frame.north_west.north_m - y[i] * frame.cell_m});
    return CE_None;
}

} // namespace

bool ContourLine::closed() const {
    return points.size() > 3 && points.front().east_m == points.back().east_m &&
           points.front().north_m == points.back().north_m;
}

std::vector<ContourLine> contours(const HeightGrid& grid, double interval_m) {
    const GridFrame& frame = grid.frame;
    Collected collected{frame, {}};
    if (frame.columns < 2 || frame.rows < 2 || !(interval_m >= 1.0))
        return {};
    const QuietGdal quiet;
    GDALContourGeneratorH generator = GDAL_CG_Create(
        frame.columns, frame.rows, TRUE, void_height_m, interval_m, 0.0, collect, &collected);
    std::vector<double> line(static_cast<std::size_t>(frame.columns));
    for (int row = 0; row < frame.rows; ++row) {
        for (int column = 0; column < frame.columns; ++column) {
            const auto height_m = static_cast<double>(grid.at(column, row));
            line[static_cast<std::size_t>(column)] =
                std::isfinite(height_m) ? height_m : void_height_m;
        }
        GDAL_CG_FeedLine(generator, line.data());
    }
    GDAL_CG_Destroy(generator);
    return std::move(collected.lines);
}

double contour_interval_m(const MapRelief& relief, std::span<const double> steps_m) {
    constexpr double least_apart_m = 0.00025; // on paper
    const double least_m = least_apart_m * relief.denominator * relief.steep_slope;
    const auto found = std::ranges::find_if(
        steps_m, [&](double step_m) { return step_m >= least_m * (1.0 - 1e-9); });
    return found == steps_m.end() ? steps_m.back() : *found;
}

} // namespace tumpline::geo
