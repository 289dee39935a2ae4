#pragma once

#include "planner/defaults/defaults.h"
#include "planner/quantities/leg_number.h"
#include "planner/quantities/unit_text.h"
#include "planner/route/route.h"

#include <cstddef>
#include <vector>

namespace tumpline::planner {

/// Why a thing comes or stays.
struct KitReason {
    UnitText why{""};        ///< names the leg that decides it; empty: it comes without a condition
    LegNumber leg = {};      ///< none: the weather asks for it, or an override
    bool overridden = false; ///< the trip file's `bring` decided otherwise than its condition
};

/// Which things come along, and why.
struct KitChoice {
    std::vector<bool> brought;      ///< per kit item
    std::vector<KitReason> reasons; ///< per kit item
};

/// Weighs each item's conditions against the legs and the weather. What is not known (water
/// temperature, night frost, rain) counts as holding: rather carried than missed.
[[nodiscard]] KitChoice choose_kit(const Trip& trip, const Route& route, const Assumed& assumed);

} // namespace tumpline::planner
