#pragma once

#include "planner/route/alternatives.h"
#include "tests/support/random_trip.h"

#include <cstdint>
#include <vector>

namespace tumpline::test {

/// A random trip and the same with its alternatives laid.
struct VariedTrip {
    RandomTrip drawn;
    std::vector<planner::OtherRoute> others;
};

/// The random trip of a seed with what happens more seldom: portages first, last and in a row, the
/// way there and back, children, a member without a seat in any boat, camps without water, legs
/// with an alternative. The same seed gives the same trip on every machine.
[[nodiscard]] VariedTrip varied_trip(std::uint64_t seed);

} // namespace tumpline::test
