#pragma once

#include "geo/light/time_zone.h"
#include "geo/position.h"

#include <chrono>
#include <optional>
#include <string_view>

namespace tumpline::geo {

/// What the sun does on one local calendar day with respect to one altitude.
enum class SunDay {
    rises_and_sets,
    rises_only, ///< the setting falls after midnight
    sets_only,
    always_above,
    always_below
};

/// One altitude's crossings on a local day. Where the sun rises or sets twice between two
/// midnights, as it can when days grow by many minutes each, these are the first rise and the last
/// setting. A setting before the rise belongs to the daylight that began on the day before.
struct SunCrossings {
    SunDay day = SunDay::rises_and_sets;
    std::optional<sys_seconds> rise;
    std::optional<sys_seconds> set;
};

/// From one local midnight to the next: 23 to 25 hours where clocks change.
struct LocalDay {
    std::chrono::year_month_day date;
    std::string_view zone;
};

/// When the sun's centre, without refraction, passes an altitude.
/// Throws: std::invalid_argument if the zone is unknown.
[[nodiscard]] SunCrossings
sun_crossings(const LocalDay& day, const Position& place, double altitude_deg);

/// Daylight of one local calendar day at one place.
struct Daylight {
    SunCrossings sun;      ///< upper limb on a level horizon, centre at -0.8333 degrees
    SunCrossings twilight; ///< civil: centre at -6 degrees; its rise is dawn, its set is dusk
};

/// Sunrise, sunset, civil dawn and dusk on `date` in `zone`, valid from pole to pole.
/// Level, unobstructed horizon; about a minute of accuracy from 1950 to 2050.
/// Source: [NOAASolar], [MeeusAlgorithms].
[[nodiscard]] Daylight
daylight(std::chrono::year_month_day date, const Position& place, std::string_view zone);

/// Altitude of the sun's centre without refraction, and azimuth, degrees.
struct SunPlace {
    double altitude_deg;
    double azimuth_deg; ///< clockwise from north
    double declination_deg;
    double equation_of_time_min;
};

[[nodiscard]] SunPlace sun_place(sys_seconds instant, const Position& place);

} // namespace tumpline::geo
