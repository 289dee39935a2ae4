#include "geo/tracks/track_text.h"

#include <charconv>
#include <chrono>
#include <cmath>
#include <cstddef>

namespace tumpline::geo {

namespace {

bool is_blank(char letter) {
    return letter == ' ' || letter == '\t' || letter == '\n' || letter == '\r';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_blank(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && is_blank(text.back()))
        text.remove_suffix(1);
    return text;
}

/// Takes figures from the front of a text, piece by piece; `ok` says whether all fitted so far.
struct Figures {
    std::string_view rest;
    bool ok = true;

    int number(std::size_t digits) {
        int value = 0;
        ok = ok && rest.size() >= digits;
        for (std::size_t index = 0; ok && index < digits; ++index) {
            ok = rest[index] >= '0' && rest[index] <= '9';
            value = 10 * value + (rest[index] - '0');
        }
        if (ok)
            rest.remove_prefix(digits);
        return value;
    }

    bool mark(char letter) {
        const bool there = !rest.empty() && rest.front() == letter;
        if (there)
            rest.remove_prefix(1);
        return there;
    }

    void need(char letter) { ok = mark(letter) && ok; }
};

/// Milliseconds of the decimals after the point, cut and not rounded.
int milliseconds(Figures& figures) {
    int value = 0;
    int weight = 100;
    bool any = false;
    while (!figures.rest.empty() && figures.rest.front() >= '0' && figures.rest.front() <= '9') {
        value += weight * (figures.rest.front() - '0');
        weight /= 10;
        any = true;
        figures.rest.remove_prefix(1);
    }
    figures.ok = figures.ok && any;
    return value;
}

/// Minutes of the offset at the end, which must be the end.
int offset_minutes(Figures& figures) {
    int minutes = 0;
    if (!figures.rest.empty() && !figures.mark('Z')) {
        const int sign = figures.rest.front() == '-' ? -1 : 1;
        figures.ok = figures.ok && (figures.mark('+') || figures.mark('-'));
        const int hours = figures.number(2);
        figures.need(':');
        minutes = sign * (60 * hours + figures.number(2));
    }
    figures.ok = figures.ok && figures.rest.empty();
    return minutes;
}

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

std::optional<double> to_number(std::string_view text) {
    text = trimmed(text);
    if (text.starts_with('+') && text.size() > 1 && text[1] != '-')
        text.remove_prefix(1);
    double value = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

std::optional<Instant> to_instant(std::string_view text) {
    using namespace std::chrono;
    Figures figures{.rest = trimmed(text)};
    const int year_number = figures.number(4);
    figures.need('-');
    const int month_number = figures.number(2);
    figures.need('-');
    const int day_number = figures.number(2);
    figures.need('T');
    const int hour = figures.number(2);
    figures.need(':');
    const int minute = figures.number(2);
    figures.need(':');
    const int second = figures.number(2);
    const int part = figures.mark('.') ? milliseconds(figures) : 0;
    const int offset = offset_minutes(figures);
    const year_month_day date{year{year_number},
                              month{static_cast<unsigned>(month_number)},
                              day{static_cast<unsigned>(day_number)}};
    // 24:00:00 is midnight at the end of the day, and a second of 60 is a leap second
    if (!figures.ok || !date.ok() || hour > 24 || minute > 59 || second > 60 || offset < -840 ||
        offset > 840)
        return std::nullopt;
    return sys_days(date) + hours(hour) + minutes(minute - offset) + seconds(second) +
           std::chrono::milliseconds(part);
}

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
