#pragma once

#include <string_view>

namespace tumpline::cli {

/// The program's version, "0.1.0"; set by the build from the project's.
[[nodiscard]] std::string_view version();

} // namespace tumpline::cli
