#include "cli/words/left_words.h"

#include <fmt/format.h>

namespace tumpline::cli {

bool is_store(const planner::LaidThing& thing) {
    return thing.part == planner::Part::food || thing.part == planner::Part::fuel ||
           thing.part == planner::Part::water;
}

std::string laid_words(const planner::LaidThing& thing, const Figures& shown) {
    if (is_store(thing))
        return fmt::format("{} of {}", shown.mass(thing.mass_kg), thing.what);
    return thing.count > 1 ? fmt::format("{} {}", thing.count, thing.what) : thing.what;
}

std::string laid_words(const planner::LaidThings& left, const Figures& shown) {
    std::string words;
    for (const planner::LaidThing& thing : left.things)
        words += fmt::format("{}{}", words.empty() ? "" : ", ", laid_words(thing, shown));
    return fmt::format("{} ({})", words, shown.mass(left.mass_kg));
}

std::string fetched_words(const planner::LaidThings& left, const Figures& shown) {
    if (!left.fetch_day)
        return "never fetched";
    return fmt::format(
        "fetched on day {} at {}", *left.fetch_day, shown.distance(*left.fetch_along_m));
}

} // namespace tumpline::cli
