#pragma once

#include "tests/support/published_value.h"

#include <span>
#include <string_view>

namespace tumpline::test {

/// What answers the rows whose ids begin so; of several that fit a row, the longest does.
struct RowCheck {
    std::string_view ids;
    double (*value)(const PublishedValue& row); ///< in the row's unit
};

/// Rows that nothing of ours answers, or answers otherwise, and why.
struct RowException {
    std::string_view ids;
    std::string_view why;
};

/// Expects that exactly one of the two tables knows the row, and that the value of a check lies
/// within the row's tolerance.
void expect_row(const PublishedValue& row,
                std::span<const RowCheck> checks,
                std::span<const RowException> exceptions);

/// Expects that each entry of both tables fits a row of the family, so that none is dead.
void expect_all_used(std::string_view family,
                     std::span<const RowCheck> checks,
                     std::span<const RowException> exceptions);

} // namespace tumpline::test
