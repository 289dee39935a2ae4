#pragma once

#include "cli/words/figures.h"
#include "planner/plan.h"

#include <string>

/// What is laid down on the way and fetched.
namespace tumpline::cli {

/// Whether it is food, fuel or water.
[[nodiscard]] bool is_store(const planner::LaidThing& thing);

/// "2 lamp"; "2.0 kg of food".
[[nodiscard]] std::string laid_words(const planner::LaidThing& thing, const Figures& shown);

/// All of it: "red boat, 2.0 kg of food (5.3 kg)".
[[nodiscard]] std::string laid_words(const planner::LaidThings& left, const Figures& shown);

/// "fetched on day 3 at 41.2 km"; "never fetched".
[[nodiscard]] std::string fetched_words(const planner::LaidThings& left, const Figures& shown);

} // namespace tumpline::cli
