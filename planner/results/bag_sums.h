#pragma once

#include "planner/results/bag_trim.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace tumpline::planner {

/// The most level of all ways to divide `items` over two bags, by the table of every sum that can
/// be reached: masses rounded to the gram, volumes up to the decilitre. So the masses may differ by
/// a gram per item more than need be, and a way that fits by less than a decilitre may be missed.
/// Nothing if no way fits, or if the table would have more than `most_sums` places.
[[nodiscard]] std::optional<std::vector<bool>> level_by_sums(const std::vector<BagItem>& items,
                                                             const BagVolumes& volumes);

/// Bounds memory: one byte each.
inline constexpr std::size_t most_sums = 60'000'000;

} // namespace tumpline::planner
