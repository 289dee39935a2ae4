#pragma once

#include "cli/drawing/ground_lines.h"
#include "cli/drawing/load_band_line.h"
#include "cli/drawing/map_frame.h"

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

    /// Takes it if it lies on nothing that is taken.
    [[nodiscard]] bool take_if_free(const Box& box);

    /// The same beside a point unless those words, or the first of them, stand near it already: one
    /// name for one place, however often the route comes by.
    [[nodiscard]] std::string once_beside(const DrawnPoint& point,
                                          const std::string& text,
                                          double size,
                                          const char* kind,
                                          double reach = 0.0);

    /// Places text near a point, on the free one of eight sides that hides least of the line; if
    /// none is free nothing is written. `reach`: from the point to the sides of its symbol.
    [[nodiscard]] std::string beside(const DrawnPoint& point,
                                     const std::string& text,
                                     double size,
                                     const char* kind,
                                     double reach = 0.0);

    /// Places text along a run of a line, if there is room that hides nothing of the route.
    [[nodiscard]] std::string
    upon(const Run& run, const std::string& text, double size, const char* kind);

  private:
    /// Words and where they stand.
    struct Named {
        std::string text;
        DrawnPoint at;
    };

    [[nodiscard]] double covered_line(const Box& box) const;
    [[nodiscard]] bool is_taken(const Box& box) const;
    [[nodiscard]] bool is_outside(const Box& box) const;

    double width_;
    double height_;
    std::vector<DrawnPoint> line_;
    std::vector<Box> taken_;
    std::vector<Named> named_;
};

/// Two marks of one name that lie so near to each other, in heights of the letters, are one place
/// to a reader.
inline constexpr double one_place = 2.5;

} // namespace tumpline::cli
