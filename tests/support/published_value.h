#pragma once

#include <gtest/gtest.h>

#include <iosfwd>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::test {

/// One check row of tests/published/FAMILY.json.
struct PublishedValue {
    std::string id;
    std::string formula; ///< the key "formula", or "model" in rows that use that word
    std::map<std::string, double> inputs;
    std::map<std::string, std::string> texts; ///< inputs that are text
    double expected = 0.0;                    ///< if a number stands there
    std::string expected_text;                ///< if text stands there
    std::string unit;
    double tolerance = 0.0;
    bool published = false; ///< printed by somebody outside this project; otherwise a drift guard
    std::string source;
    std::string note; ///< the key "note", or "why"

    /// The input `key`. Throws: std::out_of_range naming row and key if it is not there.
    [[nodiscard]] double input(std::string_view key) const;
    [[nodiscard]] std::optional<double> input_if(std::string_view key) const;
    [[nodiscard]] const std::string& text(std::string_view key) const;
};

std::ostream& operator<<(std::ostream& out, const PublishedValue& row);

/// The rows of tests/published/`family`.json whose formula is `formula`, in the order of the file;
/// every row if `formula` is empty. The file is an array, or an object with an array "checks".
/// Throws: std::runtime_error if the file cannot be read, a row lacks a key, an id stands twice or
/// no row matches: a check that checks nothing is a fault.
[[nodiscard]] std::vector<PublishedValue> published(std::string_view family,
                                                    std::string_view formula = {});

/// The row's id as GoogleTest wants names: letters, digits and underscores.
[[nodiscard]] std::string row_name(const testing::TestParamInfo<PublishedValue>& row);

} // namespace tumpline::test
