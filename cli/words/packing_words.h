#pragma once

#include "planner/plan.h"
#include "planner/quantities/quantities.h"

#include <string>
#include <string_view>
#include <vector>

/// The rows of `Plan::items` in words.
namespace tumpline::cli {

/// "head torch", "2 × head torch".
[[nodiscard]] std::string thing_words(const planner::PackedItem& item);

/// The same with whose it is: "head torch (Ada)"; of the party's nothing more.
[[nodiscard]] std::string owned_words(const planner::PackedItem& item);

/// "tent"; of several of one name "2 × pack (Ada, Bram)".
[[nodiscard]] std::string carried_words(const planner::CarriedThing& thing);

/// The same of what lies in a bag of a boat.
[[nodiscard]] std::string stowed_words(const planner::Plan& plan, const planner::Stowed& thing);

/// "left bag", "at hand": where it lies afloat, or "worn", "in use"; empty where nobody paddles.
[[nodiscard]] std::string_view afloat_words(const planner::PackedItem& item);

/// "pack", "worn", "in hand": where it is when setting off; empty for what stays at home.
[[nodiscard]] std::string_view start_words(const planner::PackedItem& item);

/// What goes into the backpacks and the food's container, a line each; none where no volume of them
/// is given.
[[nodiscard]] std::vector<std::string> volume_lines(const planner::Plan& plan,
                                                    planner::UnitSystem units);

/// Why it comes or stays, in the reader's units.
[[nodiscard]] const std::string& why_words(const planner::PackedItem& item,
                                           planner::UnitSystem units);

} // namespace tumpline::cli
