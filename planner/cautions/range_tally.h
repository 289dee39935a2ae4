#pragma once

#include "planner/quantities/unit_text.h"

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// How figures outside the range of a model are gathered and told.
namespace tumpline::planner {

/// A figure as people read it, with its unit.
using ShowFigure = UnitText (*)(double);

/// Least and most value of a quantity outside its range, and over how much of the way.
class RangeExcess {
  public:
    RangeExcess(std::optional<double> least, std::optional<double> most)
        : least_(least), most_(most) {}

    /// A value that held over `length_m` of the way, 0 where that says nothing.
    void see(double value, double length_m = 0.0);

    [[nodiscard]] bool any() const { return lowest_ <= highest_; }

    /// The value furthest outside, "-52.0 %"; both where it lies outside on both sides.
    [[nodiscard]] UnitText worst(ShowFigure show) const;

    [[nodiscard]] double length_m() const { return length_m_; }

    /// "-40.0 to +40.0 %", "up to 0.66 of body mass".
    [[nodiscard]] UnitText range(ShowFigure show) const;

  private:
    std::optional<double> least_, most_;
    double lowest_ = std::numeric_limits<double>::infinity();
    double highest_ = -std::numeric_limits<double>::infinity();
    double length_m_ = 0.0;
};

/// What lies outside the range of one model, in words.
class RangeTally {
  public:
    /// Takes it up if anything of it lies outside.
    void add(std::string_view quantity, const RangeExcess& beyond, ShowFigure show);

    [[nodiscard]] bool empty() const { return reported_.empty(); }

    /// "Outside the range of tobler: slope +90.0 % over 50 m (covers -57.7 to +83.9 %)."
    [[nodiscard]] UnitText text(std::string_view model) const;

  private:
    std::vector<UnitText> reported_;
};

} // namespace tumpline::planner
