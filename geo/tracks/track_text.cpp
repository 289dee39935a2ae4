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

} // namespace tumpline::geo
