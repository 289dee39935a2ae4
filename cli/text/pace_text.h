#pragma once

#include "cli/text/against_text.h"
#include "cli/words/reader.h"
#include "planner/recordings/learned_pace.h"

#include <optional>
#include <string>
#include <string_view>

namespace tumpline::cli {

/// What was learned, for people: figures with their spread and the hours behind them, and lines for
/// a trip file.
[[nodiscard]] std::string pace_text(const planner::LearnedPace& learned, const Reader& reader);

/// The same for programs; docs/pace.md lists the keys.
[[nodiscard]] std::string pace_json(const planner::Recorded& recorded,
                                    const planner::LearnedPace& learned,
                                    const std::optional<Compared>& compared,
                                    std::string_view version);

} // namespace tumpline::cli
