#include "geo/layers/segment_grid.h"

#include <algorithm>
#include <cmath>

namespace tumpline::geo {

namespace {

constexpr double cell_m = 200.0;
/// Pieces longer than this many cells are cut before they are kept.
constexpr double longest_cells = 4.0;

struct Cell {
    long long column;
    long long row;

    [[nodiscard]] long long key() const { return column * 4'000'037LL + row; }
};

Cell cell_of(const MapPoint& point) {
    return {static_cast<long long>(std::floor(point.east_m / cell_m)),
            static_cast<long long>(std::floor(point.north_m / cell_m))};
}

/// Every cell that the box around a piece touches, widened by `reach_m`.
template <class Visit>
void each_cell(const MapSegment& segment, double reach_m, const Visit& visit) {
    const auto& [a, b, owner] = segment;
    const Cell low =
        cell_of({std::min(a.east_m, b.east_m) - reach_m, std::min(a.north_m, b.north_m) - reach_m});
    const Cell high =
        cell_of({std::max(a.east_m, b.east_m) + reach_m, std::max(a.north_m, b.north_m) + reach_m});
    for (long long column = low.column; column <= high.column; ++column)
        for (long long row = low.row; row <= high.row; ++row)
            visit(Cell{column, row}.key());
}

double piece_off_m(const MapPoint& point, const MapSegment& segment) {
    const double east_m = segment.b.east_m - segment.a.east_m;
    const double north_m = segment.b.north_m - segment.a.north_m;
    const double squared = east_m * east_m + north_m * north_m;
    double share = 0.0;
    if (squared > 0.0)
        share = std::clamp(((point.east_m - segment.a.east_m) * east_m +
                            (point.north_m - segment.a.north_m) * north_m) /
                               squared,
                           0.0,
                           1.0);
    return std::hypot(point.east_m - segment.a.east_m - share * east_m,
                      point.north_m - segment.a.north_m - share * north_m);
}

} // namespace

void SegmentGrid::add(const MapSegment& segment) {
    const auto& [a, b, owner] = segment;
    const double length_m = std::hypot(b.east_m - a.east_m, b.north_m - a.north_m);
    const int pieces = 1 + static_cast<int>(length_m / (longest_cells * cell_m));
    const auto point = [&, from = a, to = b](int piece) {
        const double share = piece / static_cast<double>(pieces);
        return MapPoint{std::lerp(from.east_m, to.east_m, share),
                        std::lerp(from.north_m, to.north_m, share)};
    };
    for (int piece = 0; piece < pieces; ++piece) {
        segments_.push_back({point(piece), point(piece + 1), owner});
        each_cell(segments_.back(), 0.0, [&](long long key) {
            cells_[key].push_back(segments_.size() - 1);
        });
    }
}

void SegmentGrid::near(const MapSegment& segment,
                       double reach_m,
                       const std::function<bool(const MapSegment&)>& visit) const {
    bool on = true;
    each_cell(segment, reach_m, [&](long long key) {
        const auto found = cells_.find(key);
        if (!on || found == cells_.end())
            return;
        for (const std::size_t index : found->second)
            if (on)
                on = visit(segments_[index]);
    });
}

double SegmentGrid::nearest_m(const MapPoint& point, double reach_m) const {
    double nearest = reach_m;
    near({point, point, 0}, reach_m, [&](const MapSegment& segment) {
        nearest = std::min(nearest, piece_off_m(point, segment));
        return nearest > 0.0;
    });
    return nearest;
}

double crossing_share(const MapSegment& first, const MapSegment& second) {
    const double first_east = first.b.east_m - first.a.east_m;
    const double first_north = first.b.north_m - first.a.north_m;
    const double second_east = second.b.east_m - second.a.east_m;
    const double second_north = second.b.north_m - second.a.north_m;
    const double turn = first_east * second_north - first_north * second_east;
    if (turn == 0.0)
        return -1.0;
    const double east_m = second.a.east_m - first.a.east_m;
    const double north_m = second.a.north_m - first.a.north_m;
    const double along_first = (east_m * second_north - north_m * second_east) / turn;
    const double along_second = (east_m * first_north - north_m * first_east) / turn;
    const bool met =
        along_first >= 0.0 && along_first < 1.0 && along_second >= 0.0 && along_second < 1.0;
    return met ? along_first : -1.0;
}

} // namespace tumpline::geo
