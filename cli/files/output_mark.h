#pragma once

#include <filesystem>
#include <string>
#include <string_view>

/// How an output says that tumpline wrote it, and whether somebody changed it since: a digest of
/// the whole file stands in the file itself, in a place where the format allows a remark. A GPX has
/// it in a comment, a book in a `meta`, a GeoJSON in a member of its own. Tables of CSV have no
/// such place and no mark. It guards against mistakes, not against forgery.
namespace tumpline::cli {

/// The mark while its digest is not known: what an exporter writes, before any text of people's
/// own.
inline constexpr std::string_view blank_mark = "tumpline-digest 0000000000000000";

/// `content` with the digest in its first blank mark: FNV-1a, 64 bits, of all the bytes with the
/// blank mark in its place.
[[nodiscard]] std::string marked(std::string content);

enum class Authorship {
    none,    ///< nothing is there
    ours,    ///< tumpline wrote it, and nobody changed it
    changed, ///< tumpline wrote it, and somebody changed it since
    other    ///< no mark of ours
};

/// Whose file it is; one that cannot be read is of others.
[[nodiscard]] Authorship authorship_of(const std::filesystem::path& file);

} // namespace tumpline::cli
