#include "planner/trip/sections.h"

namespace tumpline::planner {

namespace {

constexpr Between half_a_day{0.0, 12.0};

/// A list of places, or "auto".
void read_nights(const TripValue& value, Days& days) {
    const JsonValue& json = value.json();
    if (json.kind == JsonValue::Kind::text && json.text == "auto") {
        days.nights_auto = true;
        return;
    }
    if (json.kind != JsonValue::Kind::list) {
        value.add_problem("a list of names of places, or \"auto\"");
        return;
    }
    for (const TripValue& item : value.items("the name of a place"))
        days.nights.push_back(item.name().value_or(std::string()));
}

void read_rest_days(const TripValue& value, Days& days) {
    for (const TripValue& item : value.items("the number of a day"))
        if (const std::optional<int> day = item.whole_number({1, 366}))
            days.rest_days_after.push_back(*day);
}

} // namespace

const Section<Changeovers>& changeovers_section() {
    static const Section<Changeovers> section{
        "changeovers",
        "the change-overs",
        {
            {"boots_to_boat",
             Need::may,
             [](const TripValue& v, Changeovers& c) {
                 put(c.boots_to_boat, v.duration(half_a_day));
             }},
            {"boat_to_boots",
             Need::may,
             [](const TripValue& v, Changeovers& c) {
                 put(c.boat_to_boots, v.duration(half_a_day));
             }},
            {"landing",
             Need::may,
             [](const TripValue& v, Changeovers& c) { put(c.landing, v.duration(half_a_day)); }},
            {"scout",
             Need::may,
             [](const TripValue& v, Changeovers& c) { put(c.scout, v.duration(half_a_day)); }},
            {"break_camp",
             Need::may,
             [](const TripValue& v, Changeovers& c) { put(c.break_camp, v.duration(half_a_day)); }},
        }};
    return section;
}

const Section<Appointment>& appointment_section() {
    static const Section<Appointment> section{
        "appointment",
        "an appointment",
        {
            {"what", Need::must, [](const TripValue& v, Appointment& a) { put(a.what, v.name()); }},
            {"at", Need::must, [](const TripValue& v, Appointment& a) { put(a.at, v.name()); }},
            {"day",
             Need::must,
             [](const TripValue& v, Appointment& a) {
                 put(a.day, v.whole_number({1, 400}));
             }},
            {"by",
             Need::must,
             [](const TripValue& v, Appointment& a) { put(a.by, v.time_of_day()); }},
            {"margin",
             Need::may,
             [](const TripValue& v, Appointment& a) {
                 put(a.margin, v.duration({0.0, 240.0}));
             }},
            {"hard",
             Need::may,
             [](const TripValue& v, Appointment& a) { put(a.hard, v.yes_or_no()); }},
        }};
    return section;
}

const Section<Days>& days_section() {
    static const Section<Days> section{
        "days",
        "the days",
        {
            {"set_off",
             Need::may,
             [](const TripValue& v, Days& d) { put(d.set_off, v.time_of_day()); }},
            {"first_set_off",
             Need::may,
             [](const TripValue& v, Days& d) { put(d.first_set_off, v.time_of_day()); }},
            {"hours",
             Need::may,
             [](const TripValue& v, Days& d) {
                 put(d.hours, v.number({0.5, 24.0}));
             }},
            {"hours_limit",
             Need::may,
             [](const TripValue& v, Days& d) {
                 put(d.hours_limit, v.number({0.5, 24.0}));
             }},
            {"nights", Need::may, read_nights},
            {"rest_days_after", Need::may, read_rest_days},
            {"weather_days",
             Need::may,
             [](const TripValue& v, Days& d) {
                 put(d.weather_days, v.whole_number({0, 30}));
             }},
            {"rest_per_hour",
             Need::may,
             [](const TripValue& v, Days& d) {
                 put(d.rest_per_hour, v.duration({0.0, 1.0}));
             }},
            {"most_days",
             Need::may,
             [](const TripValue& v, Days& d) {
                 put(d.most_days, v.whole_number({1, 366}));
             }},
            {"dusk_is_limit",
             Need::may,
             [](const TripValue& v, Days& d) { put(d.dusk_is_limit, v.yes_or_no()); }},
            {"halt",
             Need::may,
             [](const TripValue& v, Days& d) {
                 read_section(v, halt_section(), d.halt.emplace());
             }},
            {"in_camp_before_dark",
             Need::may,
             [](const TripValue& v, Days& d) {
                 put(d.in_camp_before_dark, v.duration(half_a_day));
             }},
        }};
    return section;
}

const Section<MiddayHalt>& halt_section() {
    static const Section<MiddayHalt> section{
        "halt",
        "the halt at midday",
        {
            {"from",
             Need::must,
             [](const TripValue& v, MiddayHalt& h) {
                 if (const std::optional<seconds> from = v.time_of_day())
                     h.from_s = static_cast<double>(from->count());
             }},
            {"to",
             Need::must,
             [](const TripValue& v, MiddayHalt& h) {
                 if (const std::optional<seconds> to = v.time_of_day())
                     h.to_s = static_cast<double>(to->count());
             }},
            {"above",
             Need::may,
             [](const TripValue& v, MiddayHalt& h) {
                 put(h.above_c, v.quantity(sensible_temperature));
             }},
        }};
    return section;
}

const Section<Contact>& contact_section() {
    static const Section<Contact> section{
        "contact",
        "the contact",
        {
            {"alarm_after",
             Need::may,
             [](const TripValue& v, Contact& c) {
                 put(c.alarm_after, v.duration({0.0, 240.0}));
             }},
            {"text", Need::may, [](const TripValue& v, Contact& c) { put(c.text, v.text()); }},
        }};
    return section;
}

} // namespace tumpline::planner
