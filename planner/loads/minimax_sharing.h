#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// A member who bears things.
struct Bearer {
    double own_kg;   ///< borne whatever is shared out
    double limit_kg; ///< what one should not go beyond
};

/// Something that cannot be divided.
struct SharedThing {
    double mass_kg;
    std::vector<std::size_t> may_bear; ///< members who may bear it; empty: anyone
};

/// Who bears what.
struct SharedOut {
    std::vector<std::size_t> bearer; ///< per thing
    std::vector<double> pool_share;  ///< per member, of what can be divided; sums to 1
    double heaviest_ratio;           ///< load over limit of the worst off
    double lower_bound;              ///< no sharing can do better
    bool proven;                     ///< the search was complete: nothing better exists
};

/// Shares of a divisible mass that make the heaviest load over its bearer's limit least: the
/// lightest relative loads are filled first, up to one common level.
[[nodiscard]] std::vector<double> level_out(const std::vector<Bearer>& bearers, double pool_kg);

/// Shares out indivisible things and a divisible pool so that the heaviest load relative to its
/// bearer's limit is least. Exact branch and bound up to a fixed number of nodes (the same on every
/// machine), else the best found; `lower_bound` says how much better any sharing could be.
[[nodiscard]] SharedOut share_out(const std::vector<Bearer>& bearers,
                                  const std::vector<SharedThing>& things,
                                  double pool_kg);

} // namespace tumpline::planner
