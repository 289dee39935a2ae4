#pragma once

#include "cli/drawing/ground_lines.h"
#include "cli/drawing/load_band_graticule.h"
#include "cli/drawing/load_band_line.h"

#include <string>
#include <vector>

namespace tumpline::cli {

/// Keeps the names on a map off each other: boxes already taken.
class Labels {
  public:
    Labels(const Frame& frame, const std::vector<DrawnPoint>& line);

    struct Box {
        double x, y, w, h;
    };

    void take(const Box& box) { taken_.push_back(box); }

    /// Places text near a point, on the free one of eight sides that hides least of the line; if
    /// none is free nothing is written.
    [[nodiscard]] std::string
    beside(const DrawnPoint& point, const std::string& text, double size, const char* kind);

    /// Places text along a run of a line, if there is room that hides nothing of the route.
    [[nodiscard]] std::string
    upon(const Run& run, const std::string& text, double size, const char* kind);

  private:
    [[nodiscard]] double covered_line(const Box& box) const;
    [[nodiscard]] bool is_taken(const Box& box) const;
    [[nodiscard]] bool is_outside(const Box& box) const;

    double width_;
    double height_;
    std::vector<DrawnPoint> line_;
    std::vector<Box> taken_;
};

} // namespace tumpline::cli
