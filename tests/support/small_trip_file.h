#pragma once

#include "planner/trip/trip.h"

#include <string>
#include <vector>

namespace tumpline::test {

/// A trip file with little in it and nothing wrong: a lake and a carry, Ada (68 kg) and Ben (80
/// kg), a red boat, a tent, a camp "Birch spit".
inline constexpr const char* small_trip_text = R"({
  "tumpline": 1,
  "route": {
    "tracks": ["a.gpx"],
    "legs": [{"name": "lake", "travel": "paddle"}, {"name": "carry", "travel": "portage"}],
    "places": [{"name": "Birch spit", "kind": "camp"}]
  },
  "party": [{"name": "Ada", "body": "68 kg"}, {"name": "Ben", "body": "80 kg"}],
  "craft": [{"name": "red boat", "mass": "3.3 kg", "crew": ["Ada"]}],
  "kit": [{"item": "tent", "mass": "1.9 kg"}]
})";

/// What the reader makes of it with `value`, JSON, put at a pointer.
[[nodiscard]] planner::Trip small_trip_with(const std::string& pointer, const std::string& value);

/// The messages about it; none if nothing is wrong.
[[nodiscard]] std::vector<std::string> problems_with(const std::string& pointer,
                                                     const std::string& value);

} // namespace tumpline::test
