#include "cli/text/text_page.h"
#include "cli/words/suit_words.h"

#include <fmt/format.h>

#include <set>

namespace tumpline::cli {

void add_suits(TextPage& page) {
    const planner::Suitability& suitability = page.plan().suitability;
    if (suitability.empty())
        return;
    page.heading("Boats and paddles beside the water");
    std::size_t leg = 0;
    for (const planner::LegSuitability& row : suitability.legs) {
        if (row.leg != leg)
            page.item(fmt::format("leg {}, {}", row.leg, water_words(row)));
        leg = row.leg;
        page.hang("    ", suit_words(row, page));
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
