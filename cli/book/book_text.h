#pragma once

#include "geo/light/time_zone.h"
#include "geo/position.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <string>
#include <string_view>

/// Words and figures as the book prints them.
namespace tumpline::cli {

/// `one_line` of text with & < > " ' as entities: for markup that we write ourselves (the template
/// library escapes what goes through a template).
[[nodiscard]] std::string escaped(std::string_view text);

/// About how wide text is set, in heights of its letters; errs to the wide side.
[[nodiscard]] double width_em(std::string_view utf8);

/// Shows figures of one trip: its zone, the reader's units.
class Shown {
  public:
    Shown(planner::UnitSystem system, std::string zone) : system_(system), zone_(std::move(zone)) {}

    [[nodiscard]] std::string mass(double mass_kg) const;
    [[nodiscard]] std::string distance(double length_m) const;
    [[nodiscard]] std::string portage(double length_m) const;
    [[nodiscard]] std::string height(double height_m) const;
    [[nodiscard]] std::string speed(double speed_mps) const;
    [[nodiscard]] std::string volume(double volume_l) const;
    [[nodiscard]] std::string temperature(double temperature_c) const;
    [[nodiscard]] std::string gradient(double gradient) const;
    [[nodiscard]] static std::string duration(double duration_s);
    [[nodiscard]] static std::string energy(double energy_j);
    /// "18:05", local.
    [[nodiscard]] std::string clock(geo::sys_seconds instant) const;
    /// "Fri 18 June 2027, 18:05", local, with the zone's offset.
    [[nodiscard]] std::string moment(geo::sys_seconds instant) const;
    /// "18:05", and the weekday before it if it falls on another day than `date`.
    [[nodiscard]] std::string clock_on(geo::sys_seconds instant, planner::Date date) const;

    [[nodiscard]] planner::UnitSystem system() const { return system_; }

    [[nodiscard]] const std::string& zone() const { return zone_; }

  private:
    planner::UnitSystem system_;
    std::string zone_;
};

/// "Fri 18 June 2027".
[[nodiscard]] std::string long_date(planner::Date date);
/// "Fri 18 June".
[[nodiscard]] std::string short_date(planner::Date date);
/// "61.52100, 13.10210": about a metre; the form that receivers take.
[[nodiscard]] std::string decimal_degrees(const geo::Position& position);
/// "61° 31.260' N, 13° 06.126' E": the form that is read out by voice.
[[nodiscard]] std::string degrees_and_minutes(const geo::Position& position);

/// "on foot", "portage", "afloat".
[[nodiscard]] std::string_view travel_phrase(planner::Travel travel);
/// "put-in", "drinking water", ...
[[nodiscard]] std::string_view place_word(planner::PlaceKind kind);

} // namespace tumpline::cli
