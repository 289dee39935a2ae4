#include "geo/one_line.h"

#include "geo/utf8.h"

#include <cstddef>
#include <optional>

namespace tumpline::geo {

namespace {

/// Blanks and control characters, C0 and C1.
bool parts_words(char32_t code) {
    return code <= 0x20 || (code >= 0x7F && code < 0xA0);
}

} // namespace

std::string one_line(std::string_view text) {
    constexpr std::size_t longest = 200;
    std::string line;
    bool gap = false;
    while (!text.empty()) {
        const std::optional<Utf8Character> read = first_character(text);
        const std::string_view character = read ? text.substr(0, read->bytes) : "?";
        text.remove_prefix(read ? read->bytes : 1);
        if (read && parts_words(read->code)) {
            gap = !line.empty();
            continue;
        }
        if (line.size() + character.size() + (gap ? 1 : 0) > longest)
            break;
        if (gap)
            line += ' ';
        gap = false;
        line += character;
    }
    return line;
}

} // namespace tumpline::geo
