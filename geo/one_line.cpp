#include "geo/one_line.h"

#include <cstddef>

namespace tumpline::geo {

namespace {

/// Bytes of the UTF-8 character at the front; 0 if there is none.
std::size_t character_size(std::string_view text) {
    const auto byte = [&](std::size_t index) { return static_cast<unsigned char>(text[index]); };
    const unsigned char lead = byte(0);
    const std::size_t size = lead < 0x80                   ? 1
                             : lead >= 0xC2 && lead < 0xE0 ? 2
                             : lead >= 0xE0 && lead < 0xF0 ? 3
                             : lead >= 0xF0 && lead < 0xF5 ? 4
                                                           : 0;
    if (size == 0 || size > text.size())
        return 0;
    for (std::size_t index = 1; index < size; ++index)
        if ((byte(index) & 0xC0U) != 0x80U)
            return 0;
    if (size > 2) { // too long a form, half of a UTF-16 pair, or beyond the last character
        const unsigned char second = byte(1);
        if ((lead == 0xE0 && second < 0xA0) || (lead == 0xED && second >= 0xA0) ||
            (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second >= 0x90))
            return 0;
    }
    return size;
}

bool is_control(std::string_view character) {
    const auto lead = static_cast<unsigned char>(character.front());
    if (character.size() == 1)
        return lead <= 0x20 || lead == 0x7F;
    return character.size() == 2 && lead == 0xC2 && static_cast<unsigned char>(character[1]) < 0xA0;
}

} // namespace

std::string one_line(std::string_view text) {
    constexpr std::size_t longest = 200;
    std::string line;
    bool gap = false;
    while (!text.empty()) {
        const std::size_t size = character_size(text);
        const std::string_view character = size == 0 ? "?" : text.substr(0, size);
        text.remove_prefix(size == 0 ? 1 : size);
        if (is_control(character)) {
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
