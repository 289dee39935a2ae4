#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "planner/trip/vocabulary.h"

namespace tumpline::cli {

namespace {

Json reason_json(const planner::VerdictReason& reason) {
    return {{"level", planner::verdict_word(reason.level)},
            {"code", reason.code},
            {"title", reason.title},
            {"subject", name_or_null(reason.subject)},
            {"worst",
             {{"day", or_null(reason.worst.day)},
              {"leg", or_null(reason.worst.leg)},
              {"name", name_or_null(reason.worst.leg_name)},
              {"figure", name_or_null(reason.figure.metric)}}},
            {"count", reason.count},
            {"days", reason.days},
            {"legs", reason.legs},
            {"cautions", reason.cautions},
            {"line", reason.line.metric}};
}

Json not_judged_json(const planner::NotJudged& one) {
    return {{"code", one.code},
            {"title", one.title},
            {"key", name_or_null(one.key)},
            {"legs", one.legs}};
}

} // namespace

Json verdict_json(const planner::Plan& plan) {
    const planner::Verdict& verdict = plan.verdict;
    return {{"level", planner::verdict_word(verdict.level)},
            {"words", planner::verdict_words(verdict.level)},
            {"reasons", array_of(verdict.reasons, reason_json)},
            {"also", array_of(verdict.also, reason_json)},
            {"always", verdict.always},
            {"unknown", array_of(verdict.unknown, not_judged_json)}};
}

Json hazards_json(const planner::Plan& plan) {
    return array_of(plan.hazards, [](const planner::PlanHazard& one) {
        return Json{{"hazard", one.hazard},
                    {"place_kind", one.place ? Json(planner::word(*one.place)) : Json(nullptr)},
                    {"name", one.name},
                    {"note", name_or_null(one.note)},
                    {"day", one.day},
                    {"leg", one.leg},
                    {"along_m", one.along_m}};
    });
}

} // namespace tumpline::cli
