#include "cli/text/text_page.h"

#include <fmt/format.h>

#include <algorithm>

namespace tumpline::cli {

namespace {

constexpr std::ptrdiff_t most_hazards = 8; ///< on the first screen; the rest with the legs

std::string with_note(const planner::PlanHazard& one) {
    return one.note.empty() ? one.name : fmt::format("{}: {}", one.name, one.note);
}

} // namespace

void add_hazards(TextPage& page) {
    const std::vector<planner::PlanHazard>& all = page.plan().hazards;
    const auto is_hazard = [](const planner::PlanHazard& one) { return one.hazard; };
    const std::ptrdiff_t hazards = std::count_if(all.begin(), all.end(), is_hazard);
    if (hazards == 0)
        return;
    page.heading("Hazards along the way");
    std::ptrdiff_t told = 0;
    for (const planner::PlanHazard& one : all)
        if (one.hazard && told++ < most_hazards)
            page.item(fmt::format("day {}, leg {}, at {}: {}",
                                  one.day,
                                  one.leg,
                                  page.distance(one.along_m),
                                  with_note(one)));
    if (hazards > most_hazards)
        page.item(fmt::format("and {} more: --show legs", hazards - most_hazards));
}

std::vector<std::string> hazard_words(const TextPage& page, const planner::PlanLeg& leg) {
    std::vector<std::string> told;
    for (const planner::PlanHazard& one : page.plan().hazards) {
        if (one.leg != leg.leg)
            continue;
        if (!one.place)
            told.push_back(fmt::format("note: {}", one.note));
        else if (one.day == leg.day)
            told.push_back(fmt::format("{}at {}: {}",
                                       one.hazard ? "hazard " : "",
                                       page.distance(one.along_m),
                                       with_note(one)));
    }
    return told;
}

} // namespace tumpline::cli
