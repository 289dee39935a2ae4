#include "cli/files/output_mark.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <fstream>
#include <iterator>
#include <system_error>

namespace tumpline::cli {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view mark_name = "tumpline-digest ";
constexpr std::size_t digits = 16;
static_assert(blank_mark.size() == mark_name.size() + digits);

/// [FNV]: offset basis and prime for 64 bits.
std::uint64_t fnv_1a(std::string_view bytes) {
    std::uint64_t hash = 0xcbf29ce484222325U;
    for (const char byte : bytes) {
        hash ^= static_cast<unsigned char>(byte);
        hash *= 0x100000001b3U;
    }
    return hash;
}

std::string digest_of(std::string_view blank_content) {
    return fmt::format("{:016x}", fnv_1a(blank_content));
}

} // namespace

std::string marked(std::string content) {
    const std::size_t at = content.find(blank_mark);
    if (at != std::string::npos)
        content.replace(at + mark_name.size(), digits, digest_of(content));
    return content;
}

Authorship authorship_of(const fs::path& file) {
    std::error_code error;
    if (!fs::exists(fs::symlink_status(file, error)))
        return Authorship::none;
    std::ifstream in(file, std::ios::binary);
    std::string content(std::istreambuf_iterator<char>(in), {});
    const std::size_t at = content.find(mark_name);
    if (!in || at == std::string::npos || content.size() < at + blank_mark.size())
        return Authorship::other;
    const std::string written = content.substr(at + mark_name.size(), digits);
    content.replace(at, blank_mark.size(), blank_mark);
    return digest_of(content) == written ? Authorship::ours : Authorship::changed;
}

} // namespace tumpline::cli
