#pragma once

#include <cstdio>
#include <filesystem>

namespace tumpline::geo {

/// Opens for reading what is a regular file, links followed; null for anything else. Never waits,
/// as opening a pipe does, and never wakes a device.
[[nodiscard]] std::FILE* open_regular_file(const std::filesystem::path& path);

} // namespace tumpline::geo
