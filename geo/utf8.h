#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace tumpline::geo {

/// A character and the bytes that it takes in its text.
struct Utf8Character {
    char32_t code;
    std::size_t bytes;
};

/// The character at the front of `text`; nothing at the end and where the bytes are no UTF-8: too
/// long a form, half of a pair, beyond the last character. Source: Unicode Standard, table 3-7, by
/// libutf8proc.
[[nodiscard]] std::optional<Utf8Character> first_character(std::string_view text);

} // namespace tumpline::geo
