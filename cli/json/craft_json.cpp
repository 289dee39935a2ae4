#include "cli/json/craft_json.h"

#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "cli/words/words.h"

#include <algorithm>

namespace tumpline::cli {

namespace {

using planner::CraftMargin;
using planner::CraftOption;

std::string_view boats_word(planner::Boats boats) {
    switch (boats) {
    case planner::Boats::own:
        return "own";
    case planner::Boats::choice:
        return "choice";
    case planner::Boats::none:
        return "none";
    }
    return {};
}

/// `key` is what is left, with its unit.
Json margin_json(const CraftOption& option, const CraftMargin& margin, const std::string& key) {
    if (!option.plan || !margin.asked)
        return nullptr;
    return {{key, or_null(margin.left)},
            {"craft", name_or_null(margin.craft)},
            {"plan_leg", place_or_null(margin.plan_leg)},
            {"known", margin.known()},
            {"not_given", margin.missing}};
}

Json wind_json(const CraftOption& option) {
    if (!option.wind)
        return nullptr;
    return {{"ceiling_mps", option.wind->ceiling_mps},
            {"craft", option.wind->craft},
            {"assumed", option.wind->assumed}};
}

Json heaviest_json(const CraftOption& option) {
    if (!option.plan || option.figures.heaviest_member.empty())
        return nullptr;
    const double share = option.figures.heaviest_of_limit;
    return {{"pack_kg", option.figures.heaviest_kg},
            {"member", option.figures.heaviest_member},
            {"of_limit", share > 0.0 ? Json(share) : Json(nullptr)}};
}

/// Codes of its cautions, each once.
Json cautions_json(const CraftOption& option) {
    Json codes = Json::array();
    if (option.plan)
        for (const planner::Caution& caution : option.plan->cautions)
            if (std::find(codes.begin(), codes.end(), caution.code) == codes.end())
                codes.push_back(caution.code);
    return codes;
}

Json option_json(const CraftOption& option) {
    const auto planned = [&](const auto& value) {
        return option.plan ? Json(value) : Json(nullptr);
    };
    return {{"boats", boats_word(option.boats.boats)},
            {"paddle", option.boats.paddle},
            {"name", name_or_null(option.boats.name)},
            {"count", option.boats.count},
            {"replaces", option.boats.replaces},
            {"by", option.boats.by},
            {"can_be_carried_out", option.level() != planner::VerdictLevel::cannot},
            {"verdict", planner::verdict_word(option.level())},
            {"reason", name_or_null(option.reason)},
            {"cautions", cautions_json(option)},
            {"days", planned(option.figures.days)},
            {"time_s", planned(option.figures.under_way_s)},
            {"heaviest", heaviest_json(option)},
            {"carried_kg_km", planned(option.figures.carried_kg_km)},
            {"class_margin", margin_json(option, option.river_class, "left")},
            {"payload_margin", margin_json(option, option.payload, "left_kg")},
            {"wind", wind_json(option)},
            {"price", or_null(option.boats.price)},
            {"suitability", option.plan ? suitability_json(*option.plan) : Json(nullptr)}};
}

} // namespace

std::string craft_json(const planner::CraftComparison& compared, std::string_view version) {
    const planner::Trip& trip = compared.options.front().boats.trip;
    Json ahead = Json::array();
    for (const planner::CraftGain gain : compared.for_runner_up)
        ahead.push_back(planner::name_of(gain));
    const Json json{
        {"trip", name_or_null(trip.name)},
        {"version", version},
        {"any", compared.any()},
        {"decides", compared.decides ? Json(planner::name_of(*compared.decides)) : Json(nullptr)},
        {"for_runner_up", ahead},
        {"options", array_of(compared.options, option_json)}};
    return in_lines(json);
}

} // namespace tumpline::cli
