#include "cli/words/caution_text.h"

#include "cli/words/words.h"

#include <fmt/format.h>

namespace tumpline::cli {

namespace {

const char* mark(planner::Level level) {
    switch (level) {
    case planner::Level::note:
        return "note";
    case planner::Level::caution:
        return "CAUTION";
    case planner::Level::stop:
        return "STOP";
    }
    return "";
}

} // namespace

const std::string& words_of(const planner::Caution& caution, planner::UnitSystem units) {
    return in_units({caution.text, caution.imperial}, units);
}

std::string caution_text(const planner::Caution& caution, planner::UnitSystem units) {
    std::string text = fmt::format("{}: {}", mark(caution.level), words_of(caution, units));
    if (!caution.code.empty())
        text += fmt::format(" ({})", caution.code);
    return text;
}

std::string placed_caution_text(const planner::Caution& caution, planner::UnitSystem units) {
    std::string place;
    if (caution.day)
        place = fmt::format("day {}", *caution.day);
    if (caution.leg)
        place += fmt::format("{}leg {}", place.empty() ? "" : ", ", *caution.leg);
    return place.empty() ? caution_text(caution, units)
                         : fmt::format("{}, {}", place, caution_text(caution, units));
}

} // namespace tumpline::cli
