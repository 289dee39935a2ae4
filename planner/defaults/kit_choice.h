#pragma once

#include "planner/defaults/defaults.h"
#include "planner/route/route.h"

#include <cstddef>
#include <string>
#include <vector>

namespace tumpline::planner {

/// What does not come, and why.
struct StaysHome {
    std::string item;
    double mass_kg = 0.0;
    std::string why;
    std::string imperial;       ///< the same in imperial units; empty if it is the same
    double saved_kg_km = 0.0;   ///< kilograms times kilometres not carried on foot
    double saved_kg_m_up = 0.0; ///< kilograms times metres not climbed
};

/// Why a conditional item comes.
struct Comes {
    std::string item;
    double mass_kg = 0.0;
    std::string why;      ///< names the leg that triggers it
    std::string imperial; ///< the same in imperial units; empty if it is the same
    std::size_t leg = 0;  ///< from 1; 0: the weather, or an override
    double cost_kg_km = 0.0;
    double cost_kg_m_up = 0.0;
    bool override_recorded = false;
};

/// Which things come along, and why the others stay.
struct KitChoice {
    std::vector<bool> brought; ///< per kit item
    std::vector<StaysHome> stays_home;
    std::vector<Comes> comes; ///< items with a condition that holds, or an override
};

/// Weighs each item's conditions against the legs and the weather. What is not known (water
/// temperature, night frost, rain) counts as holding: rather carried than missed. The price of an
/// item is its mass times the way and the climb on foot.
[[nodiscard]] KitChoice choose_kit(const Trip& trip, const Route& route, const Assumed& assumed);

} // namespace tumpline::planner
