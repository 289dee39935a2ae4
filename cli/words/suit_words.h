#pragma once

#include "cli/words/figures.h"
#include "planner/plan.h"

#include <string>
#include <string_view>
#include <vector>

/// Boats and paddles beside the water, in words.
namespace tumpline::cli {

/// "suits", "with care", "not known", "does not suit".
[[nodiscard]] std::string_view suits_word(planner::Suits suits);

/// As outputs for programs spell it: "yes", "with_care", "not_known", "no"; "open_deck".
[[nodiscard]] std::string_view suits_name(planner::Suits suits);
[[nodiscard]] std::string_view reason_name(planner::SuitReason reason);

/// "made for lakes", "thigh straps are usual from class III".
[[nodiscard]] std::string
remark_words(const planner::LegSuitability& row, planner::SuitReason reason, const Figures& shown);

/// "red boat with care: made for rivers up to class IV; an open deck takes waves in".
[[nodiscard]] std::string suit_words(const planner::LegSuitability& row, const Figures& shown);

/// "lake"; "river, class II"; "river, class not given".
[[nodiscard]] std::string water_kind_words(const planner::LegSuitability& row);

/// "Upper river (river, class II)".
[[nodiscard]] std::string water_words(const planner::LegSuitability& row);

/// "paddle (Ada): 2.20 m, 4 pieces of at most 62 cm, for a low stroke; goes into Ada's pack, ...".
[[nodiscard]] std::string paddle_words(const planner::PaddleInPack& paddle, const Figures& shown);

/// "bow 3.2 kg, stern 5.1 kg of what lies there by the trip file: 1.9 kg more at the stern".
[[nodiscard]] std::string ends_words(const planner::EndsLoad& ends, const Figures& shown);

} // namespace tumpline::cli
