#pragma once

#include "planner/results/assembly.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// Something to be stowed in one of two bags.
struct BagItem {
    double mass_kg;
    double volume_l;                 ///< 0 if not known
    std::optional<BagSide> bag = {}; ///< in which it must lie; empty: in either
};

/// Which bag each item goes into, and whether the volumes allow it.
struct Levelled {
    std::vector<bool> right;
    bool fits_volume;
    bool proven; ///< no other way is more level by 10 g, or fits if none was found that does
};

/// Two volumes, or zeros where they are not given.
struct BagVolumes {
    double left_l;
    double right_l;
};

/// Divides items over two bags so that their masses differ by at most 10 g more than the items
/// allow, within the volumes where those are known. The search ends after 5 000 steps; `proven` is
/// false where it did and no bound says that its answer is as level as that.
[[nodiscard]] Levelled level_bags(const std::vector<BagItem>& items, const BagVolumes& volumes);

/// The bags of a craft as a stretch afloat begins.
struct TrimmedBags {
    std::vector<Stowed> left, right, at_hand;
    bool fits_volume = true;
    std::optional<EndsLoad> ends = {}; ///< of what is said to lie at an end
};

[[nodiscard]] TrimmedBags trim_craft(const Assembly& draft, std::size_t craft, std::size_t stretch);

} // namespace tumpline::planner
