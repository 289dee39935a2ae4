#pragma once

#include "cli/drawing/load_band_places.h"

#include <string>
#include <vector>

namespace tumpline::cli {

/// Names over a profile, each in a row at the end of a line that leads up from its place, so that
/// none lies on another. Hazards come first, then nights and the ends; a name without room is left
/// out, its symbol stays.
class ProfileNames {
  public:
    /// `marks` have their x; `left` and `right` are what the rows may take.
    struct Room {
        double left, right;
        double text; ///< height of the letters
        int most_rows;
    };

    ProfileNames(std::vector<Mark> marks, const Room& room);

    /// How high the rows are together.
    [[nodiscard]] double height() const;

    /// The rows end, downwards, at `foot`; the marks have their y by now.
    [[nodiscard]] std::string markup(double foot) const;

    /// Of every mark, to be told its y.
    [[nodiscard]] std::vector<Mark>& marks() { return marks_; }

    /// How many have a name that stands there.
    [[nodiscard]] std::size_t named() const { return named_.size(); }

  private:
    struct Named {
        std::size_t mark;
        std::string words;
        int row; ///< from 0, the lowest
        double from, to;
        bool leads_right; ///< the words begin at their line, else they end there
    };

    /// By rank, and of one rank from the left (1) or from the right (-1).
    void place_all(double direction);
    void place(std::size_t mark);
    [[nodiscard]] bool fits(const Named& one) const;

    std::vector<Mark> marks_;
    Room room_;
    std::vector<Named> named_;
};

} // namespace tumpline::cli
