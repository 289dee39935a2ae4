#pragma once

#include <string_view>

namespace tumpline::cli {

/// A file of cli/templates, put into the program by the build. Throws std::out_of_range if there
/// is none of that name.
[[nodiscard]] std::string_view book_template(std::string_view name);

} // namespace tumpline::cli
