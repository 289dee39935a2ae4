#pragma once

#include "planner/results/assembly.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// Whether one gets out at such a place, to help or a road.
[[nodiscard]] bool is_way_out(PlaceKind kind);

/// The way from one point of the route to another at a plan's own loads, there and back. Back the
/// climbs are descents, the wind comes from the other side and the current is against; the changes
/// stand at the same places. On foot the time within a stretch follows the slopes, afloat it is
/// spread evenly.
class WayTimes {
  public:
    explicit WayTimes(const Assembly& draft);

    /// Moving and change-overs up to a later point, without rests and nights.
    [[nodiscard]] double forward_s(double from_m, double to_m) const;

    struct Back {
        double moving_s;
        double changes_s;

        [[nodiscard]] double sum_s() const { return moving_s + changes_s; }
    };

    /// The same back to an earlier point; empty where current or wind leaves no way.
    [[nodiscard]] std::optional<Back> back(double from_m, double to_m) const;

    /// Seconds after midnight of its day at which the plan is at a point of a stretch, changes
    /// before it done and those after it not begun.
    [[nodiscard]] double clock_s(std::size_t stretch, double along_m) const;

  private:
    /// How the time of a stretch grows along it: shares of its length, there and back.
    struct Growth {
        std::vector<double> length, there, back; ///< ascending to 1; empty: evenly
    };

    [[nodiscard]] Growth growth_of(std::size_t stretch) const;
    [[nodiscard]] double share_at(std::size_t stretch, double along_m, bool back) const;

    const Assembly& draft_;
    std::vector<Growth> growth_;
    std::vector<std::optional<double>> back_s_; ///< whole stretches, moving
};

} // namespace tumpline::planner
