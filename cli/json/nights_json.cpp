#include "cli/text/nights_text.h"
#include "cli/words/json_values.h"
#include "geo/light/time_zone.h"
#include "planner/decisions/nights_compared.h"
#include "planner/quantities/quantities.h"

namespace tumpline::cli {

namespace {

using planner::NightsOption;
using planner::PlanDay;

Json cost_json(const planner::DayCost& cost) {
    return {{"over_wish", cost.over_wish},
            {"uneven", cost.uneven},
            {"late", cost.late},
            {"dry_camp", cost.dry_camp},
            {"carried", cost.carried},
            {"missed", cost.missed},
            {"sum", cost.sum()}};
}

Json option_json(const NightsOption& option) {
    Json days = Json::array();
    std::size_t travelled = 0;
    for (const PlanDay& day : option.plan.days) {
        const auto& dusk = day.light.twilight.set;
        const std::string& zone = option.plan.trip.time_zone;
        days.push_back(
            {{"day", day.day},
             {"date", planner::show_date(day.date)},
             {"rest_day", day.rest_day},
             {"from", day.from},
             {"to", day.to},
             {"from_m", day.from_m},
             {"to_m", day.to_m},
             {"moving_s", day.moving_s},
             {"set_off", geo::rfc3339(day.set_off, zone)},
             {"arrive", geo::rfc3339(day.arrive, zone)},
             {"dusk", dusk ? Json(geo::rfc3339(*dusk, zone)) : Json(nullptr)},
             {"dry_camp", day.dry_camp},
             {"cost", day.rest_day ? Json(nullptr) : cost_json(option.days[travelled])}});
        travelled += day.rest_day ? 0 : 1;
    }
    Json stops = Json::array();
    for (const planner::Caution& caution : option.plan.cautions)
        if (caution.level == planner::Level::stop)
            stops.push_back({{"code", caution.code}, {"text", caution.text}});
    return {{"nights", option.nights},
            {"cost", cost_json(option.cost)},
            {"can_be_carried_out", option.plan.can_be_carried_out()},
            {"verdict", planner::verdict_word(option.plan.verdict.level)},
            {"settled", option.plan.converged.settled},
            {"days", days},
            {"stops", stops}};
}

} // namespace

Json nights_json_value(const planner::NightsPlan& nights, std::string_view version) {
    Json next = Json::array();
    for (const NightsOption& option : nights.next)
        next.push_back(option_json(option));
    const planner::Trip& trip = nights.best.plan.trip;
    return {{"trip", trip.name.empty() ? Json(nullptr) : Json(trip.name)},
            {"version", version},
            {"places", nights.places},
            {"camps", nights.camps},
            {"asked", nights.asked},
            {"best", option_json(nights.best)},
            {"next", next},
            {"listed", nights.listed.empty() ? Json(nullptr) : option_json(nights.listed.front())}};
}

std::string nights_json(const planner::NightsPlan& nights, std::string_view version) {
    return in_lines(nights_json_value(nights, version));
}

} // namespace tumpline::cli
