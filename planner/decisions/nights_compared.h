#pragma once

#include "planner/plan.h"
#include "planner/solution/nights.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// A choice with its plan.
struct NightsOption {
    Plan plan;
    std::vector<std::string> nights; ///< names; of a night's places the camp's
    std::vector<DayCost> days;       ///< of travel, in order
    DayCost cost;
    NightLimits broken = 0;
};

/// Where to sleep on a trip, whatever nights its file lists.
struct NightsPlan {
    NightsOption best;
    std::vector<NightsOption> next;   ///< up to two
    std::vector<NightsOption> listed; ///< none or one: the nights that the file lists
    int asked = 0;
    std::size_t places = 0;
    bool camps = true;
};

/// Throws: geo::InputError as listed_nights does.
[[nodiscard]] NightsPlan plan_nights(const Trip& trip, const Route& route);

/// The same while somebody watches; empty if they stopped it.
[[nodiscard]] std::optional<NightsPlan>
watched_nights(const Trip& trip, const Route& route, const NightsWatch& watch);

} // namespace tumpline::planner
