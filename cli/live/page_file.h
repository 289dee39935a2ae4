#pragma once

#include <string_view>

namespace tumpline::cli {

/// A file of cli/live/page, put into the program by the build. Throws std::out_of_range if there is
/// none of that name.
[[nodiscard]] std::string_view page_file(std::string_view name);

} // namespace tumpline::cli
