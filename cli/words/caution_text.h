#pragma once

#include "planner/caution.h"
#include "planner/quantities/quantities.h"

#include <string>

namespace tumpline::cli {

/// A caution as one line of text: "CAUTION after-dusk: ... [source]". The level is a word, so that
/// it reads the same in black and white.
[[nodiscard]] std::string caution_text(const planner::Caution& caution, planner::UnitSystem units);

/// The same with where it belongs before it: "day 2, leg 4: ...".
[[nodiscard]] std::string placed_caution_text(const planner::Caution& caution,
                                              planner::UnitSystem units);

/// Its text alone.
[[nodiscard]] const std::string& words_of(const planner::Caution& caution,
                                          planner::UnitSystem units);

} // namespace tumpline::cli
