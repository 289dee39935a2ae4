#pragma once

#include "cli/drawing/load_band_line.h"

#include <optional>
#include <string>
#include <vector>

/// Lines and areas of the ground in a drawing: cut to its frame, thinned, written with few bytes.
namespace tumpline::cli {

/// A part of a drawing, CSS pixels, y down.
struct Window {
    double left, top, right, bottom;

    [[nodiscard]] bool holds(const DrawnPoint& point) const {
        return point.x >= left && point.x <= right && point.y >= top && point.y <= bottom;
    }
};

/// The runs of a line that come into a window; each reaches one point beyond it.
[[nodiscard]] std::vector<std::vector<DrawnPoint>> inside(const std::vector<DrawnPoint>& line,
                                                          const Window& window);

/// A ring cut by a window's four sides. Source: [SutherlandHodgman1974].
[[nodiscard]] std::vector<DrawnPoint> ring_inside(const std::vector<DrawnPoint>& ring,
                                                  const Window& window);

/// Fifths of a pixel as whole numbers, "M50 20l3-4": to be drawn under scale(.2). A ring is closed.
[[nodiscard]] std::string fifths(const std::vector<DrawnPoint>& line, bool ring);

[[nodiscard]] double drawn_length(const std::vector<DrawnPoint>& line);

/// Where a text can stand along a line.
struct Run {
    DrawnPoint middle;
    double angle_deg; ///< of the text, clockwise from rightwards
};

/// What a text asks for of a line.
struct RunWanted {
    double length;   ///< of the text
    double most_bow; ///< that the line may leave the straight by
    bool against;    ///< the text must run against the line's direction; upright either way
};

/// The straightest stretch of a line that is long enough; empty if it bows too much everywhere.
[[nodiscard]] std::vector<Run> straight_runs(const std::vector<DrawnPoint>& line,
                                             const RunWanted& wanted);

/// Points every `apart` pixels along a line with its direction there, degrees clockwise from
/// rightwards; the first half way into the first stretch.
[[nodiscard]] std::vector<Run> along(const std::vector<DrawnPoint>& line, double apart);

} // namespace tumpline::cli
