#include "geo/ground/height_grid.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace tumpline::geo {

namespace {

constexpr float unknown = std::numeric_limits<float>::quiet_NaN();
constexpr int node_step = 16;

std::size_t index(const GridFrame& frame, int column, int row) {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(frame.columns) +
           static_cast<std::size_t>(column);
}

/// Places of every sixteenth cell, between which the others lie.
class Nodes {
  public:
    Nodes(const MapProjection& projection, const GridFrame& frame)
        : columns_(frame.columns / node_step + 2) {
        const int rows = frame.rows / node_step + 2;
        for (int row = 0; row < rows; ++row)
            for (int column = 0; column < columns_; ++column)
                places_.push_back(
                    projection.to_ground(frame.centre(column * node_step, row * node_step)));
    }

    [[nodiscard]] Position at(int column, int row) const {
        const double across = static_cast<double>(column % node_step) / node_step;
        const double down = static_cast<double>(row % node_step) / node_step;
        const Position& north_west = node(column / node_step, row / node_step);
        const auto lon = [&](const Position& other) {
            return north_west.lon_deg + std::remainder(other.lon_deg - north_west.lon_deg, 360.0);
        };
        const Position& north_east = node(column / node_step + 1, row / node_step);
        const Position& south_west = node(column / node_step, row / node_step + 1);
        const Position& south_east = node(column / node_step + 1, row / node_step + 1);
        const auto between = [&](const std::array<double, 4>& of) {
            return std::lerp(
                std::lerp(of[0], of[1], across), std::lerp(of[2], of[3], across), down);
        };
        return {
            between(
                {north_west.lat_deg, north_east.lat_deg, south_west.lat_deg, south_east.lat_deg}),
            std::remainder(
                between({north_west.lon_deg, lon(north_east), lon(south_west), lon(south_east)}),
                360.0)};
    }

  private:
    [[nodiscard]] const Position& node(int column, int row) const {
        return places_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
                       static_cast<std::size_t>(column)];
    }

    int columns_;
    std::vector<Position> places_;
};

/// One pass of the Gaussian along rows (step 1) or columns (step of a row).
struct Pass {
    int lines;
    int cells;
    std::size_t line_step;
    std::size_t cell_step;
};

void blur(std::vector<float>& heights, const Pass& pass) {
    constexpr int reach = 3;
    // exp(-k k / 2)
    constexpr std::array<double, reach + 1> weights{
        1.0, 0.60653065971263342, 0.13533528323661270, 0.01110899653824231};
    std::vector<float> line(static_cast<std::size_t>(pass.cells));
    for (int i = 0; i < pass.lines; ++i) {
        const std::size_t start = static_cast<std::size_t>(i) * pass.line_step;
        for (int j = 0; j < pass.cells; ++j)
            line[static_cast<std::size_t>(j)] =
                heights[start + static_cast<std::size_t>(j) * pass.cell_step];
        for (int j = 0; j < pass.cells; ++j) {
            if (std::isnan(line[static_cast<std::size_t>(j)]))
                continue;
            double sum = 0.0;
            double weight = 0.0;
            for (int k = std::max(0, j - reach); k <= std::min(pass.cells - 1, j + reach); ++k) {
                const float height = line[static_cast<std::size_t>(k)];
                if (std::isnan(height))
                    continue;
                const double share = weights[static_cast<std::size_t>(std::abs(k - j))];
                sum += share * static_cast<double>(height);
                weight += share;
            }
            heights[start + static_cast<std::size_t>(j) * pass.cell_step] =
                static_cast<float>(sum / weight);
        }
    }
}

} // namespace

bool HeightGrid::empty() const {
    return std::ranges::all_of(heights_m, [](float height_m) { return std::isnan(height_m); });
}

