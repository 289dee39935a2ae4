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

/// Rows that a check answers, but not within the tolerance, and why.
struct RowException {
    std::string_view ids;
    std::string_view why;
};

/// Expects of every row of tests/published/`family`.json that one of the two tables knows it, and
/// that the value of a check lies within the row's tolerance; and of every entry of both tables
/// that a row needs it. One test for a whole family: each test is a process of its own under ctest.
void expect_rows(std::string_view family,
                 std::span<const RowCheck> checks,
                 std::span<const RowException> exceptions);

} // namespace tumpline::test
