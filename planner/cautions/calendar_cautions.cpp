#include "planner/cautions/calendar_cautions.h"

#include "planner/cautions/caution_list.h"
#include "planner/conditions/departures.h"
#include "planner/quantities/quantities.h"

#include <fmt/format.h>

#include <array>
#include <string>

namespace tumpline::planner {

namespace {

class CalendarRules {
  public:
    CalendarRules(const Assembly& draft, const Plan& plan) : draft_(draft), plan_(plan) {}

    std::vector<Caution> run();

  private:
    [[nodiscard]] std::string moment(sys_seconds at) const;
    void arrival(const PlanConnection& one);
    void departure(const PlanConnection& one);
    void waiting(const PlanConnection& one);
    void permit(const PlanPermit& one);

    const Assembly& draft_;
    const Plan& plan_;
    CautionList list_;
};

/// "Fri 2027-06-18 17:40".
std::string CalendarRules::moment(sys_seconds at) const {
    static constexpr std::array<std::string_view, 7> names{
        "Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    const std::string& zone = plan_.trip.time_zone;
    const auto day = std::chrono::floor<std::chrono::days>(
        geo::to_local(std::chrono::round<std::chrono::minutes>(at), zone));
    return fmt::format("{} {} {}",
                       names.at(std::chrono::weekday{day}.c_encoding()),
                       show_date(Date{day}),
                       clock_words(at, zone));
}

void CalendarRules::arrival(const PlanConnection& one) {
    list_.at(1);
    const std::string what = fmt::format("{} to {}", one.what, one.place);
    if (!one.taken || one.wait_s < one.margin_s) {
        Caution& caution = list_.add(
            Level::stop,
            "no-arrival",
            one.taken
                ? fmt::format("{}: it arrives {}, too late to set off on that day with the margin "
                              "of {}. Change the start.",
                              what,
                              moment(*one.taken),
                              show_duration(one.margin_s))
                : fmt::format(
                      "{}: nothing arrives on {}, the day of the start; {}{}. Change the "
                      "start, or come another way.",
                      what,
                      show_date(date_of(draft_, 1)),
                      one.before
                          ? fmt::format("the last one before comes {}, ", moment(*one.before))
                          : std::string(),
                      one.next ? fmt::format("the next one {}", moment(*one.next))
                               : fmt::format("none comes within {} days", longest_wait_days)));
        caution.subject = what;
        return;
    }
    if (one.set_off_moved) {
        Caution& caution =
            list_.add(Level::note,
                      "set-off-moved",
                      fmt::format("{} arrives {}: day 1 sets off at {}, later than the trip file "
                                  "asks.",
                                  what,
                                  moment(*one.taken),
                                  clock_words(one.there, plan_.trip.time_zone)));
        caution.subject = what;
    }
}

void CalendarRules::waiting(const PlanConnection& one) {
    std::string text =
        fmt::format("{} at {} leaves {}: {} of waiting from {}, with food, fuel and water for {}.",
                    one.what,
                    one.place,
                    moment(*one.taken),
                    one.nights == 1 ? "a night" : fmt::format("{} nights", one.nights),
                    moment(one.there),
                    one.nights == 1 ? "it" : "them");
    if (one.camp == false)
        text += fmt::format(" {} is no camp of the trip file: whether one may sleep there is not "
                            "known.",
                            one.place);
    if (one.dry)
        text += " No dependable water is known there: its litres are carried to it.";
    Caution& caution = list_.add(Level::caution, "waiting", text);
    caution.subject = fmt::format("{} at {}", one.what, one.place);
    set_figure(caution,
               one.nights == 1 ? std::string("a night") : fmt::format("{} nights", one.nights),
               one.nights);
}

void CalendarRules::departure(const PlanConnection& one) {
    list_.at(plan_.days.back().day);
    const std::string what = fmt::format("{} at {}", one.what, one.place);
    if (!one.taken) {
        const bool any =
            std::any_of(plan_.connections.begin(),
                        plan_.connections.end(),
                        [](const PlanConnection& other) { return !other.to_start && other.taken; });
        Caution& caution = list_.add(
            any ? Level::caution : Level::stop,
            "no-departure",
            fmt::format("{}: the party is there {}, and with the margin of {} nothing "
                        "leaves within {} days{}.",
                        what,
                        moment(one.there),
                        show_duration(one.margin_s),
                        longest_wait_days,
                        one.before ? fmt::format("; the last one leaves {}", moment(*one.before))
                                   : std::string()));
        caution.subject = what;
        return;
    }
    if (one.used && one.nights > 0)
        waiting(one);
}

void CalendarRules::permit(const PlanPermit& one) {
    const std::string what = fmt::format("the permit for {}", one.where);
    if (one.too_many() && !one.bookings.empty()) {
        list_.at(one.bookings.front().day);
        Caution& caution = list_.add(Level::stop,
                                     "permit-people",
                                     fmt::format("{}: {} people in the party, and at most {} may "
                                                 "come together.",
                                                 one.where,
                                                 one.people,
                                                 *one.most_people));
        caution.subject = what;
        set_figure(caution,
                   fmt::format("{} of {} people", one.people, *one.most_people),
                   one.people - *one.most_people);
    }
    for (const PermitDate& booking : one.bookings) {
        if (booking.open)
            continue;
        list_.at(booking.day);
        const bool outside = one.dates && !one.dates->holds(booking.date);
        Caution& caution =
            list_.add(Level::stop,
                      "permit-date",
                      fmt::format("{}: it is {} {}{}.",
                                  one.where,
                                  one.nights ? "slept at on" : "entered on",
                                  show_date(booking.date),
                                  outside ? fmt::format(", and the permit can be had from {} to {}",
                                                        show_date(one.dates->first),
                                                        show_date(one.dates->last))
                                          : std::string(", and it is closed on that date")));
        caution.subject = what;
    }
}

std::vector<Caution> CalendarRules::run() {
    for (const PlanConnection& one : plan_.connections) {
        if (one.to_start)
            arrival(one);
        else
            departure(one);
    }
    for (const PlanPermit& one : plan_.permits)
        permit(one);
    return list_.take();
}

} // namespace

std::vector<Caution> calendar_cautions(const Assembly& draft, const Plan& plan) {
    return CalendarRules(draft, plan).run();
}

} // namespace tumpline::planner
