#include "tests/support/family_rows.h"

#include <algorithm>
#include <cmath>

namespace tumpline::test {

namespace {

/// The entry with the longest `ids` that the id begins with; null if there is none.
template <class Entry> const Entry* longest(std::string_view id, std::span<const Entry> entries) {
    const Entry* best = nullptr;
    for (const Entry& entry : entries)
        if (id.starts_with(entry.ids) && (best == nullptr || entry.ids.size() > best->ids.size()))
            best = &entry;
    return best;
}

template <class Entry>
void expect_used(const std::vector<PublishedValue>& rows, std::span<const Entry> entries) {
    for (const Entry& entry : entries) {
        const auto uses = [&](const PublishedValue& row) {
            return longest(row.id, entries) == &entry;
        };
        EXPECT_TRUE(std::any_of(rows.begin(), rows.end(), uses)) << "no row for " << entry.ids;
    }
}

void expect_row(const PublishedValue& row,
                std::span<const RowCheck> checks,
                std::span<const RowException> exceptions) {
    const RowCheck* const check = longest(row.id, checks);
    const RowException* const exception = longest(row.id, exceptions);
    ASSERT_TRUE(check != nullptr || exception != nullptr) << row << " has no check";
    if (exception != nullptr && (check == nullptr || exception->ids.size() > check->ids.size())) {
        EXPECT_GT(exception->why.size(), 10U) << "the reason for " << row << " is missing";
        ASSERT_TRUE(check != nullptr) << row << " has no check to miss";
        EXPECT_GT(std::abs(check->value(row) - row.expected), row.tolerance)
            << row << " is met by now";
        return;
    }
    const double value = check->value(row);
    EXPECT_TRUE(std::isfinite(value)) << row;
    EXPECT_NEAR(value, row.expected, row.tolerance) << row << ", " << row.unit;
}

} // namespace

void expect_rows(std::string_view family,
                 std::span<const RowCheck> checks,
                 std::span<const RowException> exceptions) {
    const std::vector<PublishedValue> rows = published(family);
    for (const PublishedValue& row : rows)
        expect_row(row, checks, exceptions);
    expect_used(rows, checks);
    expect_used(rows, exceptions);
}

} // namespace tumpline::test
