#pragma once

#include <cstddef>

/// Counts what the whole program takes from the heap; linked into the benchmarks alone.
namespace tumpline::bench {

/// Allocations since the program began.
[[nodiscard]] std::size_t allocations();

} // namespace tumpline::bench
