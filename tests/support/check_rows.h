#pragma once

#include "tests/support/published_value.h"

#include <functional>
#include <map>
#include <string>

namespace tumpline::test {

/// How the figures of a family's check rows are computed, by the rows' model.
struct Evaluators {
    std::map<std::string, std::function<double(const PublishedValue&)>> numbers;
    std::map<std::string, std::function<std::string(const PublishedValue&)>> texts;
};

/// Printed rows that we do not meet, by id, each with its reason.
using Misses = std::map<std::string, std::string>;

/// Checks one row: within its tolerance, or named in `misses` and really missed, so that the list
/// cannot grow stale. A row whose model has no evaluator fails.
void check_row(const PublishedValue& row, const Evaluators& evaluators, const Misses& misses = {});

/// Fails for a miss whose id stands on no printed row of `family`.
void check_misses(const std::string& family, const Misses& misses);

} // namespace tumpline::test
