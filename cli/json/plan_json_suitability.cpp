#include "cli/json/plan_json_parts.h"
#include "cli/words/json_values.h"
#include "cli/words/suit_words.h"
#include "cli/words/words.h"
#include "planner/trip/vocabulary.h"

#include <string>
#include <string_view>

namespace tumpline::cli {

namespace {

using planner::LegSuitability;
using planner::PaddleInPack;

Json leg_json(const planner::Plan& plan, const LegSuitability& row) {
    const Figures shown(planner::UnitSystem::metric, plan.trip.time_zone, Blank::plain);
    return {
        {"leg", row.leg},
        {"name", row.leg_name},
        {"water", planner::word(row.water)},
        {"class", row.river_class ? Json(planner::class_word(*row.river_class)) : Json(nullptr)},
        {"part", word(row.part)},
        {"item", row.what},
        {"suits", suits_name(row.worst())},
        {"remarks", array_of(row.remarks, [&](const planner::SuitRemark& remark) {
             return Json{{"suits", suits_name(remark.suits)},
                         {"reason", reason_name(remark.reason)},
                         {"text", remark_words(row, remark.reason, shown)}};
         })}};
}

std::string_view packed_word(planner::PackedPaddle packed) {
    switch (packed) {
    case planner::PackedPaddle::goes_in:
        return "goes_in";
    case planner::PackedPaddle::sticks_out:
        return "sticks_out";
    case planner::PackedPaddle::not_known:
        return "not_known";
    }
    return {};
}

Json by_json(planner::PackedBy by) {
    switch (by) {
    case planner::PackedBy::lengths:
        return "lengths";
    case planner::PackedBy::pieces:
        return "pieces";
    case planner::PackedBy::nothing:
        return nullptr;
    }
    return nullptr;
}

Json paddle_json(const PaddleInPack& row) {
    return {{"item", row.what},
            {"bearer", row.bearer},
            {"length_m", or_null(row.paddle.length_m)},
            {"pieces", or_null(row.paddle.pieces)},
            {"packed_length_m", or_null(row.paddle.packed_length_m)},
            {"stroke", row.paddle.stroke ? Json(planner::word(*row.paddle.stroke)) : Json(nullptr)},
            {"pack_length_m", or_null(row.pack_length_m)},
            {"packed", packed_word(row.packed)},
            {"by", by_json(row.by)},
            {"sticks_out_m",
             row.by == planner::PackedBy::lengths ? Json(row.sticks_out_m) : Json(nullptr)}};
}

} // namespace

Json suitability_json(const planner::Plan& plan) {
    return {{"legs",
             array_of(plan.suitability.legs,
                      [&](const LegSuitability& row) { return leg_json(plan, row); })},
            {"paddles", array_of(plan.suitability.paddles, paddle_json)}};
}

} // namespace tumpline::cli
