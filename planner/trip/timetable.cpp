#include "planner/trip/timetable.h"

#include "planner/quantities/quantities.h"
#include "planner/quantities/spelling.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <vector>

namespace tumpline::planner {

namespace {

constexpr std::array<std::string_view, 7> short_weekdays{"Mo", "Tu", "We", "Th", "Fr", "Sa", "Su"};

std::optional<int> weekday_of(std::string_view word) {
    const auto* const found = std::find(short_weekdays.begin(), short_weekdays.end(), word);
    if (found == short_weekdays.end())
        return std::nullopt;
    return static_cast<int>(found - short_weekdays.begin()) + 1;
}

/// The days that "Mo", or "Fr-Mo" over the week's end, stands for; none where it is no such word.
std::vector<int> weekdays_of(std::string_view word) {
    const std::size_t dash = word.find('-');
    const std::optional<int> first = weekday_of(word.substr(0, dash));
    const std::optional<int> last =
        dash == std::string_view::npos ? first : weekday_of(word.substr(dash + 1));
    std::vector<int> days;
    if (!first || !last)
        return days;
    for (int day = *first;; day = day % 7 + 1) {
        days.push_back(day);
        if (day == *last)
            return days;
    }
}

std::string advice_on(std::string_view word) {
    const std::string two(word.substr(0, 2));
    const std::vector<std::string_view> known(short_weekdays.begin(), short_weekdays.end());
    const auto same = [&](std::string_view day) { return edit_distance(day, two) == 0; };
    const auto found = std::find_if(known.begin(), known.end(), same);
    const std::string all = "the weekdays are Mo, Tu, We, Th, Fr, Sa and Su";
    return found == known.end() ? all : fmt::format("write \"{}\": {}", *found, all);
}

} // namespace

TimetableReading read_timetable_hour(std::string_view text) {
    TimetableHour hour;
    const std::size_t blank = text.rfind(' ');
    const std::string_view clock = blank == std::string_view::npos ? text : text.substr(blank + 1);
    const std::optional<std::chrono::seconds> at = read_time_of_day(clock);
    if (!at)
        return {{}, "the hour is \"HH:MM\" of the 24-hour clock, from 00:00 to 23:59"};
    hour.at = *at;
    if (blank == std::string_view::npos)
        return {hour, {}};
    std::string_view days = text.substr(0, blank);
    if (days == "daily")
        return {hour, {}};
    if (const std::optional<Date> date = read_date(days)) {
        hour.date = *date;
        return {hour, {}};
    }
    while (true) {
        const std::size_t comma = std::min(days.find(','), days.size());
        const std::vector<int> read = weekdays_of(days.substr(0, comma));
        if (read.empty())
            return {{}, advice_on(days.substr(0, comma))};
        for (const int day : read)
            if (std::find(hour.weekdays.begin(), hour.weekdays.end(), day) == hour.weekdays.end())
                hour.weekdays.push_back(day);
        if (comma == days.size())
            return {hour, {}};
        days.remove_prefix(comma + 1);
    }
}

std::string timetable_words(const TimetableHour& hour) {
    const std::string clock = show_time_of_day(hour.at);
    if (hour.date)
        return fmt::format("{} {}", show_date(*hour.date), clock);
    if (hour.weekdays.empty())
        return fmt::format("daily {}", clock);
    std::vector<std::string_view> days;
    for (const int day : hour.weekdays)
        days.push_back(short_weekdays.at(static_cast<std::size_t>(day) - 1));
    return fmt::format("{} {}", fmt::join(days, ","), clock);
}

bool runs_on(const TimetableHour& hour, Date date) {
    if (hour.date)
        return *hour.date == date;
    const auto weekday =
        static_cast<int>(std::chrono::weekday{std::chrono::sys_days{date}}.iso_encoding());
    return hour.weekdays.empty() ||
           std::find(hour.weekdays.begin(), hour.weekdays.end(), weekday) != hour.weekdays.end();
}

} // namespace tumpline::planner
