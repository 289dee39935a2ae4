#pragma once

#include "cli/live/live_trip.h"
#include "cli/words/figures.h"
#include "cli/words/json_values.h"

#include <string>
#include <utility>

namespace tumpline::cli {

/// A plan as the live page shows it: every figure as people read it, and with every control the
/// edits that it stands for. The page computes nothing but places on the screen.
[[nodiscard]] Json live_view(const LivePlan& live, const Figures& shown);

/// An edit as the page sends it back.
[[nodiscard]] inline Json added(std::string path, Json value) {
    return {{"op", "add"}, {"path", std::move(path)}, {"value", std::move(value)}};
}

/// Its parts.
[[nodiscard]] Json live_packs(const LivePlan& live, const Figures& shown);
[[nodiscard]] Json live_things(const LivePlan& live, const Figures& shown);
[[nodiscard]] Json live_conditions(const LivePlan& live, const Figures& shown);

} // namespace tumpline::cli
