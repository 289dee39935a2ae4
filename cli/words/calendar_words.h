#pragma once

#include "cli/words/figures.h"
#include "planner/plan.h"

#include <string>
#include <string_view>
#include <vector>

/// Connections and permits in words for people.
namespace tumpline::cli {

/// A connection: what is taken, and what goes with it, line by line.
struct ConnectionWords {
    std::string head;
    std::string if_missed;          ///< empty: there is nothing to miss
    std::vector<std::string> lines; ///< what else is to be known
};

[[nodiscard]] std::vector<ConnectionWords> connection_words(const planner::Plan& plan,
                                                            const Figures& shown);

/// The connection that takes the party away from the end; null: none is given, or none is reached.
[[nodiscard]] const planner::PlanConnection* connection_home(const planner::Plan& plan);

/// The date of an instant in the reader's zone.
[[nodiscard]] planner::Date local_date(geo::sys_seconds at, const Figures& shown);

/// "Fri 18 June 18:05", local.
[[nodiscard]] std::string dated_clock(geo::sys_seconds at, const Figures& shown);

/// "rest day", "waiting for: bus"; of a day without travel.
[[nodiscard]] std::string still_words(const planner::PlanDay& day);

/// The same for a narrow cell: "(rest day)", "(waiting)".
[[nodiscard]] inline std::string_view still_cell(const planner::PlanDay& day) {
    return day.waiting_for.empty() ? "(rest day)" : "(waiting)";
}

/// A night or a day to be booked.
struct BookingWords {
    std::string where;
    std::string when;
    std::string people;
    std::string late; ///< what a lost day makes of it
};

struct PermitWords {
    std::vector<BookingWords> rows;
    std::vector<std::string> remarks; ///< notes, places where nobody sleeps, what a lost day breaks
};

[[nodiscard]] PermitWords permit_words(const planner::Plan& plan, const Figures& shown);

} // namespace tumpline::cli
