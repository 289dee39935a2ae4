#include "cli/words/text_width.h"

#include "geo/utf8.h"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <span>

namespace tumpline::cli {

namespace {

constexpr char32_t replacement = 0xFFFD;
constexpr std::string_view ellipsis = "\u2026";

/// The first character of `utf8` (not empty); what is no UTF-8 is one replacement per byte.
geo::Utf8Character first_letter(std::string_view utf8) {
    return geo::first_character(utf8).value_or(geo::Utf8Character{replacement, 1});
}

/// Characters that would move the cursor, turn the line round or hide text. A soft hyphen, and what
/// joins letters or keeps them apart in many scripts, do no harm.
bool harmful(char32_t letter) {
    const auto code = static_cast<utf8proc_int32_t>(letter);
    constexpr std::array<char32_t, 4> harmless = {0x00AD, 0x200B, 0x200C, 0x200D};
    const utf8proc_category_t category = utf8proc_category(code);
    if (category == UTF8PROC_CATEGORY_CC || category == UTF8PROC_CATEGORY_ZL ||
        category == UTF8PROC_CATEGORY_ZP)
        return true;
    return category == UTF8PROC_CATEGORY_CF && utf8proc_get_property(code)->ignorable != 0 &&
           std::find(harmless.begin(), harmless.end(), letter) == harmless.end();
}

/// A character that the library does not know yet is shown as a box by most terminals.
std::size_t columns_of_letter(char32_t letter) {
    const auto code = static_cast<utf8proc_int32_t>(letter);
    if (utf8proc_category(code) == UTF8PROC_CATEGORY_CN)
        return 1;
    return static_cast<std::size_t>(std::max(0, utf8proc_charwidth(code)));
}

} // namespace

std::string one_line(std::string_view text) {
    std::string line;
    line.reserve(text.size());
    while (!text.empty()) {
        const geo::Utf8Character letter = first_letter(text);
        if (letter.code == '\t' || letter.code == '\n' || letter.code == '\r')
            line.push_back(' ');
        else if (letter.code == replacement || harmful(letter.code))
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
        const geo::Utf8Character letter = first_letter(utf8);
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
        const geo::Utf8Character letter = first_letter(utf8.substr(bytes));
        columns += columns_of_letter(letter.code);
        if (columns > most)
            break;
        bytes += letter.bytes;
    }
    return bytes;
}

bool ends_in_figure(std::string_view word) {
    return !word.empty() && word.back() >= '0' && word.back() <= '9';
}

bool is_one_of(std::span<const std::string_view> all, std::string_view word) {
    return std::find(all.begin(), all.end(), word) != all.end();
}

/// Without the stops and brackets that end it.
std::string_view bare(std::string_view word) {
    while (!word.empty() && std::string_view(".,;:)]").find(word.back()) != std::string_view::npos)
        word.remove_suffix(1);
    return word;
}

/// The last of the words that were put together.
std::string_view last_of(std::string_view whole) {
    return whole.substr(whole.rfind(' ') + 1); // npos + 1 is 0
}

/// What is written after a figure.
constexpr std::array<std::string_view, 35> units = {
    "%",   "C",    "F",  "L",    "L/h",    "cm",   "days",   "fl", "ft",   "ft/mi", "g",    "h",
    "in",  "kcal", "kg", "kg/h", "km",     "km/h", "lb",     "m",  "m/km", "m/s",   "m3/s", "mi",
    "min", "ml",   "mm", "mph",  "nights", "oz",   "people", "qt", "rods", "s",     "day"};

/// A unit, and that of a second figure that belongs to the first: "21 h 19 min", "5 ft 3 in".
constexpr std::array<std::array<std::string_view, 2>, 4> parted = {
    {{"h", "min"}, {"ft", "in"}, {"lb", "oz"}, {"min", "s"}}};

/// Units of two words: "12 fl oz", "3 kg km".
constexpr std::array<std::string_view, 3> of_two = {"fl", "kg", "lb"};
constexpr std::array<std::string_view, 5> second = {"oz", "km", "m", "mi", "ft"};

/// "km 12.3" along the route.
constexpr std::array<std::string_view, 2> before_figure = {"km", "mi"};

/// Words put together already, the one that comes next, and the one behind that.
struct Joint {
    std::string_view whole, next, after;
};

/// Whether the next word stays on the line that the whole ends on.
bool belongs_together(const Joint& at) {
    const std::string_view last = last_of(at.whole);
    if (ends_in_figure(last))
        return is_one_of(units, bare(at.next));
    const bool of_figure = last.size() < at.whole.size(); // "21 h", not a word of its own
    if (of_figure && is_one_of(of_two, last) && is_one_of(second, bare(at.next)))
        return true;
    if (!ends_in_figure(bare(at.next)))
        return false;
    if (of_figure)
        return ends_in_figure(at.next) && std::ranges::any_of(parted, [&](const auto& pair) {
                   return pair[0] == last && pair[1] == bare(at.after);
               });
    return is_one_of(before_figure, last);
}

/// The words of a text, a figure with its units as one.
std::vector<std::string> words_of(std::string_view utf8) {
    std::vector<std::string_view> apart;
    while (!utf8.empty()) {
        const std::size_t space = std::min(utf8.find(' '), utf8.size());
        if (space > 0)
            apart.push_back(utf8.substr(0, space));
        utf8.remove_prefix(std::min(space + 1, utf8.size()));
    }
    std::vector<std::string> words;
    for (std::size_t i = 0; i < apart.size(); ++i) {
        const std::string_view after = i + 1 < apart.size() ? apart[i + 1] : std::string_view();
        if (!words.empty() && belongs_together({words.back(), apart[i], after}))
            words.back().append(" ").append(apart[i]);
        else
            words.emplace_back(apart[i]);
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
