#pragma once

#include "geo/lines/geodesic.h"
#include "geo/position.h"

#include <cstddef>
#include <vector>

namespace tumpline::geo {

/// A point of a line near a given place.
struct Snap {
    double along_m; ///< from the start of the line
    double off_m;   ///< distance between the place and that point
};

/// A line of geodesics between consecutive points, with its running length.
/// Points are kept as given (no repair here; see geo/tracks/track_repair.h). A line may have one
/// point and length 0; it never has none.
class Polyline {
  public:
    /// Throws std::invalid_argument on an empty list.
    explicit Polyline(std::vector<Position> points);

    [[nodiscard]] const std::vector<Position>& points() const noexcept { return points_; }

    /// Running length at each point, metres, starting with 0.
    [[nodiscard]] const std::vector<double>& along_m() const noexcept { return along_m_; }

    [[nodiscard]] double length_m() const noexcept { return along_m_.back(); }

    /// The point `along_m` from the start, clamped to the ends.
    [[nodiscard]] Position at(double along_m) const;

    /// The direction of travel at `along_m`, degrees clockwise from north in [0, 360); that of the
    /// segment ahead (of the last one at the end); 0 for a line without length.
    [[nodiscard]] double bearing_deg(double along_m) const;

    /// The part between two distances along (from <= to after clamping), end points interpolated.
    [[nodiscard]] Polyline cut(double from_m, double to_m) const;

    [[nodiscard]] Polyline reversed() const;

    /// No point of the line is nearer to `place`: a bound that costs less than one geodesic for
    /// hundreds of points.
    [[nodiscard]] double no_nearer_m(const Position& place) const;

    /// The nearest point of the line to `place` at or beyond `from_m`.
    [[nodiscard]] Snap nearest(const Position& place, double from_m = 0.0) const;

    /// Every separate pass of the line by `place`: points no further than `within_m` from it and
    /// nearer than all the line within `apart_m` before and after (of equals the first), in order
    /// along the line. Empty if the line stays further away.
    [[nodiscard]] std::vector<Snap>
    passes(const Position& place, double within_m, double apart_m = 500.0) const;

  private:
    Polyline(std::vector<Position> points, std::vector<double> along_m);

    /// Neighbouring segments: all of them lie within a reach of a point in their midst.
    struct Block {
        Straight middle;
        double reach_m;
    };

    void gather_blocks();
    [[nodiscard]] double no_nearer_m(std::size_t block, const Straight& place) const;
    /// The first segment from `segment` on whose block may come within a distance of a place.
    [[nodiscard]] std::size_t
    next_near(std::size_t segment, const Straight& place, double within_m) const;
    /// A distance that some point beyond the start of the segment `first` keeps to; small.
    [[nodiscard]] double near_enough_m(std::size_t first, const Position& place) const;
    /// Index of the segment's first point; needs two points.
    [[nodiscard]] std::size_t segment_at(double along_m) const;

    std::vector<Position> points_;
    std::vector<double> along_m_;
    std::vector<Block> blocks_;
};

} // namespace tumpline::geo
