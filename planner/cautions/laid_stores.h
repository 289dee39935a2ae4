#pragma once

#include "planner/cautions/caution_list.h"
#include "planner/results/assembly.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace tumpline::planner {

/// What rules about food and about fuel that are laid down have in common.

/// What one day lacks of a store because it lies elsewhere.
struct DayShort {
    const StoreShort* first;        ///< of the day's meals
    std::vector<std::string> meals; ///< each once: "breakfast", "food on the way"
    std::int64_t needs_mg;
    std::int64_t lacks_mg;
};

/// `meals` by the days on which they fall, in their order.
[[nodiscard]] std::vector<DayShort> short_by_day(const std::vector<StoreShort>& meals);

/// Places at which a store lies while a meal lacks it: "at Mill and Tarn". `lays`: whether an entry
/// lays that store down.
[[nodiscard]] std::string where_it_lies(const Assembly& draft,
                                        const StoreShort& meal,
                                        const std::function<bool(const Leave&)>& lays);

/// More is to be laid down than there is, by what counts.
[[nodiscard]] bool is_too_much(const StoreLaid& laid);

/// From here the list speaks of where an entry is left, or where a meal is lacking.
void at_leave(CautionList& list, const Assembly& draft, std::size_t leave);
void at_meal(CautionList& list, const Assembly& draft, const StoreShort& meal);

} // namespace tumpline::planner
