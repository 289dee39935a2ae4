#include "cli/live/live_view.h"

#include "cli/words/calendar_words.h"
#include "cli/words/left_words.h"
#include "cli/words/meeting_words.h"
#include "cli/words/words.h"
#include "planner/plan/verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace tumpline::cli {

namespace {

using planner::Plan;
using planner::PlanDay;
using planner::VerdictReason;

std::string dates(const Plan& plan) {
    if (plan.days.empty())
        return long_date(plan.trip.start);
    const std::string last = long_date(plan.days.back().date);
    return plan.days.size() == 1
               ? last
               : fmt::format("{} to {}", short_date(plan.days.front().date), last);
}

std::string headline(const Plan& plan, const Figures& shown) {
    std::vector<std::string> names;
    for (const planner::Member& member : plan.trip.party)
        names.push_back(member.name);
    return fmt::format("{} · {} · {} · {} up · {} moving",
                       dates(plan),
                       fmt::join(names, ", "),
                       shown.distance(plan.totals.distance_m),
                       shown.climb(plan.totals.ascent_m, plan.totals.heights_known),
                       shown.duration(plan.totals.moving_s));
}

Json reason_json(const VerdictReason& reason, const Figures& shown) {
    return {{"code", reason.code},
            {"line", in_units({reason.line.metric, reason.line.imperial}, shown.units())},
            {"level", planner::verdict_word(reason.level)},
            {"day", reason.worst.day ? Json(*reason.worst.day) : Json(nullptr)},
            {"leg", reason.worst.leg ? Json(*reason.worst.leg) : Json(nullptr)}};
}

Json verdict_view(const Plan& plan, const Figures& shown) {
    const auto reason = [&](const VerdictReason& one) { return reason_json(one, shown); };
    return {{"level", planner::verdict_word(plan.verdict.level)},
            {"sentence", planner::verdict_sentence(plan.verdict.level)},
            {"reasons", array_of(plan.verdict.reasons, reason)},
            {"also", array_of(plan.verdict.also, reason)},
            {"unknown", plan.verdict.unknown_line}};
}

/// A figure of a day: its label, its value, and what stands below it.
Json day_figure(std::string_view label, const std::string& value, const std::string& more) {
    return {{"label", label}, {"value", value}, {"more", more}};
}

Json day_figures(const PlanDay& day, const Figures& shown) {
    Json figures = Json::array();
    figures.push_back(day_figure(
        "Arrive",
        shown.clock_on(day.arrive, day.date),
        fmt::format("{}–{}", shown.clock(day.arrive_early), shown.clock(day.arrive_late))));
    figures.push_back(day_figure(
        "Distance",
        shown.distance(day.walk_m + day.portage_m + day.paddle_m + day.led_m + day.ride_m),
        day.before_dusk_s ? fmt::format("{} {} dusk",
                                        shown.duration(std::abs(*day.before_dusk_s)),
                                        *day.before_dusk_s < 0.0 ? "after" : "before")
                          : std::string("no dusk")));
    figures.push_back(day_figure("Up",
                                 shown.climb(day.ascent_m, day.heights_known),
                                 fmt::format("{} moving", shown.duration(day.moving_s))));
    if (const planner::MemberDay* laden = planner::most_laden(day))
        figures.push_back(day_figure("Heaviest", shown.mass(laden->heaviest_kg), laden->member));
    return figures;
}

/// What is to be left and to be fetched on the day.
Json left_view(const Plan& plan, const PlanDay& day, const Figures& shown) {
    Json lines = Json::array();
    const auto add = [&](std::string_view what, const planner::LaidThings& left) {
        lines.push_back(fmt::format("{} at {}: {}", what, left.at, laid_words(left, shown)));
    };
    for (const planner::LaidThings& left : plan.left) {
        if (left.day == day.day)
            add("Leave", left);
        if (left.fetch_day == day.day)
            add("Fetch", left);
    }
    return lines;
}

Json days_view(const Plan& plan, const Figures& shown) {
    return array_of(plan.days, [&](const PlanDay& day) {
        return Json{
            {"day", day.day},
            {"date", short_date(day.date)},
            {"from", day.from},
            {"to", day.to},
            {"from_m", day.from_m},
            {"to_m", day.to_m},
            {"rest_day", day.rest_day},
            {"still", day.waiting_for.empty() ? std::string("a day of rest") : still_words(day)},
            {"set_off", shown.clock(day.set_off)},
            {"figures", day.rest_day ? Json::array() : day_figures(day, shown)},
            {"left", left_view(plan, day, shown)}};
    });
}

/// The nights as the page moves them, and where they may be put.
Json nights_view(const LivePlan& live, const Figures& shown) {
    Json nights = Json::array();
    for (std::size_t i = 0; i + 1 < live.plan.days.size(); ++i) {
        const PlanDay& day = live.plan.days[i];
        const bool waits_there = !live.plan.days[i + 1].waiting_for.empty(); // no night to move
        if (!day.rest_day && !waits_there)
            nights.push_back({{"night", nights.size() + 1}, {"name", day.to}, {"at_m", day.to_m}});
    }
    Json places = Json::array();
    for (const planner::RoutePlace& place : live.route->places)
        if (place.kind == planner::PlaceKind::camp)
            places.push_back(
                {{"name", place.name},
                 {"at_m", place.along_m},
                 {"text", fmt::format("{}, {}", place.name, shown.along(place.along_m))}});
    return {{"auto", live.plan.trip.days.nights_auto},
            {"nights", std::move(nights)},
            {"places", std::move(places)}};
}

Json appointments_view(const Plan& plan, const Figures& shown) {
    return array_of(plan.appointments, [&](const planner::PlanAppointment& one) {
        return Json{{"what", one.what},
                    {"day", one.day},
                    {"text",
                     fmt::format("{} at {} by {}: {}",
                                 one.what,
                                 one.at,
                                 shown.clock(one.by),
                                 meeting_words({one.spare_s, one.margin_s}, shown))},
                    {"short", one.spare_s < 0.0}};
    });
}

} // namespace

Json live_view(const LivePlan& live, const Figures& shown) {
    return {{"name", live.plan.trip.name.empty() ? "A trip" : live.plan.trip.name},
            {"headline", headline(live.plan, shown)},
            {"verdict", verdict_view(live.plan, shown)},
            {"days", days_view(live.plan, shown)},
            {"nights", nights_view(live, shown)},
            {"appointments", appointments_view(live.plan, shown)},
            {"legs", live_packs(live, shown)},
            {"things", live_things(live, shown)},
            {"conditions", live_conditions(live, shown)}};
}

} // namespace tumpline::cli
