#include "cli/text/text_page.h"
#include "cli/words/suit_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace tumpline::cli {

namespace {

/// Legs of one kind of water of which the same is said.
struct SuitGroup {
    std::vector<planner::LegNumber> legs;
    std::string first_leg; ///< with its name
    std::string water;
    std::vector<std::string> lines;
};

std::vector<SuitGroup> suit_groups(const TextPage& page) {
    std::vector<SuitGroup> by_leg;
    for (const planner::LegSuitability& row : page.plan().suitability.legs) {
        if (by_leg.empty() || by_leg.back().legs.front() != row.leg)
            by_leg.push_back({.legs = {row.leg},
                              .first_leg = water_words(row),
                              .water = water_kind_words(row),
                              .lines = {}});
        by_leg.back().lines.push_back(suit_words(row, page));
    }
    std::vector<SuitGroup> groups;
    for (SuitGroup& leg : by_leg) {
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const SuitGroup& group) {
            return group.water == leg.water && group.lines == leg.lines;
        });
        if (same == groups.end())
            groups.push_back(std::move(leg));
        else
            same->legs.push_back(leg.legs.front());
    }
    return groups;
}

} // namespace

void add_suits(TextPage& page) {
    const planner::Suitability& suitability = page.plan().suitability;
    if (suitability.empty())
        return;
    page.heading("Boats and paddles beside the water");
    for (const SuitGroup& group : suit_groups(page)) {
        page.item(group.legs.size() == 1
                      ? fmt::format("leg {}, {}", group.legs.front(), group.first_leg)
                      : fmt::format("legs {} ({})", fmt::join(group.legs, ", "), group.water));
        for (const std::string& line : group.lines)
            page.hang("    ", line);
    }
    for (const planner::PaddleInPack& paddle : suitability.paddles)
        page.item(paddle_words(paddle, page));
    page.item("Beyond what the trip file says a boat is made for, this is common practice, no "
              "source (docs/craft.md); whether this crew paddles it there is for them to say.");
}

void add_ends(TextPage& page) {
    std::set<std::string> told; // of each boat once, while nothing changes
    for (const planner::PlanLeg& leg : page.plan().legs)
        for (const planner::CraftLoad& craft : leg.craft) {
            if (!craft.ends)
                continue;
            const std::string words =
                fmt::format("{}: {}", craft.craft, ends_words(*craft.ends, page));
            if (told.empty())
                page.heading("Bow and stern");
            if (told.insert(words).second)
                page.item(fmt::format("from leg {}, day {}: {}", leg.leg, leg.day, words));
        }
}

} // namespace tumpline::cli
