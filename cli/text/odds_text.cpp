#include "cli/text/odds_text.h"

#include "cli/text/text_page.h"
#include "cli/words/calendar_words.h"
#include "cli/words/odds_words.h"
#include "cli/words/table.h"
#include "cli/words/text_width.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace tumpline::cli {

namespace {

using planner::Odds;

std::string share(double part) {
    return part < 0.005 ? std::string() : fmt::format("{:.0f} %", 100.0 * part);
}

void add_head(TextPage& page, const Odds& odds) {
    const planner::Plan& plan = odds.plan;
    page.heading(one_line(plan.trip.name.empty() ? plan.trip.file.string() : plan.trip.name));
    page.line(fmt::format("{} draws, seed {}; the plan's nights, packed food and bearers are kept",
                          odds.options.draws,
                          odds.options.seed));
    if (plan.verdict.level != planner::VerdictLevel::clear)
        page.line(fmt::format("The plan itself: {}; see tumpline plan.",
                              planner::verdict_words(plan.verdict.level)));
    page.line(fmt::format("Under way, all days together: half of the draws take up to {}, nine of "
                          "ten up to {}.",
                          planner::show_duration(odds.under_way_s.q50),
                          planner::show_duration(odds.under_way_s.q90)));
}

void add_arrivals(TextPage& page, const Odds& odds) {
    Table table({{"Day", true},
                 {"To", false, true},
                 {"Plan", true},
                 {"5 %", true},
                 {"10 %", true},
                 {"50 %", true},
                 {"90 %", true},
                 {"95 %", true},
                 {"After dusk", true},
                 {"Stopped", true},
                 {"Main driver", false, true}});
    table.group({3, 5, "share of draws arrived by"});
    for (const planner::OddsDay& one : odds.days) {
        const planner::PlanDay& day = odds.plan.days[static_cast<std::size_t>(one.day - 1)];
        const auto clock = [&](planner::sys_seconds at) { return page.clock(at, day.date); };
        table.row({fmt::format("{}", one.day),
                   day.to,
                   clock(day.arrive),
                   clock(one.arrive.q05),
                   clock(one.arrive.q10),
                   clock(one.arrive.q50),
                   clock(one.arrive.q90),
                   clock(one.arrive.q95),
                   one.after_dusk ? chance_words(*one.after_dusk, odds.options.draws) : "no dusk",
                   chance_words(one.held_up, odds.options.draws),
                   one.leading ? std::string(assumption_words(*one.leading)) : ""});
    }
    if (table.empty())
        return;
    page.heading("Arrivals");
    page.add(table);
}

void add_meetings(TextPage& page, const Odds& odds) {
    if (odds.appointments.empty())
        return;
    page.heading("Appointments");
    for (const planner::OddsAppointment& one : odds.appointments) {
        const planner::PlanAppointment& meet = odds.plan.appointments[one.appointment];
        page.item(fmt::format("{} at {}, day {} by {}: missed in {} of the draws, met with less "
                              "than the margin of {} in {}.",
                              meet.what,
                              meet.at,
                              meet.day,
                              page.clock(meet.by),
                              chance_words(one.missed, odds.options.draws),
                              planner::show_duration(meet.margin_s),
                              chance_words(one.within_margin, odds.options.draws)));
    }
}

void add_departures(TextPage& page, const Odds& odds) {
    if (odds.departures.empty() && odds.no_departure == 0.0)
        return;
    page.heading("Connections: which one is the first after arriving, its margin left out");
    for (const planner::OddsDeparture& one : odds.departures)
        page.item(fmt::format("{}, {}{}: in {} of the draws.",
                              odds.plan.connections[one.connection].what,
                              dated_clock(one.at, page),
                              one.planned ? ", as planned" : "",
                              chance_words(one.chance, odds.options.draws)));
    if (odds.connection_missed.value_or(0.0) > 0.0)
        page.item(fmt::format("The one of the plan is missed in {} of the draws.",
                              chance_words(*odds.connection_missed, odds.options.draws)));
    if (odds.no_departure > 0.0)
        page.item(fmt::format("None leaves any more in {} of the draws.",
                              chance_words(odds.no_departure, odds.options.draws)));
}

void add_rivers(TextPage& page, const Odds& odds, planner::UnitSystem units) {
    if (odds.rivers.empty())
        return;
    page.heading("Rivers, their levels drawn between those that are given");
    const auto speed = [&](double mps) { return planner::show_speed(mps, units); };
    for (const planner::OddsRiver& one : odds.rivers) {
        std::string line =
            fmt::format("leg {} ({}): {} as planned; nine draws of ten from {} to {}",
                        one.leg,
                        one.name,
                        speed(one.plan_mps),
                        speed(one.current_mps.q05),
                        speed(one.current_mps.q95));
        if (one.not_runnable)
            line += fmt::format(", outside the runnable range in {}",
                                chance_words(*one.not_runnable, odds.options.draws));
        if (one.harder)
            line += fmt::format("; its class may be harder than planned in {}",
                                chance_words(*one.harder, odds.options.draws));
        page.item(line + ".");
    }
}

void add_food(TextPage& page, const Odds& odds) {
    if (odds.stages.empty())
        return;
    page.heading("Food as packed");
    for (const planner::OddsStage& one : odds.stages) {
        const planner::Stage& stage = odds.plan.stages[one.stage];
        std::vector<std::string> chances;
        for (std::size_t lost = 0; lost < one.runs_out.size(); ++lost)
            chances.push_back(fmt::format("in {} {}",
                                          chance_words(one.runs_out[lost], odds.options.draws),
                                          lost == 0   ? "of the draws as planned"
                                          : lost == 1 ? "if a day is lost"
                                                      : fmt::format("if {} are", lost)));
        const double left_kg = one.left_kg.q05;
        page.item(fmt::format(
            "{} to {}, days {} to {}: runs out {}. {}",
            stage.from,
            stage.to,
            stage.first_day,
            stage.last_day,
            fmt::join(chances, ", "),
            left_kg < 0.0
                ? fmt::format("In one of twenty {} or more are missing.", page.mass(-left_kg))
                : fmt::format("In nineteen of twenty {} or more are left.", page.mass(left_kg))));
    }
}

void add_water(TextPage& page, const Odds& odds) {
    Table table({{"From", false, true},
                 {"To", false, true},
                 {"Days"},
                 {"Dips into the reserve", true},
                 {"Needs more than filled", true}});
    for (const planner::OddsWater& one : odds.water) {
        const planner::WaterStretch& stretch = odds.plan.water[one.stretch];
        if (one.uses_reserve <= 0.0)
            continue;
        table.row({stretch.from,
                   stretch.to,
                   stretch.first_day == stretch.last_day
                       ? fmt::format("{}", stretch.first_day)
                       : fmt::format("{}-{}", stretch.first_day, stretch.last_day),
                   chance_words(one.uses_reserve, odds.options.draws),
                   chance_words(one.needs_more, odds.options.draws)});
    }
    if (table.empty())
        return;
    page.heading("Water, if the plan's litres are filled");
    page.add(table);
}

void add_packs(TextPage& page, const Odds& odds) {
    Table table({{"Leg", true},
                 {"Day", true},
                 {"", false, true},
                 {"Member", false, true},
                 {"Plan", true},
                 {"5 %", true},
                 {"50 %", true},
                 {"95 %", true},
                 {"Over limit", true}});
    for (const planner::OddsLeg& one : odds.legs) {
        const planner::PlanLeg& leg = odds.plan.legs[one.plan_leg.index()];
        bool first = true;
        for (const planner::OddsPack& pack : one.packs) {
            table.row({first ? leg.part > 0 ? fmt::format("{}.{}", leg.leg, leg.part)
                                            : fmt::format("{}", leg.leg)
                             : "",
                       first ? fmt::format("{}", leg.day) : "",
                       first ? leg.name : "",
                       pack.member,
                       page.bare_mass(pack.plan_kg),
                       page.bare_mass(pack.start_kg.q05),
                       page.bare_mass(pack.start_kg.q50),
                       page.bare_mass(pack.start_kg.q95),
                       chance_words(pack.over_limit, odds.options.draws)});
            first = false;
        }
    }
    if (table.empty())
        return;
    page.heading(fmt::format("Packs at the start of legs on foot, {}", page.mass_unit()));
    page.add(table);
}

void add_influences(TextPage& page, const Odds& odds) {
    std::vector<planner::Influence> by_weight = odds.influences;
    std::stable_sort(by_weight.begin(), by_weight.end(), [](const auto& one, const auto& other) {
        return one.time_share > other.time_share;
    });
    Table table({{"Assumption"},
                 {"Spread", true},
                 {"Time under way", true},
                 {"Food eaten", true},
                 {"Water carried", true}});
    table.group({2, 3, "share of the variation"});
    for (const planner::Influence& one : by_weight)
        table.row({std::string(assumption_words(one.assumption)),
                   planner::show_number(one.spread, 3),
                   share(one.time_share),
                   share(one.food_share),
                   share(one.water_share)});
    page.heading("What matters most");
    page.add(table);
    if (odds.spread.defaults.empty())
        return;
    std::vector<std::string> keys;
    for (const planner::DefaultUsed& used : odds.spread.defaults)
        keys.push_back(fmt::format("{} {}", used.key, used.value));
    page.line(
        fmt::format("Assumed spread (common practice, no source): {}.", fmt::join(keys, ", ")));
}

} // namespace

std::string odds_text(const planner::Odds& odds, const Reader& reader) {
    TextPage page(odds.plan, reader);
    add_head(page, odds);
    const bool first = reader.show.first_screen();
    const auto wants = [&](Section section) { return first || reader.show.wants(section); };
    if (wants(Section::arrivals))
        add_arrivals(page, odds);
    if (wants(Section::appointments))
        add_meetings(page, odds);
    if (wants(Section::connections))
        add_departures(page, odds);
    if (wants(Section::flow))
        add_rivers(page, odds, reader.units);
    if (wants(Section::food))
        add_food(page, odds);
    if (reader.show.wants(Section::water))
        add_water(page, odds);
    if (reader.show.wants(Section::packs))
        add_packs(page, odds);
    if (wants(Section::drivers))
        add_influences(page, odds);
    if (wants(Section::limits)) {
        page.heading("What these odds do not say");
        for (const std::string& remark : odds.remarks)
            page.item(remark);
    }
    if (first)
        add_more(page, "odds");
    return page.take();
}

} // namespace tumpline::cli
