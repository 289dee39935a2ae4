#pragma once

#include "geo/light/time_zone.h"
#include "geo/position.h"
#include "planner/quantities/quantities.h"
#include "planner/trip/trip.h"

#include <string>
#include <string_view>
#include <utility>

/// Figures as people read them, on a terminal, on a page and in a drawing.
namespace tumpline::cli {

/// What stands between a number and its unit.
enum class Blank {
    plain, ///< lines are broken by `wrapped`, which keeps units with their numbers
    kept   ///< lines are broken by somebody else: a blank at which nobody breaks
};

/// Shows figures of one trip: its zone, the reader's units.
class Figures {
  public:
    Figures(planner::UnitSystem units, std::string zone, Blank blank)
        : units_(units), zone_(std::move(zone)), blank_(blank) {}

    [[nodiscard]] std::string mass(double mass_kg) const;
    /// Pounds or kilograms with one decimal and no unit; `mass_unit` stands in the heading.
    [[nodiscard]] std::string bare_mass(double mass_kg) const;
    [[nodiscard]] std::string_view mass_unit() const;
    [[nodiscard]] std::string distance(double length_m) const;
    [[nodiscard]] std::string portage(double length_m) const;
    [[nodiscard]] std::string height(double height_m) const;
    /// A climb or a descent; "unknown" where no heights are known.
    [[nodiscard]] std::string climb(double height_m, bool heights_known) const;
    /// A mass over a way, and up a climb.
    [[nodiscard]] std::string carried(double kg_km) const;
    [[nodiscard]] std::string climbed(double kg_m) const;
    [[nodiscard]] std::string speed(double speed_mps) const;
    [[nodiscard]] std::string volume(double volume_l) const;
    [[nodiscard]] std::string temperature(double temperature_c) const;
    [[nodiscard]] std::string gradient(double gradient) const;
    /// How much deeper a craft lies: "21 mm"; "0.8 in".
    [[nodiscard]] std::string draft(double change_m) const;
    /// "15 cm"; "6.0 in".
    [[nodiscard]] std::string length(double length_m) const;
    [[nodiscard]] std::string duration(double duration_s) const;
    [[nodiscard]] std::string energy(double energy_j) const;
    /// "km 12.3" along the route.
    [[nodiscard]] std::string along(double along_m) const;
    /// "18:05", local.
    [[nodiscard]] std::string clock(geo::sys_seconds instant) const;
    /// "Fri 18 June 2027, 18:05", local, with the zone's offset.
    [[nodiscard]] std::string moment(geo::sys_seconds instant) const;
    /// "18:05", and the weekday before it if it falls on another day than `date`.
    [[nodiscard]] std::string clock_on(geo::sys_seconds instant, planner::Date date) const;

    [[nodiscard]] planner::UnitSystem units() const { return units_; }

    [[nodiscard]] const std::string& zone() const { return zone_; }

  private:
    [[nodiscard]] std::string kept_together(std::string figure) const;

    [[nodiscard]] bool metric() const { return units_ == planner::UnitSystem::metric; }

    planner::UnitSystem units_;
    std::string zone_;
    Blank blank_;
};

/// "Fri".
[[nodiscard]] std::string_view weekday(planner::Date date);
/// "Fri 18 June 2027".
[[nodiscard]] std::string long_date(planner::Date date);
/// "Fri 18 June".
[[nodiscard]] std::string short_date(planner::Date date);
/// "Fri 18 Jun", as wide on any day of the year but for one figure.
[[nodiscard]] std::string tight_date(planner::Date date);
/// "61.52100, 13.10210": about a metre; the form that receivers take.
[[nodiscard]] std::string decimal_degrees(const geo::Position& position);
/// "61° 31.260' N, 13° 06.126' E": the form that is read out by voice.
[[nodiscard]] std::string degrees_and_minutes(const geo::Position& position);

} // namespace tumpline::cli
