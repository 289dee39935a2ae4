#include "geo/light/sun.h"

#include "geo/light/solar_position.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <string_view>
#include <vector>

namespace tumpline::geo {

namespace {

using std::chrono::seconds;

// Crossings are found in seconds since the day began; whole days of sky are looked at in steps, so
// that places where the sun rises twice, once or never in a day need no rules of their own.
constexpr double step_s = 1200.0;
constexpr double close_enough_s = 0.05;

// Within a day the sun's declination and the equation of time run so straight that what lies
// between two moments of them places the sun to 0.002 degrees. Where that leaves no doubt on which
// side of an altitude it is, it is not placed anew.
constexpr double sure_deg = 0.005;
constexpr double near_deg = 1.0; // to a turn; 40 minutes about one move the sun by less

HourAngle hour_angle(double since_1970_s, const SolarPosition& sun, const Position& place) {
    constexpr double day_min = 1440.0;
    const double utc_min = std::fmod(since_1970_s / 60.0, day_min);
    const double true_solar_min = utc_min + sun.equation_of_time_min + 4.0 * place.lon_deg;
    return {.lat_deg = place.lat_deg,
            .declination_deg = sun.declination_deg,
            .hour_angle_deg = std::remainder(true_solar_min / 4.0 - 180.0, 360.0)};
}

/// Height of the sun above an altitude over one local day.
class Sky {
  public:
    Sky(sys_seconds midnight, double length_s, const Position& place, double altitude_deg)
        : midnight_s_(static_cast<double>(midnight.time_since_epoch().count())), place_(place),
          altitude_deg_(altitude_deg), span_s_(length_s - 2.0 * before_day_s),
          first_(angles_at(before_day_s)), last_(angles_at(before_day_s + span_s_)),
          sin_lat_(std::sin(place.lat_deg * radian)), cos_lat_(std::cos(place.lat_deg * radian)) {}

    [[nodiscard]] double above_deg(double time_s) const {
        const double instant_s = midnight_s_ + time_s;
        return horizontal(hour_angle(instant_s, sun_at(instant_s), place_)).altitude_deg -
               altitude_deg_;
    }

    /// The same to 0.002 degrees, for less.
    [[nodiscard]] double about_deg(double time_s) const {
        const double share = (time_s - before_day_s) / span_s_;
        const double hour_rad = first_.hour_rad + share * (last_.hour_rad - first_.hour_rad);
        const double declination_rad =
            first_.declination_rad + share * (last_.declination_rad - first_.declination_rad);
        const double sine = sin_lat_ * std::sin(declination_rad) +
                            cos_lat_ * std::cos(declination_rad) * std::cos(hour_rad);
        return std::asin(std::clamp(sine, -1.0, 1.0)) / radian - altitude_deg_;
    }

    [[nodiscard]] bool is_below(double time_s) const {
        const double about = about_deg(time_s);
        return (std::abs(about) > sure_deg ? about : above_deg(time_s)) < 0.0;
    }

    /// The change of side between two times on different sides.
    [[nodiscard]] double crossing_s(double before_s, double after_s) const {
        const bool below = is_below(before_s);
        while (after_s - before_s > close_enough_s) {
            const double middle_s = 0.5 * (before_s + after_s);
            (is_below(middle_s) == below ? before_s : after_s) = middle_s;
        }
        return 0.5 * (before_s + after_s);
    }

    /// The highest or lowest moment between two times.
    [[nodiscard]] double extreme_s(double from_s, double to_s, bool highest) const {
        const double sign = highest ? 1.0 : -1.0;
        while (to_s - from_s > close_enough_s) {
            const double third_s = (to_s - from_s) / 3.0;
            if (sign * above_deg(from_s + third_s) < sign * above_deg(to_s - third_s))
                from_s += third_s;
            else
                to_s -= third_s;
        }
        return 0.5 * (from_s + to_s);
    }

  private:
    static constexpr double radian = std::numbers::pi / 180.0;

    [[nodiscard]] static SolarPosition sun_at(double instant_s) {
        return solar_position(julian_centuries(instant_s));
    }

    /// Hour angle, without a leap at midnight, and declination.
    struct Angles {
        double hour_rad;
        double declination_rad;
    };

    [[nodiscard]] Angles angles_at(double time_s) const {
        const SolarPosition sun = sun_at(midnight_s_ + time_s);
        constexpr double day_s = 86'400.0;
        return {.hour_rad = 2.0 * std::numbers::pi * (midnight_s_ + time_s) / day_s +
                            (0.25 * sun.equation_of_time_min + place_.lon_deg - 180.0) * radian,
                .declination_rad = sun.declination_deg * radian};
    }

