#pragma once

#include <string>
#include <string_view>

namespace tumpline::geo {

/// `text` as a name in one line: valid UTF-8, runs of blanks and control characters made one
/// blank, none at the ends, at most 200 bytes.
[[nodiscard]] std::string one_line(std::string_view text);

} // namespace tumpline::geo
