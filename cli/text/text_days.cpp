#include "cli/text/text_page.h"
#include "cli/words/calendar_words.h"
#include "cli/words/flow_words.h"
#include "cli/words/table.h"
#include "cli/words/words.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::PlanDay;
using planner::PlanLeg;
using planner::Travel;

/// How many members' packs stand side by side in one table.
constexpr std::size_t members_abreast = 3;

/// When the sun or the light goes: a time, or why there is none on that day.
std::string crossing(const TextPage& page, const geo::SunCrossings& sun, planner::Date date) {
    switch (sun.day) {
    case geo::SunDay::always_above:
        return "never";
    case geo::SunDay::always_below:
        return "dark";
    case geo::SunDay::rises_only:
        return "after 24:00";
    case geo::SunDay::rises_and_sets:
    case geo::SunDay::sets_only:
        break;
    }
    if (sun.set && sun.rise && *sun.set < *sun.rise)
        return "after 24:00"; // the setting just after midnight belongs to the evening before
    return sun.set ? page.clock(*sun.set, date) : std::string();
}

/// The band beside a time: "3.4-5.0 h", below an hour "12-20 min".
std::string between(const PlanLeg& leg) {
    if (planner::is_ride(leg.travel))
        return "as given";
    if (leg.moving_high_s < planner::s_per_h)
        return fmt::format("{:.0f}-{:.0f} min",
                           leg.moving_low_s / planner::s_per_min,
                           leg.moving_high_s / planner::s_per_min);
    return fmt::format("{:.1f}-{:.1f} h",
                       leg.moving_low_s / planner::s_per_h,
                       leg.moving_high_s / planner::s_per_h);
}

/// What moves the boat beside its crew: "assumed current 5.0 km/h; wind 10 km/h (force 2), headwind
/// 4.1 km/h".
std::string pushes(const TextPage& page, const PlanLeg& leg) {
    constexpr double calm_mps = 0.1; // would print as nothing
    std::vector<std::string> pushes;
    if (std::abs(leg.current_mps) >= calm_mps)
        pushes.push_back(fmt::format("assumed current {}{}{}",
                                     page.speed(std::abs(leg.current_mps)),
                                     leg.current_mps < 0.0 ? ", against" : "",
                                     leg.current_estimate ? ", an estimate" : ""));
    if (leg.flow && !level_met(*leg.flow, page).empty())
        pushes.push_back("the river at " + level_met(*leg.flow, page));
    if (leg.wind_mps >= calm_mps && !planner::led(leg.travel)) {
        const std::string along =
            std::abs(leg.wind_head_mps) < calm_mps
                ? std::string("across")
                : fmt::format("{} {}",
                              leg.wind_head_mps > 0.0 ? "headwind" : "tailwind",
                              page.speed(std::abs(leg.wind_head_mps)));
        pushes.push_back(
            fmt::format("wind {} (force {}), {}", page.speed(leg.wind_mps), leg.wind_force, along));
    }
    return fmt::format("{}", fmt::join(pushes, "; "));
}

void add_when(TextPage& page) {
    Table table({{"Day", true},
                 {"Date"},
                 {"From", false, true},
                 {"To", false, true},
                 {"Set off", true},
                 {"Arrive", true},
                 {"between"},
                 {"Sunset", true},
                 {"Dusk", true}});
    for (const PlanDay& day : page.plan().days) {
        table.row({fmt::format("{}", day.day),
                   TextPage::date(day.date),
                   day.from,
                   day.rest_day ? std::string(still_cell(day)) : day.to,
                   day.rest_day ? std::string() : page.clock(day.set_off, day.date),
                   day.rest_day ? std::string() : page.clock(day.arrive, day.date),
                   day.rest_day ? std::string()
                                : fmt::format("{}-{}",
                                              page.clock(day.arrive_early, day.date),
                                              page.clock(day.arrive_late, day.date)),
                   crossing(page, day.light.sun, day.date),
                   crossing(page, day.light.twilight, day.date)});
        for (const std::string& caution : page.cautions(day.day, std::nullopt))
            table.remark(caution);
    }
    page.add(table);
}

/// With columns for boats that are led and for rides where there are any.
void add_how_far(TextPage& page) {
    const std::vector<PlanDay>& days = page.plan().days;
    const bool rides =
        std::any_of(days.begin(), days.end(), [](const PlanDay& day) { return day.ride_s > 0.0; });
    std::vector<Column> columns{
        {"Day", true}, {"Distance", true}, {"On foot", true}, {"Carry", true}, {"Afloat", true}};
    const bool leads =
        std::any_of(days.begin(), days.end(), [](const PlanDay& day) { return day.led_m > 0.0; });
    if (leads)
        columns.push_back({"Led", true});
    if (rides)
        columns.push_back({"Ride", true});
    for (const char* heading : {"Up", "Down", "Moving", "Transitions", "Rests"})
        columns.push_back({heading, true});
    Table table(std::move(columns));
    for (const PlanDay& day : days) {
        if (day.rest_day)
            continue;
        std::vector<std::string> cells{fmt::format("{}", day.day),
                                       page.distance(day.to_m - day.from_m),
                                       page.distance(day.walk_m),
                                       page.portage(day.portage_m),
                                       page.distance(day.paddle_m)};
        if (leads)
            cells.push_back(page.distance(day.led_m));
        if (rides)
            cells.push_back(page.distance(day.ride_m));
        for (const double climb_m : {day.ascent_m, day.descent_m})
            cells.push_back(climb_words(climb_m, day.heights_known, page.units()));
        for (const double lasts_s : {day.moving_s, day.changeover_s, day.rest_s})
            cells.push_back(TextPage::duration(lasts_s));
        table.row(std::move(cells));
    }
    page.add("\n");
    page.add(table);
}

