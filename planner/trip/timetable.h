#pragma once

#include "planner/trip/trip.h"

#include <optional>
#include <string>
#include <string_view>

/// Hours of a timetable as the trip file writes them.
namespace tumpline::planner {

/// What a timetable's hour may look like, for whoever got it wrong.
inline constexpr std::string_view timetable_forms =
    "\"Mo 09:10\", \"We,Fr 17:40\", \"Mo-Fr 07:10\", \"2027-06-18 07:35\", or \"17:40\" for every "
    "day";

/// What was read, or what to write instead.
struct TimetableReading {
    std::optional<TimetableHour> hour;
    std::string advice;
};

/// Reads "Mo 09:10", "We,Fr 17:40", "Mo-Fr 07:10", "2027-06-18 07:35", "17:40", "daily 17:40".
[[nodiscard]] TimetableReading read_timetable_hour(std::string_view text);

/// "We,Fr 17:40"; "2027-06-18 07:35"; "daily 17:40".
[[nodiscard]] std::string timetable_words(const TimetableHour& hour);

/// Whether it runs on a date.
[[nodiscard]] bool runs_on(const TimetableHour& hour, Date date);

} // namespace tumpline::planner
