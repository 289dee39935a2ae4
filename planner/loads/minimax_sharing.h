#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

/// Things that cannot be divided, shared out so that the heaviest load is least: among the members
/// of a party, over the loads of a portage. Masses are in milligrams:
/// sums of whole ones are exact in any order.
namespace tumpline::planner {

/// Who or what bears things: a member, or one load of a portage.
struct Bearer {
    double own_mg;          ///< borne whatever is shared out
    double limit_mg;        ///< what one should not go beyond
    double room = HUGE_VAL; ///< for what the things take of it; no limit unless said
};

/// Something that cannot be divided.
struct SharedThing {
    double mass_mg;
    std::vector<std::size_t> may_bear = {}; ///< bearers who may bear it; empty: anyone
    double takes = 0.0;                     ///< of a bearer's room
};

/// Who bears what.
struct SharedOut {
    std::vector<std::size_t> bearer; ///< per thing; empty if no way was found that the rooms allow
    std::vector<double> pool_share;  ///< per bearer, of what can be divided; sums to 1
    double heaviest_ratio = 0.0;     ///< load over limit of the worst off
    double lower_bound = 0.0;        ///< no sharing can do better
    bool proven = false;             ///< the search was complete: nothing better exists
};

/// Shares of a divisible mass that make the heaviest load over its bearer's limit least: the
/// lightest relative loads are filled first, up to one common level.
[[nodiscard]] std::vector<double> level_out(const std::vector<Bearer>& bearers, double pool_mg);

/// Shares out indivisible things and a divisible pool so that the heaviest load relative to its
/// bearer's limit is least. Branch and bound without recursion: the heaviest thing first, to the
/// bearer whom it leaves the lightest. That alone is an answer, reached before the budget ends
/// however many things there are (where rooms bar no way); with the whole budget the best found;
/// exact if the search came to its end. `lower_bound` says how much better any sharing could be.
[[nodiscard]] SharedOut share_out(const std::vector<Bearer>& bearers,
                                  const std::vector<SharedThing>& things,
                                  double pool_mg);

/// The things of each bearer, shared out without proof but quickly: those that take room first,
/// then the heaviest first, each to the bearer whom it leaves the lightest; then moves out of the
/// heaviest load and exchanges with it while they help. What no room is left for goes to the
/// heaviest.
[[nodiscard]] std::vector<std::vector<std::size_t>>
share_by_exchanges(const std::vector<Bearer>& bearers, const std::vector<SharedThing>& things);

} // namespace tumpline::planner
