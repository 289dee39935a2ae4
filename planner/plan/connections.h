#pragma once

#include "geo/light/sun.h"
#include "planner/trip/trip.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// What runs by a calendar, as the plan meets it (docs/connections.md).
namespace tumpline::planner {

using geo::sys_seconds;

/// What a latest departure is bound by (docs/appointments.md).
enum class LeaveBound {
    appointment, ///< the way to it, on its own day
    dusk,        ///< of the evening, at the next night's place
    midnight,    ///< of the evening, where there is no dusk
    night,       ///< the rest that a night needs before the next latest departure
    wind         ///< a leg afloat is behind before the wind there passes a boat's ceiling
};

struct LeaveBy {
    std::string place;
    int day = 1; ///< on which the plan leaves it
    double along_m = 0.0;
    sys_seconds at{};   ///< latest departure
    bool night = false; ///< a night's place, or the start; else a landing
    sys_seconds planned{};
    double spare_s = 0.0; ///< at - planned
    int days_later = 0;   ///< of the calendar than planned: days of rest or in hand given up
    LeaveBound bound = LeaveBound::appointment;
    /// Where what binds it is: the appointment's place, a night's, or the leg afloat.
    std::string bound_at;
    std::optional<sys_seconds> wind_rises = {}; ///< when, where that binds it
};

/// A bus, a ferry, a flight: to the start, or away from the end.
struct PlanConnection {
    std::string what, place;
    bool to_start = false;
    double margin_s = 0.0;
    sys_seconds there{};              ///< the party arrives at the end; or sets off at the start
    std::optional<sys_seconds> taken; ///< the departure, or the arrival; empty: none fits
    bool used = false;                ///< of several at one place the one that is taken
    double wait_s = 0.0;        ///< from `there` to the departure, or from arriving to `there`
    int nights = 0;             ///< of waiting
    bool set_off_moved = false; ///< the trip file wants to set off before it has come
    std::optional<sys_seconds> before; ///< the last one that is not reached with the margin
    std::optional<sys_seconds> next;   ///< the one after `taken`, or after the date of the start
    double next_food_kg = 0.0;         ///< of the party, with packaging, for the days until `next`
    int next_days = 0;                 ///< from `taken` to `next`
    std::optional<bool> camp;          ///< whether the place of the nights is a camp
    bool dry = false;                  ///< no dependable water is known there
    std::vector<LeaveBy> leave_by;
};

/// One night or day for which something must be booked.
struct PermitDate {
    int day = 1;
    Date date{};
    bool open = true;       ///< on this date the permit can be had and the place is open
    Date a_day_later{};     ///< the date of the same night or day where a day is lost before it
    bool later_open = true; ///< the same of that date
};

/// What must be booked, and for when.
struct PlanPermit {
    std::string where;
    bool nights = false; ///< a camp: bookings are nights; else days on which one is there
    int people = 0;      ///< of this party
    std::optional<int> most_people;
    std::optional<DateSpan> dates;
    std::vector<PermitDate> bookings; ///< empty: nobody sleeps there
    std::string note;

    [[nodiscard]] bool too_many() const { return most_people && people > *most_people; }
};

} // namespace tumpline::planner
