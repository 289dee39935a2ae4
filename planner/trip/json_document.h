#pragma once

#include "geo/input_error.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {

/// A JSON value as it stands in a file: members in order, each key once.
struct JsonValue {
    enum class Kind { null, boolean, number, text, list, object };
    struct Member;

    Kind kind = Kind::null;
    bool flag = false;
    double number = 0.0;
    std::size_t line = 0; ///< on which it stands (an object or a list: begins), counted from 1
    bool whole = false;   ///< the number was written without a point or an exponent
    std::string text;     ///< of a text; of a number, as it is shown in messages
    std::vector<JsonValue> items;
    std::vector<Member> members;

    [[nodiscard]] const JsonValue* find(std::string_view key) const;
};

/// A key of an object and what it holds.
struct JsonValue::Member {
    std::string key;
    JsonValue value;
};

/// What may be read at all: a trip file of a long expedition has some hundred kilobytes.
struct JsonLimits {
    std::size_t longest_bytes = std::size_t{16} * 1024 * 1024;
    std::size_t deepest = 32;
    std::size_t most_values = 1'000'000;
    std::size_t most_members = 200; ///< of one object
};

/// Reads JSON with comments; a byte order mark in front is passed over. Bounded in depth, size and
/// number of values.
/// Throws: geo::InputError naming `file`, with line and column, for what is not JSON, not UTF-8, a
/// key given twice, or beyond the limits.
[[nodiscard]] JsonValue
read_json(std::string_view text, const std::string& file, const JsonLimits& limits = {});

/// A value in one line, at most `longest` letters, for messages.
[[nodiscard]] std::string shown(const JsonValue& value, std::size_t longest = 60);

/// "/kit/3/mass" from "/kit/3" and "mass", '~' and '/' of the key written as RFC 6901 wants.
[[nodiscard]] std::string pointer_to(std::string_view parent, std::string_view key);

} // namespace tumpline::planner
