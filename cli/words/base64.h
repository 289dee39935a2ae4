#pragma once

#include <string>
#include <string_view>

namespace tumpline::cli {

/// Bytes as letters. Source: [RFC4648, section 4].
[[nodiscard]] std::string base64(std::string_view bytes);

} // namespace tumpline::cli
