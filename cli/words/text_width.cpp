#include "cli/words/text_width.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace tumpline::cli {

namespace {

constexpr char32_t replacement = 0xFFFD;
constexpr std::string_view ellipsis = "\u2026";

struct Letter {
    char32_t code;
    std::size_t bytes; ///< that it takes in the text
};

/// The first character of `utf8` (not empty); what is no UTF-8 is one replacement per byte.
Letter first_letter(std::string_view utf8) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(utf8[i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80)
        return {lead, 1};
    const std::size_t bytes = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || utf8.size() < bytes)
        return {replacement, 1};
    char32_t code = lead & (0xFFU >> (bytes + 1));
    for (std::size_t i = 1; i < bytes; ++i) {
        if ((byte(i) & 0xC0U) != 0x80)
            return {replacement, 1};
        code = (code << 6U) | (byte(i) & 0x3FU);
    }
    constexpr std::array<char32_t, 5> least = {0, 0, 0x80, 0x800, 0x10000};
    const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
    if (code < least.at(bytes) || code > 0x10FFFF || surrogate)
        return {replacement, 1};
    return {code, bytes};
}

struct Range {
    char32_t first;
    char32_t last;
};

template <std::size_t count> bool within(const std::array<Range, count>& ranges, char32_t code) {
    return std::any_of(ranges.begin(), ranges.end(), [&](const Range& range) {
        return code >= range.first && code <= range.last;
    });
}

/// Marks and joiners that take no column (general categories Mn, Me and Cf of common scripts).
constexpr std::array<Range, 20> no_width = {
    {{0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD}, {0x0610, 0x061A}, {0x064B, 0x065F},
     {0x06D6, 0x06DC}, {0x0900, 0x0902}, {0x093C, 0x093C}, {0x0941, 0x0948}, {0x094D, 0x094D},
     {0x0E31, 0x0E31}, {0x0E34, 0x0E3A}, {0x0E47, 0x0E4E}, {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF},
     {0x200B, 0x200D}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}, {0xE0100, 0xE01EF}}};

/// Wide and fullwidth characters [UAX11], in blocks.
constexpr std::array<Range, 14> two_wide = {{{0x1100, 0x115F},
                                             {0x231A, 0x231B},
                                             {0x2E80, 0x303E},
                                             {0x3041, 0x33FF},
                                             {0x3400, 0x4DBF},
                                             {0x4E00, 0x9FFF},
                                             {0xA000, 0xA4CF},
                                             {0xA960, 0xA97F},
                                             {0xAC00, 0xD7A3},
                                             {0xF900, 0xFAFF},
                                             {0xFE30, 0xFE6F},
                                             {0xFF01, 0xFF60},
                                             {0x1F300, 0x1FAFF},
                                             {0x20000, 0x3FFFD}}};

/// Characters that would move the cursor, turn the line round or hide text.
constexpr std::array<Range, 7> harmful = {{{0x0000, 0x001F},
                                           {0x007F, 0x009F},
                                           {0x061C, 0x061C},
                                           {0x200E, 0x200F},
                                           {0x2028, 0x202E},
                                           {0x2060, 0x206F},
                                           {0xFEFF, 0xFEFF}}};

std::size_t columns_of_letter(char32_t code) {
    if (within(no_width, code))
        return 0;
    return within(two_wide, code) ? 2 : 1;
}

} // namespace

std::string one_line(std::string_view text) {
    std::string line;
    line.reserve(text.size());
    while (!text.empty()) {
        const Letter letter = first_letter(text);
        if (letter.code == '\t' || letter.code == '\n' || letter.code == '\r')
            line.push_back(' ');
        else if (letter.code == replacement || within(harmful, letter.code))
            line.append("\uFFFD");
        else
            line.append(text.substr(0, letter.bytes));
        text.remove_prefix(letter.bytes);
    }
    return line;
}

std::size_t columns_of(std::string_view utf8) {
    std::size_t columns = 0;
    while (!utf8.empty()) {
        const Letter letter = first_letter(utf8);
        columns += columns_of_letter(letter.code);
        utf8.remove_prefix(letter.bytes);
    }
    return columns;
}

namespace {

/// Bytes of the longest beginning of `utf8` that takes at most `most` columns.
std::size_t bytes_within(std::string_view utf8, std::size_t most) {
    std::size_t bytes = 0;
    std::size_t columns = 0;
    while (bytes < utf8.size()) {
        const Letter letter = first_letter(utf8.substr(bytes));
        columns += columns_of_letter(letter.code);
        if (columns > most)
            break;
        bytes += letter.bytes;
    }
    return bytes;
}

/// Whether `word` ends a figure and `next` is its unit: they stay on one line.
bool belongs_together(std::string_view word, std::string_view next) {
    if (word.empty() || word.back() < '0' || word.back() > '9')
        return false;
    while (!next.empty() && std::string_view(".,;:)").find(next.back()) != std::string_view::npos)
        next.remove_suffix(1);
    constexpr std::array<std::string_view, 19> units = {"%",
                                                        "C",
                                                        "F",
                                                        "L",
                                                        "fl",
                                                        "ft",
                                                        "g",
                                                        "h",
                                                        "in",
                                                        "kcal",
                                                        "kg",
                                                        "km",
                                                        "km/h",
                                                        "lb",
                                                        "m",
                                                        "mi",
                                                        "min",
                                                        "oz",
                                                        "qt"};
    return std::find(units.begin(), units.end(), next) != units.end();
}

/// The words of a text, a figure with its unit as one.
std::vector<std::string> words_of(std::string_view utf8) {
    std::vector<std::string> words;
    while (!utf8.empty()) {
        const std::size_t space = std::min(utf8.find(' '), utf8.size());
        const std::string_view word = utf8.substr(0, space);
        utf8.remove_prefix(std::min(space + 1, utf8.size()));
        if (word.empty())
            continue;
        if (!words.empty() && belongs_together(words.back(), word))
            words.back().append(" ").append(word);
        else
            words.emplace_back(word);
    }
    return words;
}

} // namespace

std::string fitted(std::string_view utf8, std::size_t most) {
    if (columns_of(utf8) <= most)
        return std::string(utf8);
    if (most == 0)
        return {};
    std::string_view kept = utf8.substr(0, bytes_within(utf8, most - 1));
    while (kept.ends_with(' '))
        kept.remove_suffix(1);
    return std::string(kept).append(ellipsis);
}

std::vector<std::string> wrapped(std::string_view utf8, std::size_t most) {
    most = std::max<std::size_t>(most, 2); // a wide character fits
    std::vector<std::string> lines;
    std::string line;
    const auto end_line = [&] {
        lines.push_back(line);
        line.clear();
    };
    for (const std::string& whole : words_of(utf8)) {
        std::string_view word = whole;
        if (!line.empty() && columns_of(line) + 1 + columns_of(word) > most)
            end_line();
        if (!line.empty())
            line.push_back(' ');
        while (columns_of(word) > most) {
            const std::size_t bytes = std::max<std::size_t>(1, bytes_within(word, most));
            line.append(word.substr(0, bytes));
            word.remove_prefix(bytes);
            end_line();
        }
        line.append(word);
    }
    if (!line.empty())
        end_line();
    return lines;
}

} // namespace tumpline::cli
