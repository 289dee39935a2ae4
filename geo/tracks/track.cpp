#include "geo/tracks/track.h"

#include "geo/input_error.h"
#include "geo/tracks/gpx.h"
#include "geo/tracks/vector_file.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <fstream>
#include <string_view>
#include <system_error>

namespace tumpline::geo {

namespace {

/// What is wrong with a file as a whole.
struct Fault {
    std::string found;
    std::string expected;
    std::string advice;
};

[[noreturn]] void fail(const std::filesystem::path& file, const Fault& fault) {
    throw InputError({{.file = file.string(),
                       .place = "",
                       .found = fault.found,
                       .expected = fault.expected,
                       .advice = fault.advice}});
}

/// Nothing but a plain file on this machine is opened.
void require_file(const std::filesystem::path& file) {
    const std::string name = file.string();
    if (name.starts_with("/vsi") || name.find("://") != std::string::npos)
        fail(file,
             {.found = "an address",
              .expected = "a file on this machine",
              .advice = "download it first: nothing is fetched from the network"});
    std::error_code error;
    const std::filesystem::file_status status = std::filesystem::status(file, error);
    if (!std::filesystem::exists(status))
        fail(file,
             {.found = "no such file",
              .expected = "a track file",
              .advice = "check the name; a trip file's tracks are looked for in its folder"});
    if (std::filesystem::is_directory(status) && file.extension() != ".gdb")
        fail(file,
             {.found = "a folder", .expected = "a track file", .advice = "name a file in it"});
    if (!std::filesystem::is_regular_file(status) && !std::filesystem::is_directory(status))
        fail(file, {.found = "a device or pipe", .expected = "a track file", .advice = ""});
}

/// The first bytes of the file; empty for a folder.
std::string head(const std::filesystem::path& file) {
    if (std::filesystem::is_directory(file))
        return {};
    std::ifstream in(file, std::ios::binary);
    std::string bytes(4096, '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (!in.eof() && in.gcount() == 0)
        fail(file,
             {.found = "a file that may not be read",
              .expected = "a track file",
              .advice = "check its permissions"});
    bytes.resize(static_cast<std::size_t>(in.gcount()));
    if (bytes.empty())
        fail(file,
             {.found = "an empty file",
              .expected = "a track file",
              .advice = "export or copy it again"});
    return bytes;
}

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

Repairs& operator+=(Repairs& sum, const Repairs& more) {
    sum.duplicates += more.duplicates;
    sum.spikes += more.spikes;
    sum.invalid_points += more.invalid_points;
    sum.missing_heights += more.missing_heights;
    sum.void_heights += more.void_heights;
    sum.backward_times += more.backward_times;
    sum.antimeridian += more.antimeridian;
    sum.joined_parts += more.joined_parts;
    return sum;
}

TrackFile read_tracks(const std::filesystem::path& file) {
    require_file(file);
    const std::string bytes = head(file);
    if (!is_for_gpx(file, bytes))
        return read_vector_file(file);
    if (is_binary(bytes))
        fail(file,
             {.found = "binary data",
              .expected = "GPX, which is text",
              .advice = "export the track as GPX or GeoJSON"});
    return read_gpx(file);
}

std::vector<TrackPoint> joined(const Track& track) {
    std::size_t count = 0;
    for (const std::vector<TrackPoint>& part : track.parts)
        count += part.size();
    std::vector<TrackPoint> points;
    points.reserve(count);
    for (const std::vector<TrackPoint>& part : track.parts) {
        // the end of one part and the start of the next are often written twice
        const bool seam = !points.empty() && !part.empty() && points.back().at == part.front().at;
        points.insert(points.end(), part.begin() + (seam ? 1 : 0), part.end());
    }
    return points;
}

} // namespace tumpline::geo
