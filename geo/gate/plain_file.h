#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace tumpline::geo {

/// What a caller wants to open, in words for its messages.
struct Wanted {
    std::string_view what;    ///< "a track file"
    std::string_view missing; ///< advice where there is no such file
};

inline constexpr Wanted track_wanted{
    .what = "a track file",
    .missing = "check the name; a trip file's tracks are looked for in its folder"};

/// The first bytes (4096 at most) of a regular file of this machine that may be read, holds
/// something and is not packed.
/// Throws: InputError that says which of these it is not.
[[nodiscard]] std::string require_plain_file(const std::filesystem::path& file,
                                             const Wanted& wanted);

} // namespace tumpline::geo