    static constexpr double before_day_s = -2.0 * step_s; // some steps before the day

    double midnight_s_;
    Position place_;
    double altitude_deg_;
    double span_s_; ///< from `first_` to `last_`
    Angles first_;
    Angles last_; ///< some steps after it
    double sin_lat_;
    double cos_lat_;
};

struct Sample {
    double time_s;
    double above_deg;
};

/// Samples close enough that between two of them the sun changes sides once at most: where it
/// turns round just short of the altitude, the turn itself is one of them. They begin before the
/// day and end after it, so that turns near midnight are seen. Far from the altitude they are
/// rough, and no turn leads to it.
std::vector<Sample> samples_of(const Sky& sky, double length_s) {
    std::vector<Sample> samples;
    const int steps = static_cast<int>(std::ceil(length_s / step_s)) + 1;
    for (int i = -1; i <= steps; ++i) {
        const double time_s = i * step_s;
        Sample next{.time_s = time_s, .above_deg = sky.about_deg(time_s)};
        if (std::abs(next.above_deg) < near_deg)
            next.above_deg = sky.above_deg(time_s);
        if (samples.size() >= 2 && std::abs(samples.back().above_deg) < near_deg) {
            const Sample middle = samples.back();
            Sample before = samples[samples.size() - 2];
            for (Sample* const beside : {&before, &next})
                beside->above_deg = sky.above_deg(beside->time_s);
            const double sign = middle.above_deg < 0.0 ? 1.0 : -1.0;
            const bool turns = sign * (middle.above_deg - before.above_deg) >= 0.0 &&
                               sign * (middle.above_deg - next.above_deg) >= 0.0;
            if (turns) {
                const double turn_s = sky.extreme_s(before.time_s, next.time_s, sign > 0.0);
                const Sample turn{.time_s = turn_s, .above_deg = sky.above_deg(turn_s)};
                if (turn_s < middle.time_s)
                    samples.insert(samples.end() - 1, turn);
                else
                    samples.push_back(turn);
            }
        }
        samples.push_back(next);
    }
    return samples;
}

} // namespace

SunCrossings sun_crossings(const LocalDay& day, const Position& place, double altitude_deg) {
    const std::chrono::local_days date(day.date);
    const sys_seconds midnight = to_instant(date, day.zone);
    const sys_seconds next_midnight = to_instant(date + std::chrono::days(1), day.zone);
    const auto length_s = static_cast<double>((next_midnight - midnight).count());
    const Sky sky(midnight, length_s, place, altitude_deg);
    const std::vector<Sample> samples = samples_of(sky, length_s);

    SunCrossings found;
    for (std::size_t i = 1; i < samples.size(); ++i) {
        const Sample& before = samples[i - 1];
        const Sample& after = samples[i];
        if ((before.above_deg < 0.0) == (after.above_deg < 0.0))
            continue;
        const sys_seconds instant =
            midnight + seconds(std::lround(sky.crossing_s(before.time_s, after.time_s)));
        if (instant < midnight || instant >= next_midnight)
            continue;
        if (after.above_deg < 0.0)
            found.set = instant; // the last of the day
        else if (!found.rise)
            found.rise = instant; // the first
    }
    if (found.rise && found.set)
        found.day = SunDay::rises_and_sets;
    else if (found.rise)
        found.day = SunDay::rises_only;
    else if (found.set)
        found.day = SunDay::sets_only;
    else
        found.day =
            sky.above_deg(0.5 * length_s) < 0.0 ? SunDay::always_below : SunDay::always_above;
    return found;
}

Daylight daylight(std::chrono::year_month_day date, const Position& place, std::string_view zone) {
    constexpr double upper_limb_deg = -50.0 / 60.0; // 34' of refraction and 16' of half the disc
    constexpr double civil_deg = -6.0;
    const LocalDay day{.date = date, .zone = zone};
    return {.sun = sun_crossings(day, place, upper_limb_deg),
            .twilight = sun_crossings(day, place, civil_deg)};
}

SunPlace sun_place(sys_seconds instant, const Position& place) {
    const auto instant_s = static_cast<double>(instant.time_since_epoch().count());
    const SolarPosition sun = solar_position(julian_centuries(instant_s));
    const Horizontal seen = horizontal(hour_angle(instant_s, sun, place));
    return {.altitude_deg = seen.altitude_deg,
            .azimuth_deg = seen.azimuth_deg,
            .declination_deg = sun.declination_deg,
            .equation_of_time_min = sun.equation_of_time_min};
}

} // namespace tumpline::geo
