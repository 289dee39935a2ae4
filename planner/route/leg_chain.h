#pragma once

#include "planner/route/route.h"
#include "planner/route/traced_line.h"

#include <string>
#include <vector>

namespace tumpline::planner {

inline constexpr double largest_gap_m = 50.0; ///< beyond it a gap is a caution (docs/route.md)

/// A leg before it has its place in the chain.
struct LooseLeg {
    TripLeg spec;
    Travel travel;
    std::string name;
    TracedLine traced;
    bool direction_given; ///< by from and to
    bool turned_round;
};

/// Turns round legs that fit the chain only backwards, and alternatives that fit only backwards
/// where the leg starts for which they stand.
void turn_round(std::vector<LooseLeg>& legs);

/// Lays legs end to end, with a caution of each that was turned round and of each gap.
void lay_legs(Route& route, std::vector<RouteLeg> legs);

} // namespace tumpline::planner
