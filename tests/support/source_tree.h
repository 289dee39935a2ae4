#pragma once

#include <filesystem>
#include <string>

namespace tumpline::test {

/// The top of the repository that the tests were built from.
inline const std::filesystem::path root = TUMPLINE_SOURCE_DIR;

/// A whole file, byte for byte; a failed check and an empty text if it cannot be read.
[[nodiscard]] std::string text_of(const std::filesystem::path& file);

} // namespace tumpline::test
