#pragma once

#include "cli/console.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Text of people's own (names of trips, places and things) in the columns of a terminal.
namespace tumpline::cli {

/// Between these a page fits the terminal.
inline constexpr std::size_t least_columns = 72;
inline constexpr std::size_t most_columns = 120;

/// `text` as one harmless line: control characters, line ends and characters that turn the reading
/// direction become U+FFFD or a space; bytes that are no UTF-8 become U+FFFD.
[[nodiscard]] std::string one_line(std::string_view text);

/// Columns that `utf8` takes on a terminal: two for the wide characters of East Asia and pictures,
/// none for marks that join the letter before them. Source: [UAX11], by libutf8proc.
[[nodiscard]] std::size_t columns_of(std::string_view utf8);

/// `utf8` cut so that it takes at most `most` columns, an ellipsis in place of what was left out.
[[nodiscard]] std::string fitted(std::string_view utf8, std::size_t most);

/// `utf8` broken between words into lines of at most `most` columns; a word that is longer is
/// broken where it must be.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view utf8, std::size_t most);

} // namespace tumpline::cli
