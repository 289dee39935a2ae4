#pragma once

#include <filesystem>
#include <string>

namespace tumpline::geo {

/// Where a fault that GDAL reported says that the trouble is, as "line 3"; empty if it does not.
[[nodiscard]] std::string fault_place(const std::string& fault, const std::filesystem::path& file);

/// A fault in words for people: without the library's own names, paths and offsets.
[[nodiscard]] std::string fault_in_words(std::string fault, const std::filesystem::path& file);

} // namespace tumpline::geo
