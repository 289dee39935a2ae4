#include "geo/tracks/read_tracks.h"

#include "geo/gate/plain_file.h"
#include "geo/input_error.h"
#include "geo/tracks/gpx.h"
#include "geo/tracks/vector_file.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>

namespace tumpline::geo {

namespace {

/// The local name of the first element of an XML text, lower case; empty if there is none.
std::string root_name(std::string_view text) {
    while (true) {
        const std::size_t open = text.find('<');
        if (open == std::string_view::npos || open + 1 == text.size())
            return {};
        text.remove_prefix(open + 1);
        if (text.starts_with("!--")) {
            const std::size_t end = text.find("-->");
            text.remove_prefix(std::min(end, text.size()));
        } else if (text.front() != '?' && text.front() != '!') {
            break;
        }
    }
    std::string_view name = text.substr(0, text.find_first_of(" \t\r\n/>"));
    if (const std::size_t colon = name.find(':'); colon != std::string_view::npos)
        name.remove_prefix(colon + 1);
    std::string lower(name);
    std::ranges::transform(lower, lower.begin(), [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    });
    return lower;
}

/// Whether GPX's reader is the one to judge the file: what claims to be GPX or is XML in a wider
/// encoding, and web pages, which are often saved in a track's place.
bool is_for_gpx(const std::filesystem::path& file, std::string_view bytes) {
    constexpr std::array<std::string_view, 2> utf16{"\xFF\xFE", "\xFE\xFF"};
    const std::string root = root_name(bytes);
    return root == "gpx" || root == "html" || file.extension() == ".gpx" ||
           file.extension() == ".GPX" || std::ranges::any_of(utf16, [&](std::string_view mark) {
               return bytes.starts_with(mark);
           });
}

bool is_binary(std::string_view bytes) {
    return bytes.find('\0') != std::string_view::npos && !bytes.starts_with("\xFF\xFE") &&
           !bytes.starts_with("\xFE\xFF") && !bytes.starts_with(std::string_view("<\0", 2)) &&
           !bytes.starts_with(std::string_view("\0<", 2));
}

} // namespace

TrackFile read_tracks(const std::filesystem::path& file) {
    const std::string bytes = require_plain_file(file, track_wanted);
    if (!is_for_gpx(file, bytes))
        return read_vector_file(file);
    if (is_binary(bytes))
        throw InputError({{.file = file.string(),
                           .place = "",
                           .found = "binary data",
                           .expected = "GPX, which is text",
                           .advice = "export the track as GPX or GeoJSON"}});
    return read_gpx(file);
}

} // namespace tumpline::geo
