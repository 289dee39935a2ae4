#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace tumpline::planner {

/// How many letters must be put in, left out, changed or swapped with their neighbour to turn one
/// word into the other; case does not count, nor whether parts are joined by '-', '_' or a space.
[[nodiscard]] std::size_t edit_distance(std::string_view one, std::string_view other);

/// The word of `known` that `word` was probably meant to be: at most a third of its letters away
/// (one letter at least), or the only one that begins with it. Empty if none is near.
[[nodiscard]] std::string nearest_word(std::string_view word,
                                       const std::vector<std::string_view>& known);

/// "lake, river or sea"; "lake" alone; empty for none.
[[nodiscard]] std::string either(const std::vector<std::string_view>& words);

/// "Ada, Bo and Cy"; "Ada" alone; empty for none.
[[nodiscard]] std::string listed(const std::vector<std::string>& words);

} // namespace tumpline::planner
