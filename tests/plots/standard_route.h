#pragma once

#include "planner/models/load_carriage.h"

#include <array>
#include <string>

namespace tumpline::plots {

inline constexpr std::array carriage_models = {planner::CarriageModel::lcda_backpacking_2022,
                                               planner::CarriageModel::pandolf_santee,
                                               planner::CarriageModel::ludlow_weyand_2017,
                                               planner::CarriageModel::compendium_met};

/// The page docs/models/standard-route.md: the models of walking and of energy on one route.
[[nodiscard]] std::string standard_route_page();

} // namespace tumpline::plots