std::string up_and_down(const TextPage& page, const PlanLeg& leg) {
    if (planner::is_ride(leg.travel))
        return {};
    if (!leg.heights_known)
        return "unknown";
    const std::string up = page.height(leg.ascent_m);
    return fmt::format("{}/{}", up.substr(0, up.find(' ')), page.height(leg.descent_m));
}

void add_leg(TextPage& page, Table& table, const PlanLeg& leg, planner::Date date) {
    table.row({leg_number(leg),
               std::string(word(leg.travel)),
               leg.name,
               leg.travel == Travel::portage ? page.portage(leg.to_m - leg.from_m)
                                             : page.distance(leg.length_m()),
               up_and_down(page, leg),
               leg.stopped ? std::string("stopped") : TextPage::duration(leg.moving_s),
               between(leg),
               TextPage::duration(leg.changeover_s),
               page.clock(leg.end, date)});
    if (planner::afloat(leg.travel) && leg.steepest_500m > 0.0)
        table.remark(fmt::format("falls {}, the steepest {} {}",
                                 page.gradient(leg.gradient),
                                 page.distance(500.0),
                                 page.gradient(leg.steepest_500m)));
    if (const std::string moves = pushes(page, leg); planner::afloat(leg.travel) && !moves.empty())
        table.remark(moves);
    for (const std::string& left : left_words(page, leg))
        table.remark(left);
    for (const std::string& hazard : hazard_words(page, leg))
        table.remark(hazard);
    for (const std::string& caution : page.cautions(leg.day, leg.leg))
        table.remark(caution);
}

void add_pack_block(TextPage& page, std::size_t first, std::size_t last) {
    const planner::Plan& plan = page.plan();
    std::vector<Column> columns = {{"Leg"}, {"Day", true}, {"", false, true}};
    std::vector<Table::Group> groups;
    for (std::size_t member = first; member < last; ++member) {
        groups.push_back({columns.size(), 3, plan.trip.party[member].name});
        columns.push_back({"start", true});
        columns.push_back({"end", true});
        columns.push_back({"worst", true});
    }
    Table table(std::move(columns));
    for (Table::Group& group : groups)
        table.group(std::move(group));
    for (const PlanLeg& leg : plan.legs) {
        std::vector<std::string> cells = {leg_number(leg), fmt::format("{}", leg.day), leg.name};
        for (std::size_t member = first; member < std::min(last, leg.loads.size()); ++member) {
            const planner::MemberLoad& load = leg.loads[member];
            const bool over = over_limit(leg, load);
            cells.push_back(page.bare_mass(load.pack_start_kg));
            cells.push_back(page.bare_mass(load.pack_end_kg));
            cells.push_back(page.bare_mass(load.pack_max_kg) + (over ? "!" : ""));
        }
        table.row(std::move(cells));
    }
    page.add(table);
}

} // namespace

std::string leg_number(const PlanLeg& leg) {
    return leg.part == 0 ? fmt::format("{}", leg.leg) : fmt::format("{}.{}", leg.leg, leg.part);
}

std::string dusk_words(const TextPage& page, const PlanDay& day) {
    return crossing(page, day.light.twilight, day.date);
}

void add_days(TextPage& page) {
    if (page.plan().days.empty())
        return;
    page.heading("Days");
    add_when(page);
    add_how_far(page);
    add_daylight(page);
}

void add_legs(TextPage& page) {
    for (const PlanDay& day : page.plan().days) {
        Table table({{"Leg"},
                     {"Travel"},
                     {"", false, true},
                     {"Length", true},
                     {"Up/down", true},
                     {"Moving", true},
                     {"between", true},
                     {"Transitions", true},
                     {"Arrive", true}});
        for (const PlanLeg& leg : page.plan().legs)
            if (leg.day == day.day)
                add_leg(page, table, leg, day.date);
        if (table.empty())
            continue;
        page.heading(day.rise ? fmt::format("Day {}: legs (up at {} to break camp)",
                                            day.day,
                                            page.clock(*day.rise))
                              : fmt::format("Day {}: legs", day.day));
        page.add(table);
    }
}

void add_packs(TextPage& page) {
    const std::size_t party = page.plan().trip.party.size();
    if (page.plan().legs.empty() || party == 0)
        return;
    const std::vector<PlanLeg>& legs = page.plan().legs;
    const bool rides = std::any_of(
        legs.begin(), legs.end(), [](const PlanLeg& leg) { return planner::is_ride(leg.travel); });
    page.heading(fmt::format("Packs in {} (on foot: on the back; afloat: own goods in the craft{})",
                             page.mass_unit(),
                             rides ? "; on a ride: luggage" : ""));
    add_heaviest(page);
    page.add("\n");
    for (std::size_t first = 0; first < party; first += members_abreast) {
        if (first > 0)
            page.add("\n");
        add_pack_block(page, first, std::min(party, first + members_abreast));
    }
    const bool over = std::any_of(legs.begin(), legs.end(), [](const PlanLeg& leg) {
        return std::any_of(leg.loads.begin(), leg.loads.end(), [&](const auto& load) {
            return over_limit(leg, load);
        });
    });
    if (over)
        page.item("! is over the bearer's limit. On a portage, worst is the heaviest carry.");
}

} // namespace tumpline::cli
