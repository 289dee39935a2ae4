#pragma once

#include "planner/decisions/compare.h"
#include "planner/quantities/quantities.h"

#include <string>
#include <string_view>

namespace tumpline::cli {

/// "walking".
[[nodiscard]] std::string_view figure_words(planner::Figure figure);

/// Shows figures of plans and their differences in the reader's units.
class ComparedFigures {
  public:
    explicit ComparedFigures(planner::UnitSystem units) : units_(units) {}

    [[nodiscard]] std::string figure(planner::Figure figure, double value) const;

    /// With its sign; empty where the reader would see no difference.
    [[nodiscard]] std::string difference(planner::Figure kind, double value) const;

  private:
    planner::UnitSystem units_;
};

} // namespace tumpline::cli
