#pragma once

#include <string>
#include <vector>

/// Everything as luggage on the way to the start: before any vessel is filled.
namespace tumpline::planner {

struct Luggage {
    std::string member;              ///< who looks after it; empty: the whole party
    double mass_kg = 0.0;            ///< all of it, without drinking water and what is worn
    double worn_kg = 0.0;            ///< on the body
    std::vector<std::string> pieces; ///< a pack, what is in no pack, boats that do not roll up
    double heaviest_kg = 0.0;        ///< of one piece
};

} // namespace tumpline::planner
