#include "cli/json/compare_json.h"

#include "cli/words/json_values.h"
#include "cli/words/words.h"
#include "geo/light/time_zone.h"

#include <optional>
#include <utility>

namespace tumpline::cli {

namespace {

using planner::Comparison;

Json all_or_null(const std::vector<std::optional<double>>& values) {
    Json array = Json::array();
    for (const std::optional<double>& value : values)
        array.push_back(or_null(value));
    return array;
}

Json plans(const Comparison& comparison, const std::vector<std::string>& labels) {
    Json array = Json::array();
    for (std::size_t p = 0; p < comparison.plans.size(); ++p)
        array.push_back({{"trip", comparison.plans[p].trip.name},
                         {"label", labels[p]},
                         {"can_be_carried_out", comparison.plans[p].can_be_carried_out()},
                         {"verdict", planner::verdict_word(comparison.plans[p].verdict.level)}});
    return array;
}

Json totals(const Comparison& comparison) {
    Json object = Json::object();
    for (const planner::ComparedFigure& one : comparison.figures)
        object[std::string(planner::name_of(one.figure))] = {
            {"values", all_or_null(one.values)}, {"differences", all_or_null(one.differences)}};
    return object;
}

Json days(const Comparison& comparison) {
    Json array = Json::array();
    for (const planner::ComparedDay& one : comparison.days) {
        Json to = Json::array();
        Json arrive = Json::array();
        for (std::size_t p = 0; p < comparison.plans.size(); ++p) {
            if (!one.plan_day[p]) {
                to.push_back(nullptr);
                arrive.push_back(nullptr);
                continue;
            }
            const planner::Plan& plan = comparison.plans[p];
            const planner::PlanDay& day = plan.days[*one.plan_day[p]];
            to.push_back(day.to);
            arrive.push_back(geo::rfc3339(day.arrive, plan.trip.time_zone));
        }
        array.push_back({{"day", one.day},
                         {"same_night", one.same_night},
                         {"to", std::move(to)},
                         {"arrive", std::move(arrive)},
                         {"later_s", all_or_null(one.later_s)},
                         {"moving_more_s", all_or_null(one.moving_more_s)}});
    }
    return array;
}

Json packs(const Comparison& comparison) {
    Json array = Json::array();
    for (const planner::ComparedPack& one : comparison.packs) {
        Json heaviest = Json::array();
        for (const std::optional<planner::Heaviest>& pack : one.heaviest)
            heaviest.push_back(pack ? Json{{"pack_kg", pack->pack_kg},
                                           {"of_limit", pack->of_limit},
                                           {"plan_leg", place_or_null(pack->plan_leg)}}
                                    : Json(nullptr));
        array.push_back({{"member", one.member},
                         {"heaviest", std::move(heaviest)},
                         {"more_kg", all_or_null(one.more_kg)}});
    }
    return array;
}

Json appointments(const Comparison& comparison) {
    Json array = Json::array();
    for (const planner::ComparedAppointment& one : comparison.appointments)
        array.push_back({{"what", one.what},
                         {"at", one.at},
                         {"spare_s", all_or_null(one.spare_s)},
                         {"more_s", all_or_null(one.more_s)}});
    return array;
}

Json list(const std::vector<planner::Caution>& cautions) {
    Json array = Json::array();
    for (const planner::Caution& caution : cautions)
        array.push_back({{"level", word(caution.level)},
                         {"code", caution.code},
                         {"day", or_null(caution.day)},
                         {"leg", or_null(caution.leg)},
                         {"text", caution.text},
                         {"source", caution.source}});
    return array;
}

Json cautions(const Comparison& comparison) {
    Json array = Json::array();
    for (const planner::ComparedCautions& one : comparison.cautions)
        array.push_back(
            {{"plan", one.plan}, {"breaks", list(one.breaks)}, {"mends", list(one.mends)}});
    return array;
}

} // namespace

Json compare_json_value(const Comparison& comparison,
                        const std::vector<std::string>& labels,
                        std::string_view version) {
    return {{"version", version},
            {"plans", plans(comparison, labels)},
            {"totals", totals(comparison)},
            {"days", days(comparison)},
            {"packs", packs(comparison)},
            {"appointments", appointments(comparison)},
            {"cautions", cautions(comparison)}};
}

std::string compare_json(const Comparison& comparison,
                         const std::vector<std::string>& labels,
                         std::string_view version) {
    return in_lines(compare_json_value(comparison, labels, version));
}

} // namespace tumpline::cli
