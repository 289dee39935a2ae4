#include "planner/trip/sections.h"
#include "planner/trip/timetable.h"

#include <fmt/format.h>

#include <string>

namespace tumpline::planner {

namespace {

using Kind = JsonValue::Kind;

void read_times(const TripValue& value, Connection& connection) {
    if (!is_short_enough(value, most_timetable_hours, "keep the dates of the trip"))
        return;
    for (const TripValue& item : value.items(timetable_forms)) {
        TimetableReading read = item.json().kind == Kind::text
                                    ? read_timetable_hour(item.json().text)
                                    : TimetableReading{};
        if (read.hour)
            connection.times.push_back(std::move(*read.hour));
        else
            item.add_problem(std::string(timetable_forms), std::move(read.advice));
    }
    if (value.json().kind == Kind::list && value.json().items.empty())
        value.add_problem(fmt::format("at least one hour: {}", timetable_forms));
}

/// Away from the end with departures, or to the start with arrivals.
void check_ends(const TripValue& value) {
    if (value.json().kind != Kind::object)
        return;
    const auto has = [&](std::string_view key) { return value.json().find(key) != nullptr; };
    const bool away = has("at") && has("departs") && !has("to") && !has("arrives");
    const bool here = has("to") && has("arrives") && !has("at") && !has("departs");
    if (away || here)
        return;
    std::string found;
    for (const std::string_view key : {"at", "departs", "to", "arrives"})
        if (has(key))
            found += fmt::format("{}\"{}\"", found.empty() ? "" : ", ", key);
    value.problems().add(
        value.place(),
        {.found = found.empty() ? std::string("neither a place nor hours") : found,
         .expected = "\"at\" with \"departs\", away from the end of the route; or \"to\" with "
                     "\"arrives\", to its start",
         .advice = {}});
}

void read_permit_dates(const TripValue& value, Permit& permit) {
    put(permit.dates, read_dates(value));
}

} // namespace

const Section<Connection>& connection_section() {
    static const Section<Connection> section{
        "connection",
        "a connection",
        {
            {"what", Need::must, [](const TripValue& v, Connection& c) { put(c.what, v.name()); }},
            {"at", Need::may, [](const TripValue& v, Connection& c) { put(c.place, v.name()); }},
            {"departs", Need::may, read_times},
            {"to",
             Need::may,
             [](const TripValue& v, Connection& c) {
                 put(c.place, v.name());
                 c.to_start = true;
             }},
            {"arrives", Need::may, read_times},
            {"margin",
             Need::may,
             [](const TripValue& v, Connection& c) {
                 put(c.margin, v.duration({0.0, 24.0}));
             }},
        }};
    return section;
}

const Section<Permit>& permit_section() {
    static const Section<Permit> section{
        "permit",
        "a permit",
        {
            {"for", Need::must, [](const TripValue& v, Permit& p) { put(p.where, v.name()); }},
            {"dates", Need::may, read_permit_dates},
            {"people",
             Need::may,
             [](const TripValue& v, Permit& p) {
                 put(p.most_people, v.whole_number({1, 1000}));
             }},
            {"note", Need::may, [](const TripValue& v, Permit& p) { put(p.note, v.text()); }},
        }};
    return section;
}

void read_connections(const TripValue& value, Trip& trip) {
    if (!is_short_enough(value, most_connections, "keep those to the start and from the end"))
        return;
    for (const TripValue& item : value.items(connection_section().noun)) {
        read_section(item, connection_section(), trip.connections.emplace_back());
        check_ends(item);
    }
}

std::optional<DateSpan> read_dates(const TripValue& value) {
    const std::vector<TripValue> items = value.items("a date");
    if (items.size() != 2) {
        if (value.json().kind == Kind::list)
            value.add_problem("two dates, the first and the last",
                              "for instance [\"2027-06-18\", \"2027-06-20\"]");
        return std::nullopt;
    }
    const std::optional<Date> first = items[0].date();
    const std::optional<Date> last = items[1].date();
    if (!first || !last)
        return std::nullopt;
    if (*last < *first) {
        value.add_problem("the earlier date first");
        return std::nullopt;
    }
    return DateSpan{*first, *last};
}

} // namespace tumpline::planner