HeightGrid
sampled_heights(Elevation& elevation, const MapProjection& projection, const GridFrame& frame) {
    HeightGrid grid{frame, {}};
    grid.heights_m.assign(
        static_cast<std::size_t>(frame.columns) * static_cast<std::size_t>(frame.rows), unknown);
    const Nodes nodes(projection, frame);
    for (int row = 0; row < frame.rows; ++row)
        for (int column = 0; column < frame.columns; ++column) {
            if (const std::optional<double> height_m = elevation.at(nodes.at(column, row)))
                grid.heights_m[index(frame, column, row)] = static_cast<float>(*height_m);
        }
    return grid;
}

void keep_only(HeightGrid& grid, const std::function<bool(const MapPoint&)>& wanted) {
    const GridFrame& frame = grid.frame;
    for (int row = 0; row < frame.rows; ++row)
        for (int column = 0; column < frame.columns; ++column)
            if (!wanted(frame.centre(column, row)))
                grid.heights_m[index(frame, column, row)] = unknown;
}

HeightGrid smoothed(const HeightGrid& grid) {
    HeightGrid smooth = grid;
    const GridFrame& frame = grid.frame;
    const auto row_step = static_cast<std::size_t>(frame.columns);
    blur(smooth.heights_m, {frame.rows, frame.columns, row_step, 1});
    blur(smooth.heights_m, {frame.columns, frame.rows, 1, row_step});
    return smooth;
}

void make_unknown(HeightGrid& grid, const std::vector<std::vector<MapPoint>>& rings) {
    const GridFrame& frame = grid.frame;
    std::vector<std::vector<double>> crossed(static_cast<std::size_t>(frame.rows));
    for (const std::vector<MapPoint>& ring : rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const MapPoint& a = ring[i];
            const MapPoint& b = ring[(i + 1) % ring.size()];
            const auto row_of = [&](double north_m) {
                return (frame.north_west.north_m - north_m) / frame.cell_m - 0.5;
            };
            const double from = std::min(row_of(a.north_m), row_of(b.north_m));
            const double to = std::max(row_of(a.north_m), row_of(b.north_m));
            const int last = static_cast<int>(std::clamp(std::ceil(to), 0.0, frame.rows * 1.0));
            for (int row = static_cast<int>(std::clamp(std::ceil(from), 0.0, frame.rows * 1.0));
                 row < last;
                 ++row) {
                const double share =
                    (row - row_of(a.north_m)) / (row_of(b.north_m) - row_of(a.north_m));
                crossed[static_cast<std::size_t>(row)].push_back(
                    (std::lerp(a.east_m, b.east_m, share) - frame.north_west.east_m) /
                        frame.cell_m -
                    0.5);
            }
        }
    for (int row = 0; row < frame.rows; ++row) {
        std::vector<double>& at = crossed[static_cast<std::size_t>(row)];
        std::ranges::sort(at);
        for (std::size_t i = 0; i + 1 < at.size(); i += 2) {
            const double first = std::clamp(std::ceil(at[i]), 0.0, frame.columns * 1.0);
            const double end = std::clamp(std::floor(at[i + 1]) + 1.0, 0.0, frame.columns * 1.0);
            for (int column = static_cast<int>(first); column < static_cast<int>(end); ++column)
                grid.heights_m[index(frame, column, row)] = unknown;
        }
    }
}

double steep_slope(const HeightGrid& grid) {
    const GridFrame& frame = grid.frame;
    std::vector<double> slopes;
    for (int row = 1; row + 1 < frame.rows; ++row)
        for (int column = 1; column + 1 < frame.columns; ++column) {
            const double east = static_cast<double>(grid.at(column + 1, row)) -
                                static_cast<double>(grid.at(column - 1, row));
            const double north = static_cast<double>(grid.at(column, row - 1)) -
                                 static_cast<double>(grid.at(column, row + 1));
            if (std::isfinite(east) && std::isfinite(north))
                slopes.push_back(std::hypot(east, north) / (2.0 * frame.cell_m));
        }
    if (slopes.empty())
        return 0.0;
    constexpr double share = 0.98;
    const auto place = static_cast<std::ptrdiff_t>(share * static_cast<double>(slopes.size() - 1));
    std::nth_element(slopes.begin(), slopes.begin() + place, slopes.end());
    return slopes[static_cast<std::size_t>(place)];
}

} // namespace tumpline::geo
