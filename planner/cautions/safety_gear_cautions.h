#pragma once

#include "planner/results/assembly.h"

#include <string>
#include <vector>

namespace tumpline::planner {

/// Safety gear that the trip file lists and that stays at home, or lies in a bag, where practice
/// wants it. By the key "is" of a thing, never by its name.
[[nodiscard]] std::vector<Caution> safety_gear_cautions(const Assembly& draft, const Plan& plan);

/// What practice wants on this trip and no thing of the kit is said to be: "life jacket of Bo".
[[nodiscard]] std::vector<std::string> unlisted_safety_gear(const Assembly& draft,
                                                            const Plan& plan);

} // namespace tumpline::planner
