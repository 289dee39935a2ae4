#include "tests/support/check_rows.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tumpline::test {

void check_row(const PublishedValue& row, const Evaluators& evaluators, const Misses& misses) {
    if (!row.expected_text.empty()) {
        const auto text = evaluators.texts.find(row.formula);
        ASSERT_NE(text, evaluators.texts.end()) << "no evaluator of texts for " << row.formula;
        EXPECT_EQ(text->second(row), row.expected_text) << row;
        return;
    }
    const auto number = evaluators.numbers.find(row.formula);
    ASSERT_NE(number, evaluators.numbers.end()) << "no evaluator for " << row.formula;
    const double ours = number->second(row);
    ASSERT_TRUE(std::isfinite(ours)) << row;
    // An exact row is exact in the printed digits, not in the last bit of a conversion.
    const double tolerance = row.tolerance + 1e-9 * std::abs(row.expected);
    const auto miss = misses.find(row.id);
    if (miss == misses.end())
        EXPECT_NEAR(ours, row.expected, tolerance) << row;
    else
        EXPECT_GT(std::abs(ours - row.expected), tolerance)
            << row << " is met; take it from the list of misses: " << miss->second;
}

void check_misses(const std::string& family, const Misses& misses) {
    std::map<std::string, bool> printed;
    for (const PublishedValue& row : published(family))
        printed[row.id] = row.published;
    for (const auto& [id, reason] : misses)
        EXPECT_TRUE(printed.contains(id) && printed.at(id) && !reason.empty())
            << id << " is no printed row of " << family;
}

} // namespace tumpline::test
