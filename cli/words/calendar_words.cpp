#include "cli/words/calendar_words.h"

#include "cli/words/words.h"
#include "geo/light/time_zone.h"
#include "planner/quantities/spelling.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

namespace tumpline::cli {

namespace {

using planner::PermitDate;
using planner::Plan;
using planner::PlanConnection;
using planner::PlanPermit;

std::string nights_of(int nights) {
    return nights == 1 ? std::string("a night") : fmt::format("{} nights", nights);
}

ConnectionWords arrival_words(const PlanConnection& one, const Figures& shown) {
    ConnectionWords words;
    const std::string what = fmt::format("{} to {}", one.what, one.place);
    if (!one.taken) {
        words.head = fmt::format("{}: nothing arrives on the day of the start.", what);
    } else {
        words.head = fmt::format("{}: arrives {}; day 1 sets off at {}{}.",
                                 what,
                                 dated_clock(*one.taken, shown),
                                 shown.clock_on(one.there, local_date(*one.taken, shown)),
                                 one.set_off_moved ? ", moved to after it" : "");
        if (one.margin_s > 0.0)
            words.lines.push_back(
                fmt::format("Margin after arriving: {}.", shown.duration(one.margin_s)));
    }
    if (!one.taken && one.before)
        words.lines.push_back(
            fmt::format("The last one before: {}.", dated_clock(*one.before, shown)));
    if (one.next)
        words.lines.push_back(
            fmt::format("The next one on a later date: {}.", dated_clock(*one.next, shown)));
    return words;
}

std::string leave_words(const PlanConnection& one, const Figures& shown) {
    const auto night = std::find_if(one.leave_by.rbegin(),
                                    one.leave_by.rend(),
                                    [](const planner::LeaveBy& leave) { return leave.night; });
    if (night == one.leave_by.rend())
        return {};
    return fmt::format("To reach it leave {} by {} at the latest.",
                       night->place,
                       dated_clock(at_latest(night->at), shown));
}

std::string missed_words(const PlanConnection& one, const Figures& shown) {
    if (!one.next)
        return "If it is missed: no later one within 30 days.";
    if (one.next_days == 0)
        return fmt::format("If it is missed: the next one is {}, on the same day.",
                           dated_clock(*one.next, shown));
    return fmt::format("If it is missed: the next one is {}: {} more, and {} of food.",
                       dated_clock(*one.next, shown),
                       nights_of(one.next_days),
                       shown.mass(one.next_food_kg));
}

ConnectionWords departure_words(const PlanConnection& one, const Figures& shown) {
    ConnectionWords words;
    const std::string what = fmt::format("{} at {}", one.what, one.place);
    if (!one.taken) {
        words.head = fmt::format(
            "{}: none leaves after the party is there, {}.", what, dated_clock(one.there, shown));
    } else if (!one.used) {
        words.head = fmt::format(
            "{}: {}, not taken: another one leaves earlier.", what, dated_clock(*one.taken, shown));
    } else {
        words.head =
            fmt::format("{}: {}; there {}, {}.",
                        what,
                        dated_clock(*one.taken, shown),
                        dated_clock(one.there, shown),
                        one.nights > 0 ? fmt::format("{} of waiting", nights_of(one.nights))
                                       : fmt::format("{} of waiting", shown.duration(one.wait_s)));
    }
    constexpr std::chrono::hours a_day{24}; // one that left long before tempts nobody
    if (one.before && one.used && *one.before + a_day > one.there)
        words.lines.push_back(fmt::format(
            "Not counted upon: {}, {}.",
            dated_clock(*one.before, shown),
            *one.before < one.there
                ? fmt::format(
                      "{} before the party is there",
                      shown.duration(static_cast<double>((one.there - *one.before).count())))
                : fmt::format("it leaves less than the margin of {} after arriving",
                              shown.duration(one.margin_s))));
    if (one.used && one.taken) {
        words.if_missed = missed_words(one, shown);
        if (const std::string leave = leave_words(one, shown); !leave.empty())
            words.lines.push_back(leave);
    }
    return words;
}

std::string late_words(const PlanPermit& permit, const PermitDate& booking) {
    if (booking.later_open)
        return fmt::format("{}: book anew", short_date(booking.a_day_later));
    return fmt::format(
        "{}: {}",
        short_date(booking.a_day_later),
        permit.dates && !permit.dates->holds(booking.a_day_later) ? "outside its dates" : "closed");
}

std::string people_words(const PlanPermit& permit) {
    const std::string party =
        fmt::format("{} {}", permit.people, permit.people == 1 ? "person" : "people");
    return permit.most_people ? fmt::format("{} of at most {}", party, *permit.most_people) : party;
}

/// Which bookings a day lost before them makes void.
std::string lost_day_words(const Plan& plan) {
    std::vector<std::string> void_ones;
    for (const PlanPermit& permit : plan.permits)
        for (const PermitDate& booking : permit.bookings)
            void_ones.push_back(fmt::format("{} on {}", permit.where, short_date(booking.date)));
    if (void_ones.empty())
        return {};
    return fmt::format("A day lost makes every booking after it void: lost before the first day of "
                       "travel, {}.",
                       planner::listed(void_ones));
}

} // namespace

planner::Date local_date(geo::sys_seconds at, const Figures& shown) {
    return planner::Date(std::chrono::floor<std::chrono::days>(geo::to_local(at, shown.zone())));
}

std::string dated_clock(geo::sys_seconds at, const Figures& shown) {
    return fmt::format("{} {}", short_date(local_date(at, shown)), shown.clock(at));
}

std::string still_words(const planner::PlanDay& day) {
    return day.waiting_for.empty() ? std::string("rest day")
                                   : fmt::format("waiting for: {}", day.waiting_for);
}

const PlanConnection* connection_home(const Plan& plan) {
    for (const PlanConnection& one : plan.connections)
        if (!one.to_start && one.used && one.taken)
            return &one;
    return nullptr;
}

std::vector<ConnectionWords> connection_words(const Plan& plan, const Figures& shown) {
    std::vector<ConnectionWords> all;
    for (const PlanConnection& one : plan.connections)
        all.push_back(one.to_start ? arrival_words(one, shown) : departure_words(one, shown));
    return all;
}

PermitWords permit_words(const Plan& plan, const Figures& /*shown*/) {
    PermitWords words;
    for (const PlanPermit& permit : plan.permits) {
        for (const PermitDate& booking : permit.bookings)
            words.rows.push_back({.where = permit.where,
                                  .when = fmt::format("{} {}{}",
                                                      permit.nights ? "night of" : "day of",
                                                      short_date(booking.date),
                                                      booking.open ? "" : " (!)"),
                                  .people = people_words(permit),
                                  .late = late_words(permit, booking)});
        if (permit.bookings.empty())
            words.remarks.push_back(
                fmt::format("{}: no night of the plan is there; nothing to book.", permit.where));
        if (!permit.note.empty())
            words.remarks.push_back(fmt::format("{}: {}", permit.where, permit.note));
    }
    if (const std::string lost = lost_day_words(plan); !lost.empty())
        words.remarks.push_back(lost);
    return words;
}

} // namespace tumpline::cli
