#include "cli/book/book_parts.h"
#include "cli/words/calendar_words.h"
#include "cli/words/packing_words.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::PlanDay;

std::string_view craft_word(planner::CraftKind kind) {
    switch (kind) {
    case planner::CraftKind::packraft:
        return "packraft";
    case planner::CraftKind::inflatable:
        return "inflatable";
    case planner::CraftKind::solo_canoe:
        return "solo canoe";
    case planner::CraftKind::tandem_canoe:
        return "tandem canoe";
    case planner::CraftKind::kayak:
        return "kayak";
    }
    return "";
}

std::vector<Fields> people(const Plan& plan, const Figures& shown) {
    std::vector<Fields> rows;
    for (const planner::Member& member : plan.trip.party) {
        std::vector<std::string> about;
        if (member.age_years)
            about.push_back(fmt::format("{} years", planner::show_number(*member.age_years, 0)));
        if (member.height_m)
            about.push_back(
                shown.units() == planner::UnitSystem::metric
                    ? fmt::format("{} cm", planner::show_number(100.0 * *member.height_m, 0))
                    : shown.height(*member.height_m));
        if (member.body_kg > 0.0)
            about.push_back(shown.mass(member.body_kg));
        rows.emplace_back().text("name", member.name).text("about", joined(about));
    }
    return rows;
}

std::vector<Fields> boats(const Plan& plan) {
    std::vector<Fields> rows;
    for (const planner::Craft& craft : plan.trip.craft) {
        std::vector<Fields> crew;
        for (const std::string& name : craft.crew)
            crew.emplace_back().text("name", name);
        rows.emplace_back()
            .text("name", craft.name)
            .text("kind", craft.kind ? craft_word(*craft.kind) : "")
            .list("crew", std::move(crew));
    }
    return rows;
}

std::vector<Fields> timetable(const BookSource& source) {
    const Figures& shown = source.shown;
    std::vector<Fields> rows;
    for (const PlanDay& day : source.plan.days) {
        const std::string ways = ways_phrase(ways_of(day), shown);
        rows.emplace_back()
            .text("day", std::to_string(day.day))
            .text("date", short_date(day.date))
            .text("from", day.from)
            .text("to", day.to)
            .text("set_off", day.rest_day ? "" : shown.clock(day.set_off))
            .text("arrive", shown.clock_on(day.arrive, day.date))
            .text("late", shown.clock_on(day.arrive_late, day.date))
            .text("how", day.rest_day || ways.empty() ? still_words(day) : ways)
            .text("decimal", day.camp_located ? decimal_degrees(day.camp) : "no position known")
            .text("minutes", day.camp_located ? degrees_and_minutes(day.camp) : "");
    }
    return rows;
}

std::vector<Fields> ways_out(const Plan& plan) {
    std::vector<std::string> names;
    const auto add = [&](const std::string& name) {
        if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end())
            names.push_back(name);
    };
    for (const planner::ExitPoint& point : plan.exits) {
        add(point.back);
        add(point.forward);
    }
    std::vector<Fields> rows;
    for (const std::string& name : names)
        rows.emplace_back().text("name", name);
    return rows;
}

std::vector<Fields> alternatives(const planner::Route& route) {
    std::vector<Fields> rows;
    for (const planner::RouteLeg& leg : route.alternatives)
        rows.emplace_back().text("name", leg.name).text("instead", leg.spec.instead_of);
    return rows;
}

std::string carried(const BookSource& source) {
    const Plan& plan = source.plan;
    const Figures& shown = source.shown;
    std::vector<std::string> things;
    for (const planner::PackedItem& item : plan.items)
        if (item.comes && (item.owner.empty() || item.part == planner::Part::craft))
            things.push_back(one_line(thing_words(item)));
    double reserve_kg = 0.0;
    for (const planner::Stage& stage : plan.stages)
        reserve_kg = std::max(reserve_kg, stage.reserve_kg);
    std::string reported = fmt::format("Food for {}, {} in all",
                                       counted(plan.totals.days, "day", "days"),
                                       shown.mass(plan.totals.food_kg));
    if (reserve_kg > 0.0)
        reported += fmt::format(", of it a reserve of {}", shown.mass(reserve_kg));
    reported += fmt::format("; fuel {}.", shown.mass(plan.totals.fuel_kg));
    if (!things.empty())
        reported += fmt::format(" Of the party's things: {}.", joined(things));
    return reported;
}

/// The user's own lines for the sheet.
std::vector<Fields> own_lines(const std::string& text) {
    std::vector<Fields> rows;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        if (const std::string line = one_line(std::string_view(text).substr(at, end - at));
            !line.empty())
            rows.emplace_back().text("line", line);
        at = end + 1;
    }
    return rows;
}

/// When the party is back: where a connection takes it away, with that.
geo::sys_seconds planned_return(const Plan& plan) {
    const planner::PlanConnection* home = connection_home(plan);
    return home != nullptr ? *home->taken : plan.days.back().arrive;
}

void add_return(Fields& fields, const BookSource& source) {
    const Plan& plan = source.plan;
    if (plan.days.empty())
        return;
    const planner::PlanConnection* home = connection_home(plan);
    fields.text("return_at", source.shown.moment(planned_return(plan)))
        .text("return_place",
              home != nullptr ? fmt::format("{} from {}", home->what, home->place)
                              : plan.days.back().to)
        .text("return_next",
              home != nullptr && home->next ? fmt::format("If that is missed, the next one: {}.",
                                                          source.shown.moment(*home->next))
                                            : std::string());
}

/// What brings the party to its start, and takes it home.
std::vector<Fields> lines_there_and_back(const BookSource& source) {
    std::vector<Fields> rows;
    for (const ConnectionWords& words : connection_words(source.plan, source.shown))
        rows.emplace_back().text("line", words.head);
    return rows;
}

} // namespace

void add_contact(Fields& fields, const BookSource& source) {
    const Plan& plan = source.plan;
    const Figures& shown = source.shown;
    add_return(fields, source);
    const auto& after = plan.trip.contact.alarm_after;
    if (after && !plan.days.empty())
        fields.text("alarm_at", shown.moment(planned_return(plan) + *after))
            .text(
                "alarm_why",
                fmt::format("{} after the planned return", shown.duration(double(after->count()))));
    else
        fields.text("alarm_at", "")
            .text("alarm_why", "agree on it with the contact and write it here");
    const auto people_count = static_cast<long>(plan.trip.party.size());
    fields.text("people_count", counted(people_count, "person", "people"))
        .list("people", people(plan, shown))
        .text("boat_count", std::to_string(plan.trip.craft.size()))
        .list("contact_boats", boats(plan))
        .list("timetable", timetable(source))
        .list("lines_there_and_back", lines_there_and_back(source))
        .list("ways_out", ways_out(plan))
        .list("alternatives", alternatives(source.route))
        .text("carried", carried(source))
        .list("contact_text", own_lines(plan.trip.contact.text));
}

} // namespace tumpline::cli
