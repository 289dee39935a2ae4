#pragma once

#include "planner/solution/fixed_point.h"
#include "planner/solution/night_search.h"

#include <chrono>
#include <cstddef>
#include <map>
#include <optional>
#include <utility>
#include <vector>

/// What a day from one stop to another costs and which limits it breaks, at the loads of a settled
/// loop. The costs and where they come from: docs/nights.md.
namespace tumpline::planner {

/// What an hour of each kind is worth. Common practice, no source: each is the price at which we
/// would accept the thing rather than travel an hour longer than wished.
struct NightWeights {
    double over_wish_per_h = 1.0;
    double uneven_per_h2 = 0.25;
    double late_per_h = 2.0;         ///< of arriving later than the earlier of:
    double light_in_camp_s = 3600.0; ///< so long before dusk
    double out_of_camp_s = 24.0 * 3600.0 - least_night_s; ///< so long after setting off
    double dry_camp_per_night = 0.5;
    double carried_per_kg_km = 0.01; ///< each member's kilograms over kilometres on foot
    double missed = 2.0;             ///< an appointment that is not hard, and per hour of lateness:
    double missed_per_h = 1.0;
    double most_late_h = 12.0;     ///< not reached on its day at all
    double waited_per_night = 2.0; ///< for a connection at the end
};

/// Where one may sleep: start, camps, finish, as boundaries; of a trip that names no camp the ends
/// of its legs.
struct NightStops {
    std::vector<std::size_t> boundaries;
    bool camps;

    /// The boundaries of stops without start and finish.
    [[nodiscard]] std::vector<std::size_t> nights(const std::vector<std::size_t>& stops) const;
    /// The stops at boundaries; those that are no stop are left out.
    [[nodiscard]] std::vector<std::size_t> stops(const std::vector<std::size_t>& nights) const;
};

[[nodiscard]] NightStops night_stops(const Prepared& prepared);

/// A day of travel of the calendar (from 1) and the days of rest that follow it at its camp.
struct CampStay {
    int day;
    int rests;
};

/// Whether the camps at a boundary are closed on a night of a stay or too small for the party; of
/// several camps one that takes them is enough. Where there is no camp nothing is known.
[[nodiscard]] NightLimits
camp_limits(const Prepared& prepared, std::size_t boundary, const CampStay& stay);

/// Whether the resupplies and caches at a boundary are closed on a date; of several one that is
/// open is enough.
[[nodiscard]] bool supply_closed(const Prepared& prepared, std::size_t boundary, Date date);

/// Days at the loads of a settled loop. What it was made from must outlive it.
class NightDays {
  public:
    NightDays(const Prepared& prepared, const NightStops& stops, const Solved& settled);

    /// One day. Moving, changes and rests are those that the settled loop would put on its clock.
    [[nodiscard]] NightDay operator()(const NightSpan& span);

    /// What a day between two stops costs at least, whichever day it is.
    [[nodiscard]] double least(std::size_t from, std::size_t to);

    /// Litres in each one's vessels without the reserve; HUGE_VAL where water is found everywhere.
    [[nodiscard]] double room_l() const;

    /// What the clock says at a boundary of a day that starts at `from`.
    struct Reached {
        double moved_s;
        double way_s;       ///< from setting off, if the day goes on
        double evening_s;   ///< the same if the day ends here
        double to_source_l; ///< as in NightDay, the night's own litres left out
        bool source;
        double after_source_l;
        double between_l; ///< most that is drunk between two sources of the day
    };

    /// From the stop `from` to every later boundary, the first being the next one.
    [[nodiscard]] const std::vector<Reached>& row(std::size_t from);

  private:
    struct Meeting {
        const Appointment* spec;
        std::vector<std::size_t> passes; ///< boundaries, ascending, the start left out
        geo::sys_seconds latest;
    };

    struct Light {
        std::optional<geo::sys_seconds> dusk;
        bool dark_all_day;
    };

    void set_calendar(const std::vector<int>& rest_after);
    void set_meetings();
    [[nodiscard]] bool wet(std::size_t boundary) const;
    [[nodiscard]] geo::sys_seconds at(int day, double way_s);
    [[nodiscard]] const Light& light(std::size_t stop, int day);
    [[nodiscard]] bool meets_closed_supply(const NightSpan& span, const CampStay& day) const;
    /// Hours late for an appointment, if this day misses it.
    [[nodiscard]] std::optional<double>
    late_for(const Meeting& meeting, const NightSpan& span, const CampStay& day);
    void price_hours(NightDay& result, double moved_s) const;
    [[nodiscard]] double carried_kg_km(std::size_t camp, double nights, double litres) const;
    [[nodiscard]] double
    camp_water_l(std::size_t camp, const CampStay& day, double evening_s) const;
    void
    price_evening(NightDay& result, const NightSpan& span, const CampStay& day, double evening_s);
    void price_waiting(NightDay& result, const CampStay& day, double evening_s);
    void price_night(NightDay& result,
                     const NightSpan& span,
                     const CampStay& day,
                     double evening_s) const;

    const Prepared& prepared_;
    const NightStops& stops_;
    NightWeights weights_;
    std::vector<double> moving_s_;
    std::vector<StretchTime> by_day_;     ///< changes inside a day
    std::vector<StretchTime> each_a_day_; ///< changes of a stretch that begins and ends a day
    std::vector<CampStay> calendar_;      ///< by travel day - 1
    std::vector<Meeting> meetings_;
    std::vector<double> on_foot_m_; ///< per boundary, from the start
    std::vector<double> supply_m_;  ///< the same, of the last supply up to there
    std::vector<double> source_m_;  ///< the same, of the last source up to there
    std::vector<std::size_t> supplies_;
    double night_kg_ = 0.0; ///< food and fuel of each for a night and a day without moving
    std::vector<std::vector<Reached>> rows_;
    std::map<int, geo::sys_seconds> set_off_;
    std::map<std::pair<std::size_t, int>, Light> light_;
};

} // namespace tumpline::planner
