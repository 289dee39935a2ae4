#pragma once

#include "planner/trip/trip.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <vector>

namespace tumpline::test {

/// A trip file with little in it and nothing wrong: a lake and a carry, Ada (68 kg) and Ben (80
/// kg), a red boat, a tent, a camp "Birch spit".
[[nodiscard]] nlohmann::json small_trip_file();

/// What the reader makes of it with `value`, JSON, put at a pointer.
[[nodiscard]] planner::Trip small_trip_with(const std::string& pointer, const std::string& value);

/// The messages about it; none if nothing is wrong.
[[nodiscard]] std::vector<std::string> problems_with(const std::string& pointer,
                                                     const std::string& value);

} // namespace tumpline::test
