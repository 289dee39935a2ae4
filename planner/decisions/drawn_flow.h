#pragma once

#include "planner/trip/river_flow.h"

#include <optional>
#include <vector>

/// Levels of a river drawn between its columns.
namespace tumpline::planner {

/// A river's levels as a scale: low at 0, normal at 1, high at 2, those between by the reading (of
/// a discharge by its logarithm), or evenly where no readings are given.
class FlowScale {
  public:
    explicit FlowScale(const RiverFlow& flow);

    /// Where `now` lies; empty where fewer than two levels are known, or it lies beyond them.
    [[nodiscard]] std::optional<double> now() const;

    /// The river there; beyond the lowest or highest level that is given it stays at that.
    [[nodiscard]] FlowState at(double position) const;

  private:
    struct Mark {
        double position;
        FlowState state;
    };

    /// Two marks that follow on each other.
    struct Gap {
        const Mark& below;
        const Mark& above;
    };

    [[nodiscard]] static double share_of(const Gap& gap, double reading);
    [[nodiscard]] static double reading_at(const Gap& gap, double share);

    RiverFlow flow_;
    std::vector<Mark> marks_;
    bool readings_ = false; ///< all marks have one, of one kind
};

/// A draw of a standard normal that is `now` at 0, as a change of the position: one draw in ten
/// lies beyond the next level up, one beyond the next level down. Common practice, no source.
[[nodiscard]] double flow_shift(double normal);

} // namespace tumpline::planner
