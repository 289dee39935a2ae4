#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace tumpline::geo {

using std::chrono::local_seconds;
using std::chrono::sys_seconds;

/// Whether the time zone database knows `name` ("Europe/Oslo", "UTC").
[[nodiscard]] bool is_time_zone(std::string_view name);

/// Whether this system has the time zone database; without it only UTC is known.
[[nodiscard]] bool has_time_zone_database();

/// The nearest known zone name to a misspelt one; empty if none is near.
[[nodiscard]] std::string nearest_time_zone(std::string_view name);

/// The instant of a local time. A time that does not exist (clocks go forward) is taken as the
/// moment of the change; one that exists twice as the earlier.
/// Throws: std::invalid_argument if the zone is unknown.
[[nodiscard]] sys_seconds to_instant(local_seconds local, std::string_view zone);

/// Local time of an instant.
[[nodiscard]] local_seconds to_local(sys_seconds instant, std::string_view zone);

/// "2027-06-18T08:00:00+02:00": RFC 3339 with the zone's own offset at that instant.
[[nodiscard]] std::string rfc3339(sys_seconds instant, std::string_view zone);

} // namespace tumpline::geo
