#include "geo/light/time_zone.h"

#include <date/tz.h>
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <chrono>
#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace tumpline::geo {

namespace {

using std::chrono::days;
using std::chrono::seconds;

/// Zones that work without the database.
bool is_utc(std::string_view name) {
    return name == "UTC" || name == "Etc/UTC";
}

/// The system's database; null where the system has none. It is read once and never fetched.
const date::tzdb* database() {
    try {
        return &date::get_tzdb();
    } catch (const std::runtime_error&) {
        return nullptr; // a bare system without tzdata: only UTC is known
    }
}

/// The database folder also holds tables; zones do not begin in lower case and have no full stop.
bool is_zone_name(std::string_view name) {
    return !name.empty() && std::isupper(static_cast<unsigned char>(name.front())) != 0 &&
           name.find('.') == std::string_view::npos;
}

// By hand: Debian's build of the library lacks the look-up by string_view that its headers declare.
const date::time_zone* find(std::string_view name) {
    const date::tzdb* zones = is_zone_name(name) ? database() : nullptr;
    if (zones == nullptr)
        return nullptr;
    const auto zone = std::lower_bound(
        zones->zones.begin(), zones->zones.end(), name, [](const auto& known, auto wanted) {
            return known.name() < wanted;
        });
    return zone == zones->zones.end() || zone->name() != name ? nullptr : &*zone;
}

const date::time_zone& zone_or_throw(std::string_view name) {
    if (const date::time_zone* zone = find(name))
        return *zone;
    throw std::invalid_argument(
        database() != nullptr
            ? fmt::format("no time zone \"{}\"", name)
            : fmt::format("time zone \"{}\" is not to be had: this system has no time zone "
                          "database (install the package tzdata)",
                          name));
}

// The database lists changes of the clock up to 2037 only. 28 years later the calendar has the same
// weekdays, and rules go by weekdays; so later years borrow the changes of earlier ones.
constexpr seconds calendar_cycle = days(28 * 365 + 7);
constexpr seconds last_listed =
    std::chrono::sys_days(std::chrono::year(2037) / 1 / 1).time_since_epoch();

seconds cycles_back(seconds since_1970) {
    if (since_1970 < last_listed)
        return seconds(0);
    return ((since_1970 - last_listed) / calendar_cycle + 1) * calendar_cycle;
}

seconds offset_at(sys_seconds instant, std::string_view zone) {
    if (is_utc(zone))
        return seconds(0);
    const seconds back = cycles_back(instant.time_since_epoch());
    return zone_or_throw(zone)
        .get_info(date::sys_seconds((instant - back).time_since_epoch()))
        .offset;
}

char lower(char letter) {
    return static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
}

/// Letters to insert, drop or change to turn one word into the other, whatever their case.
std::size_t edit_distance(std::string_view from, std::string_view to) {
    std::vector<std::size_t> row(to.size() + 1);
    for (std::size_t j = 0; j <= to.size(); ++j)
        row[j] = j;
    for (std::size_t i = 0; i < from.size(); ++i) {
        std::size_t diagonal = std::exchange(row[0], i + 1);
        for (std::size_t j = 0; j < to.size(); ++j) {
            const std::size_t change = diagonal + (lower(from[i]) == lower(to[j]) ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({change, row[j] + 1, row[j + 1] + 1});
        }
    }
    return row[to.size()];
}

/// "Oslo" of "Europe/Oslo".
std::string_view city(std::string_view zone) {
    return zone.substr(zone.rfind('/') + 1); // npos + 1 is 0: the whole name
}

} // namespace

bool is_time_zone(std::string_view name) {
    return is_utc(name) || find(name) != nullptr;
}

bool has_time_zone_database() {
    const date::tzdb* zones = database(); // a folder that is there may be empty
    return zones != nullptr && !zones->zones.empty();
}

std::string nearest_time_zone(std::string_view name) {
    constexpr std::size_t longest_name = 64; // longer than any zone: no use in comparing
    if (name.empty() || name.size() > longest_name)
        return {};
    std::string nearest;
    std::size_t least = std::max<std::size_t>(2, name.size() / 4) + 1; // further is no misspelling
    const auto consider = [&](std::string_view zone, std::size_t distance) {
        if (distance < least) {
            least = distance;
            nearest = zone;
        }
    };
    consider("UTC", edit_distance(name, "UTC"));
    if (const date::tzdb* zones = database()) {
        for (const date::time_zone& zone : zones->zones)
            if (is_zone_name(zone.name()))
                consider(zone.name(), edit_distance(name, zone.name()));
        for (const date::time_zone& zone : zones->zones) // a bare city, behind every full name
            if (is_zone_name(zone.name()) && name.find('/') == std::string_view::npos)
                consider(zone.name(), edit_distance(name, city(zone.name())));
    }
    return nearest;
}

sys_seconds to_instant(local_seconds local, std::string_view zone) {
    if (is_utc(zone))
        return sys_seconds(local.time_since_epoch());
    const seconds back = cycles_back(local.time_since_epoch());
    const date::local_info found =
        zone_or_throw(zone).get_info(date::local_seconds((local - back).time_since_epoch()));
    if (found.result == date::local_info::nonexistent)
        return sys_seconds(found.first.end.time_since_epoch() + back);
    return sys_seconds(local.time_since_epoch() - found.first.offset); // first: the earlier of two
}

local_seconds to_local(sys_seconds instant, std::string_view zone) {
    return local_seconds(instant.time_since_epoch() + offset_at(instant, zone));
}

std::string rfc3339(sys_seconds instant, std::string_view zone) {
    const seconds offset = offset_at(instant, zone);
    // RFC 3339 knows whole minutes only: offsets of mean solar time before about 1900 are rounded.
    const auto minutes = std::chrono::round<std::chrono::minutes>(offset);
    const local_seconds local(instant.time_since_epoch() + minutes);
    const auto day = std::chrono::floor<days>(local);
    const std::chrono::year_month_day date(day);
    const std::chrono::hh_mm_ss time(local - day);
    const auto away = std::abs(minutes.count());
    return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{}{:02}:{:02}",
                       static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()),
                       static_cast<unsigned>(date.day()),
                       time.hours().count(),
                       time.minutes().count(),
                       time.seconds().count(),
                       minutes.count() < 0 ? '-' : '+',
                       away / 60,
                       away % 60);
}

} // namespace tumpline::geo
