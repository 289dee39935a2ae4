#pragma once

#include "planner/caution.h"

#include <string>
#include <vector>

namespace tumpline::planner {

/// What the map's layers say of several legs (land_facts.h), said once for each kind with the legs
/// named; the first of a kind gives its place in the order. All other cautions are left as they
/// are.
[[nodiscard]] std::vector<Caution> grouped_by_kind(const std::vector<Caution>& cautions);

/// Whether a caution is such a fact of one leg, which its `figure` tells in a few words.
[[nodiscard]] bool is_land_fact(const Caution& caution);

/// "Running water crossed": what comes before that figure beside its own leg.
[[nodiscard]] std::string land_fact_word(const Caution& caution);

} // namespace tumpline::planner
